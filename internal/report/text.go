package report

import (
	"strings"

	"tenthpoint/internal/paper/plain"
)

// Text sets the document for a terminal or a plain file, width characters
// wide. Tables wider than that run over; they are never cut.
func (d Document) Text(width int) string {
	d = d.forPeople()
	t := setter{&plain.Lines{Width: width}}
	for _, line := range d.House {
		t.line(line)
	}
	t.Gap()
	t.line(strings.ToUpper(d.Title))
	t.line(d.About)
	for _, mark := range d.Marks {
		t.line("*** " + mark + " ***")
	}
	for _, b := range d.Blocks {
		if _, newPage := b.(NewPage); newPage {
			continue // a terminal has one page
		}
		t.Gap()
		t.block(b)
	}
	if d.Footer != "" {
		t.Gap()
		t.para(d.Footer)
	}
	return t.Text()
}

type setter struct{ *plain.Lines }

// line adds a line, if there is one.
func (t *setter) line(s string) {
	if s != "" {
		t.Line(s)
	}
}

func (t *setter) block(b Block) {
	switch b := b.(type) {
	case Heading:
		t.line(b.Text)
		t.line(strings.Repeat("-", plain.Letters(b.Text)))
	case Para:
		t.para(b.Text)
	case Pairs:
		t.pairs(b)
	case Table:
		t.table(b)
	case Bars:
		t.bars(b)
	case Steps:
		t.steps(b)
	case Signing:
		for _, name := range b.Names {
			t.line(name + ": " + strings.Repeat("_", max(8, t.Width-plain.Letters(name)-2)))
		}
	}
}

func (t *setter) para(text string) { t.Running("", "", text) }

func (t *setter) pairs(b Pairs) {
	label := 0
	for _, p := range b.Pairs {
		label = max(label, plain.Letters(p.Label))
	}
	for _, p := range b.Pairs {
		name := p.Label
		for _, part := range plain.Paragraph(p.Value, max(20, t.Width-label-2)) {
			t.line(plain.Left(name, label+2) + part)
			name = ""
		}
	}
}

func (t *setter) table(b Table) {
	if len(b.Rows) == 0 {
		t.para(b.Empty)
		return
	}
	widths := make([]int, len(b.Columns))
	for i, c := range b.Columns {
		widths[i] = plain.Letters(c.Title)
		for _, r := range b.Rows {
			widths[i] = max(widths[i], plain.Letters(r.Cells[i]))
		}
	}
	t.tableLine(b.Columns, widths, b.titles())
	t.rule(widths)
	for _, r := range b.Rows {
		if r.Kind == Total {
			t.rule(widths)
		}
		t.tableLine(b.Columns, widths, r.Cells)
	}
}

func (t *setter) rule(widths []int) {
	total := 2 * (len(widths) - 1)
	for _, w := range widths {
		total += w
	}
	t.line(strings.Repeat("-", total))
}

func (t *setter) tableLine(columns []Column, widths []int, cells []string) {
	parts := make([]string, len(cells))
	for i, cell := range cells {
		parts[i] = plain.Left(cell, widths[i])
		if columns[i].Align == Right {
			parts[i] = plain.Right(cell, widths[i])
		}
	}
	t.line(strings.Join(parts, "  "))
}

// barCells is the length of the longest bar in characters.
const barCells = 40

func (t *setter) bars(b Bars) {
	t.line(b.Title)
	if len(b.Labels) == 0 {
		t.para(b.Empty)
		return
	}
	label := 0
	for _, l := range b.Labels {
		label = max(label, plain.Letters(l))
	}
	for i, l := range b.Labels {
		t.line(plain.Left(l, label) + " " + strings.Repeat("#", b.Heights[i]*barCells/1000) + " " + b.Values[i])
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
