package report

import (
	"slices"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/paper/plain"
)

// Text sets the document for a terminal or a plain file, width characters
// wide. Tables wider than that run over; they are never cut.
func (d Document) Text(width int) string { return d.text(width, false) }

// Folded is [Document.Text] for a screen: a table that is wider breaks its headings and words into
// lines, and is then set in parts under one another. Figures are never cut.
func (d Document) Folded(width int) string { return d.text(width, true) }

func (d Document) text(width int, folds bool) string {
	t := setter{&plain.Lines{Width: width}, d.forPeople(), folds}
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
		switch b.(type) {
		case NewPage, Picture:
			continue // a terminal has one page; the figures of a picture are in a table
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
	say   *message.Printer
	folds bool
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
	widths := t.tableWidths(b)
	if parts := parted(widths, t.Width); t.folds && len(parts) > 1 {
		for i, columns := range parts {
			if i > 0 {
				t.Gap()
			}
			t.table(b.only(columns))
		}
		return
	}
	t.tableRow(b.columns, widths, b.titles())
	t.rule(widths)
	for _, r := range b.rows {
		if r.kind == Total {
			t.rule(widths)
		}
		t.tableRow(b.columns, widths, r.cells)
	}
}

// tableWidths are the letters of each column. Where a folded table would be wider than the text, headings
// are broken between words, and then cells of words; figures stay whole.
func (t *setter) tableWidths(b printed) []int {
	full, headed, least := make([]int, len(b.columns)), make([]int, len(b.columns)), make([]int, len(b.columns))
	for i, c := range b.columns {
		headed[i], least[i] = longestPart(c.title), longestPart(c.title)
		full[i] = plain.Letters(c.title)
		for _, r := range b.rows {
			cell := plain.Letters(r.cells[i])
			full[i], headed[i] = max(full[i], cell), max(headed[i], cell)
			if c.align != Right {
				cell = longestPart(r.cells[i])
			}
			least[i] = max(least[i], cell)
		}
	}
	switch {
	case !t.folds || tableLength(full) <= t.Width:
		return full
	case tableLength(headed) <= t.Width:
		return headed
	}
	return narrowed(headed, least, t.Width)
}

// narrowed takes letters from the widest columns, down to the least of each, until they fit.
func narrowed(widths, least []int, room int) []int {
	for tableLength(widths) > room {
		widest := -1
		for i := range widths {
			if widths[i] > least[i] && (widest < 0 || widths[i] > widths[widest]) {
				widest = i
			}
		}
		if widest < 0 {
			break // never cut
		}
		widths[widest]--
	}
	return widths
}

// parted are the columns of a table too wide for the text, in parts that fit; each begins with the
// table's first column, by which its rows are known.
func parted(widths []int, room int) [][]int {
	parts, length := [][]int{{0}}, widths[0]
	for i := 1; i < len(widths); i++ {
		if last := len(parts) - 1; length+2+widths[i] <= room || len(parts[last]) == 1 {
			parts[last] = append(parts[last], i)
			length += 2 + widths[i]
			continue
		}
		parts, length = append(parts, []int{0, i}), widths[0]+2+widths[i]
	}
	return parts
}

// only is a table of some of its columns.
func (p printed) only(columns []int) printed {
	out := printed{empty: p.empty}
	for _, i := range columns {
		out.columns = append(out.columns, p.columns[i])
	}
	for _, r := range p.rows {
		cells := make([]string, len(columns))
		for n, i := range columns {
			cells[n] = r.cells[i]
		}
		r.cells = cells
		out.rows = append(out.rows, r)
	}
	return out
}

// longestPart is the longest word of a text.
func longestPart(text string) (longest int) {
	for _, word := range strings.Fields(text) {
		longest = max(longest, plain.Letters(word))
	}
	return longest
}

func tableLength(widths []int) int {
	total := 2 * (len(widths) - 1)
	for _, w := range widths {
		total += w
	}
	return total
}

func (t *setter) rule(widths []int) { t.line(strings.Repeat("-", tableLength(widths))) }

// tableRow adds a row, of as many lines as its longest cell takes.
func (t *setter) tableRow(columns []column, widths []int, cells []string) {
	lines := [][]string{cells}
	for i, cell := range cells {
		if plain.Letters(cell) <= widths[i] {
			continue
		}
		for n, part := range plain.Wrap(cell, widths[i]) {
			if n == len(lines) {
				lines = append(lines, make([]string, len(cells)))
			}
			lines[n] = slices.Clone(lines[n])
			lines[n][i] = part
		}
	}
	for _, line := range lines {
		t.tableLine(columns, widths, line)
	}
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
