package report

import (
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/paper/plain"
)

// Text sets the document for a terminal or a plain file, width characters
// wide. Tables wider than that run over; they are never cut.
func (d Document) Text(width int) string {
	t := setter{&plain.Lines{Width: width}, d.forPeople()}
	for _, line := range d.House {
		t.line(line)
	}
	t.Gap()
	t.line(strings.ToUpper(t.say.Text(d.Title)))
	t.line(t.say.Text(d.About))
	for _, mark := range texts(t.say, d.Marks) {
		t.line("*** " + mark + " ***")
	}
	for _, b := range d.Blocks {
		if _, newPage := b.(NewPage); newPage {
			continue // a terminal has one page
		}
		t.Gap()
		t.block(b)
	}
	if footer := t.say.Text(d.Footer); footer != "" {
		t.Gap()
		t.para(footer)
	}
	return t.Text()
}

type setter struct {
	*plain.Lines
	say *message.Printer
}

// line adds a line, if there is one.
func (t *setter) line(s string) {
	if s != "" {
		t.Line(s)
	}
}

func (t *setter) block(b Block) {
	switch b := b.(type) {
	case Heading:
		text := t.say.Text(b.Text)
		t.line(text)
		t.line(strings.Repeat("-", plain.Letters(text)))
	case Para:
		t.para(t.say.Text(b.Text))
	case Pairs:
		t.pairs(b)
	case Table:
		t.table(b.printed(t.say))
	case Bars:
		t.bars(b)
	case Steps:
		t.steps(b)
	case Signing:
		for _, name := range texts(t.say, b.Names) {
			t.line(name + ": " + strings.Repeat("_", max(8, t.Width-plain.Letters(name)-2)))
		}
	}
}

func (t *setter) para(text string) { t.Running("", "", text) }

func (t *setter) pairs(b Pairs) {
	label := 0
	for _, p := range b.Pairs {
		label = max(label, plain.Letters(t.say.Text(p.Label)))
	}
	for _, p := range b.Pairs {
		name := t.say.Text(p.Label)
		for _, part := range plain.Paragraph(t.say.Text(p.Value), max(20, t.Width-label-2)) {
			t.line(plain.Left(name, label+2) + part)
			name = ""
		}
	}
}

func (t *setter) table(b printed) {
	if len(b.rows) == 0 {
		t.para(b.empty)
		return
	}
	widths := make([]int, len(b.columns))
	for i, c := range b.columns {
		widths[i] = plain.Letters(c.title)
		for _, r := range b.rows {
			widths[i] = max(widths[i], plain.Letters(r.cells[i]))
		}
	}
	t.tableLine(b.columns, widths, b.titles())
	t.rule(widths)
	for _, r := range b.rows {
		if r.kind == Total {
			t.rule(widths)
		}
		t.tableLine(b.columns, widths, r.cells)
	}
}

func (t *setter) rule(widths []int) {
	total := 2 * (len(widths) - 1)
	for _, w := range widths {
		total += w
	}
	t.line(strings.Repeat("-", total))
}

func (t *setter) tableLine(columns []column, widths []int, cells []string) {
	parts := make([]string, len(cells))
	for i, cell := range cells {
		parts[i] = plain.Left(cell, widths[i])
		if columns[i].align == Right {
			parts[i] = plain.Right(cell, widths[i])
		}
	}
	t.line(strings.Join(parts, "  "))
}

// barCells is the length of the longest bar in characters.
const barCells = 40

func (t *setter) bars(b Bars) {
	t.line(t.say.Text(b.Title))
	if len(b.Labels) == 0 {
		t.para(t.say.Text(b.Empty))
		return
	}
	labels, label := texts(t.say, b.Labels), 0
	for _, l := range labels {
		label = max(label, plain.Letters(l))
	}
	for i, l := range labels {
		t.line(plain.Left(l, label) + " " + strings.Repeat("#", b.Heights[i]*barCells/1000) + " " + t.say.Text(b.Values[i]))
	}
}

func (t *setter) steps(b Steps) {
	for i, s := range b.Steps {
		if s.Part {
			if i > 0 {
				t.Gap()
			}
			t.line(strings.ToUpper(s.Label))
			continue
		}
		gap := max(1, t.Width-plain.Letters(s.Label)-plain.Letters(s.Figure))
		t.line(s.Label + strings.Repeat(" ", gap) + s.Figure)
		for _, e := range s.Explain {
			t.Running("    ", "    ", e)
		}
	}
}

// orEmptyLine keeps the room of a text that is empty.
func orEmptyLine(lines []string) []string {
	if len(lines) == 0 {
		return []string{""}
	}
	return lines
}
