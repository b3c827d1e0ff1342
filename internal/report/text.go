package report

import (
	"strings"
	"unicode/utf8"

	"tenthpoint/internal/textwrap"
)

// Text sets the document for a terminal or a plain file, width characters
// wide. Tables wider than that run over; they are never cut.
func (d Document) Text(width int) string {
	d = d.forPeople()
	t := setter{width: width}
	for _, line := range d.House {
		t.line(line)
	}
	t.gap()
	t.line(strings.ToUpper(d.Title))
	t.line(d.About)
	for _, mark := range d.Marks {
		t.line("*** " + mark + " ***")
	}
	for _, b := range d.Blocks {
		if _, newPage := b.(NewPage); newPage {
			continue // a terminal has one page
		}
		t.gap()
		t.block(b)
	}
	if d.Footer != "" {
		t.gap()
		t.para(d.Footer)
	}
	return t.out.String()
}

type setter struct {
	out   strings.Builder
	width int
}

func (t *setter) line(s string) {
	if s != "" {
		t.out.WriteString(strings.TrimRight(s, " ") + "\n")
	}
}

func (t *setter) gap() {
	if t.out.Len() > 0 {
		t.out.WriteByte('\n')
	}
}

func (t *setter) block(b Block) {
	switch b := b.(type) {
	case Heading:
		t.line(b.Text)
		t.line(strings.Repeat("-", utf8.RuneCountInString(b.Text)))
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
			t.line(name + ": " + strings.Repeat("_", max(8, t.width-utf8.RuneCountInString(name)-2)))
		}
	}
}

func (t *setter) para(text string) {
	for _, line := range Wrap(text, t.width) {
		t.line(line)
	}
}

func (t *setter) pairs(b Pairs) {
	label := 0
	for _, p := range b.Pairs {
		label = max(label, utf8.RuneCountInString(p.Label))
	}
	for _, p := range b.Pairs {
		pad := strings.Repeat(" ", label-utf8.RuneCountInString(p.Label)+2)
		for i, part := range Wrap(p.Value, max(20, t.width-label-2)) {
			if i > 0 {
				t.line(strings.Repeat(" ", label+2) + part)
			} else {
				t.line(p.Label + pad + part)
			}
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
		widths[i] = utf8.RuneCountInString(c.Title)
		for _, r := range b.Rows {
			widths[i] = max(widths[i], utf8.RuneCountInString(r.Cells[i]))
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
		pad := strings.Repeat(" ", max(0, widths[i]-utf8.RuneCountInString(cell)))
		if columns[i].Align == Right {
			parts[i] = pad + cell
		} else {
			parts[i] = cell + pad
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
		label = max(label, utf8.RuneCountInString(l))
	}
	for i, l := range b.Labels {
		pad := strings.Repeat(" ", label-utf8.RuneCountInString(l))
		t.line(l + pad + " " + strings.Repeat("#", b.Heights[i]*barCells/1000) + " " + b.Values[i])
	}
}

func (t *setter) steps(b Steps) {
	for i, s := range b.Steps {
		if s.Part {
			if i > 0 {
				t.gap()
			}
			t.line(strings.ToUpper(s.Label))
			continue
		}
		gap := max(1, t.width-utf8.RuneCountInString(s.Label)-utf8.RuneCountInString(s.Figure))
		t.line(s.Label + strings.Repeat(" ", gap) + s.Figure)
		for _, e := range s.Explain {
			for _, part := range Wrap(e, t.width-4) {
				t.line("    " + part)
			}
		}
	}
}

// Wrap breaks text at spaces so that no line is wider than width, unless one
// word is. No text is one empty line.
func Wrap(text string, width int) []string {
	return orEmptyLine(textwrap.Lines(textwrap.Fields(text), textwrap.InWidth(width)))
}

// orEmptyLine keeps the room of a text that is empty.
func orEmptyLine(lines []string) []string {
	if len(lines) == 0 {
		return []string{""}
	}
	return lines
}
