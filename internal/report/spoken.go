package report

import (
	"tenthpoint/internal/i18n"
	"tenthpoint/internal/message"
)

// Texts and figures of a document are values, which its renderers translate. So no rendering can
// forget to, and a reader of the document itself, a screen or a program, finds the same texts
// everywhere.

// Figure is a figure for a document, by how it is written in English: "1,624.88".
func Figure(written string) message.Text { return message.List("", message.Digits(written)) }

// title is a column's title with its unit.
func (c Column) title(say *message.Printer) string {
	title := say.Text(c.Title)
	switch {
	case c.Unit == "":
		return title
	case title == "":
		return c.Unit
	}
	return title + " " + c.Unit
}

// String is the title in English.
func (c Column) String() string { return c.title(nil) }

// forPeople is the printer of the document's language.
func (d Document) forPeople() *message.Printer { return i18n.In(d.Language) }

// forPrograms is the same with figures as programs read them.
func (d Document) forPrograms() *message.Printer { return i18n.ForPrograms(d.Language) }

// printed is a table in the words of a language.
type printed struct {
	columns []column
	rows    []row
	empty   string
}

type column struct {
	title string
	align Align
}

type row struct {
	cells []string
	kind  RowKind
}

func (t Table) printed(say *message.Printer) printed {
	out := printed{empty: say.Text(t.Empty)}
	for _, c := range t.Columns {
		out.columns = append(out.columns, column{c.title(say), c.Align})
	}
	for _, r := range t.Rows {
		out.rows = append(out.rows, row{texts(say, r.Cells), r.Kind})
	}
	return out
}

// texts are texts in the words of a language.
func texts(say *message.Printer, all []message.Text) []string {
	out := make([]string, len(all))
	for i, text := range all {
		out[i] = say.Text(text)
	}
	return out
}

// titles are the words over the columns.
func (p printed) titles() []string {
	out := make([]string, len(p.columns))
	for i, c := range p.columns {
		out[i] = c.title
	}
	return out
}
