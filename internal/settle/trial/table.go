package trial

import (
	"strings"
	"unicode/utf8"

	"tenthpoint/internal/worksheet"
)

// column is one column of a trial as shown: its heading and its cell. Cells are
// figures without units; the heading has the unit.
type column struct {
	heading string
	cell    func(Row) *worksheet.Step
}

func (t *Trial) columns() []column {
	u := t.Edition.Units
	weight, settle := u.Weight.String(), u.Settle.String()
	cols := []column{
		{"points", func(r Row) *worksheet.Step { return r.Points }},
		{"water " + weight, func(r Row) *worksheet.Step { return r.Settlement.Water }},
		{"handling " + weight, func(r Row) *worksheet.Step { return r.Settlement.Handling }},
		{"taken %", func(r Row) *worksheet.Step { return r.Taken }},
		{"dry " + weight, func(r Row) *worksheet.Step { return r.Settlement.Dry }},
		{"settled " + settle, func(r Row) *worksheet.Step { return r.Settlement.Quantity }},
		{"drying $", func(r Row) *worksheet.Step { return r.Settlement.Drying }},
		{"adjustments $", func(r Row) *worksheet.Step { return r.Settlement.Adjustments }},
	}
	if t.priced() {
		cols = append(cols, column{"payable $", func(r Row) *worksheet.Step { return r.Settlement.Payable }})
	}
	return append(cols, column{"$/" + settle + " delivered", func(r Row) *worksheet.Step { return r.Each }})
}

// priced reports whether the load was tried with a price.
func (t *Trial) priced() bool {
	for _, r := range t.Rows {
		if r.Settlement != nil {
			return r.Settlement.Price != nil
		}
	}
	return false
}

// Records is the trial as rows of plain figures for a spreadsheet, the first
// the headings. A moisture that was refused has its reason in the last column.
func (t *Trial) Records() [][]string {
	cols := t.columns()
	head := []string{"moisture %"}
	for _, c := range cols {
		head = append(head, c.heading)
	}
	out := [][]string{append(head, "refused")}
	for _, r := range t.Rows {
		out = append(out, r.record(cols))
	}
	return out
}

func (r Row) record(cols []column) []string {
	cells := []string{plain(r.Moisture.Written())}
	for _, c := range cols {
		cell := ""
		if r.Settlement != nil {
			cell = plain(c.cell(r).Printed())
		}
		cells = append(cells, cell)
	}
	return append(cells, r.Refused.String())
}

// plain is a figure without its unit and without commas.
func plain(printed string) string {
	figure, _, _ := strings.Cut(printed, " ")
	figure, _, _ = strings.Cut(figure, "/")
	return strings.NewReplacer("$", "", ",", "").Replace(figure)
}

// Text is the trial as a table for people.
func (t *Trial) Text() string {
	records := t.Records()
	widths := make([]int, len(records[0])-1)
	for _, row := range records {
		for i := range widths {
			widths[i] = max(widths[i], utf8.RuneCountInString(row[i]))
		}
	}
	var b strings.Builder
	for n, row := range records {
		last := row[len(row)-1]
		if n == 0 {
			last = ""
		}
		b.WriteString(strings.TrimRight(tableLine(row[:len(row)-1], widths, last), " ") + "\n")
	}
	return b.String()
}

// tableLine sets cells at the right of their columns; a reason takes the place
// of figures that are not there.
func tableLine(cells []string, widths []int, reason string) string {
	if reason != "" {
		return pad(cells[0], widths[0]) + "  " + strings.ReplaceAll(reason, "\n", " ")
	}
	out := make([]string, len(cells))
	for i, cell := range cells {
		out[i] = pad(cell, widths[i])
	}
	return strings.Join(out, "  ")
}

func pad(text string, width int) string {
	return strings.Repeat(" ", max(0, width-utf8.RuneCountInString(text))) + text
}
