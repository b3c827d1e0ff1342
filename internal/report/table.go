package report

import (
	"cmp"
	"slices"

	"tenthpoint/internal/paper"
	"tenthpoint/internal/textwrap"
)

const (
	cellGap  = 9 * pt   // between columns
	rowAbove = 1.2 * pt // above and below a row's words
)

// tableSizes are tried from the first; a table that fits in none is set as
// small as it must be. In all but the last ones every row is to take one line.
var tableSizes = []paper.Length{9 * pt, 8.5 * pt, 8 * pt, 7.5 * pt, 7 * pt, 6.5 * pt, 6 * pt}

const (
	sizesOfOneLine    = 5
	sizesOfMoreBegin  = 3
	smallestTableSize = 3 * pt
)

// natural is the size that widths are compared in.
const natural = 1000 * pt

// tableLayout is the layout of a table between the margins.
type tableLayout struct {
	printed
	size   paper.Length
	widths []paper.Length
}

func (f tableLayout) style(kind RowKind) paper.Style {
	switch kind {
	case Total:
		return style(f.size, 0).Strong()
	case Struck:
		return style(f.size, 90)
	}
	return style(f.size, 0)
}

// fit finds the largest size in which every row takes one line, and failing
// that one in which no figure and no word is broken.
func fit(t printed, room paper.Length) tableLayout {
	least, full := naturalWidths(t)
	room -= cellGap * paper.Length(len(t.columns)-1)
	for _, size := range tableSizes[:sizesOfOneLine] {
		if widths := scaled(full, size); total(widths) <= room {
			return tableLayout{t, size, spread(widths, room)}
		}
	}
	for _, size := range tableSizes[sizesOfMoreBegin:] {
		if widths := scaled(least, size); total(widths) <= room {
			return tableLayout{t, size, between(widths, scaled(full, size), room)}
		}
	}
	size := max(smallestTableSize, room*natural/total(least))
	return tableLayout{t, size, scaled(least, size)}
}

// naturalWidths are the least and the full widths of the columns.
func naturalWidths(t printed) (least, full []paper.Length) {
	least, full = make([]paper.Length, len(t.columns)), make([]paper.Length, len(t.columns))
	for c, column := range t.columns {
		least[c] = longestWord(column.title, paper.Style{Size: natural, Bold: true})
		full[c] = least[c]
		for _, r := range t.rows {
			look := paper.Style{Size: natural, Bold: r.kind == Total}
			whole := look.Width(r.cells[c])
			full[c] = max(full[c], whole)
			if column.align == Right {
				least[c] = max(least[c], whole)
			} else {
				least[c] = max(least[c], longestWord(r.cells[c], look))
			}
		}
	}
	return least, full
}

func longestWord(text string, s paper.Style) (longest paper.Length) {
	for _, word := range textwrap.Words(text) {
		longest = max(longest, s.Width(word))
	}
	return longest
}

func total(widths []paper.Length) (sum paper.Length) {
	for _, w := range widths {
		sum += w
	}
	return sum
}

// scaled are natural widths in a size, none of them a hair too narrow.
func scaled(widths []paper.Length, size paper.Length) []paper.Length {
	out := make([]paper.Length, len(widths))
	for i, w := range widths {
		out[i] = w*size/natural + 2
	}
	return out
}

// spread adds some of the remaining room to the columns, so that a small table is neither cramped
// nor stretched.
func spread(widths []paper.Length, room paper.Length) []paper.Length {
	const most = 26 * pt
	each := min(most, (room-total(widths))/paper.Length(len(widths)))
	for i := range widths {
		widths[i] += each
	}
	return widths
}

// between gives the columns with the smallest deficit their full width, since breaking a short word
// saves nothing; the others share the rest.
func between(least, full []paper.Length, room paper.Length) []paper.Length {
	widths := slices.Clone(least)
	lack := make([]int, len(widths))
	for i := range lack {
		lack[i] = i
	}
	wish := func(i int) paper.Length { return full[i] - least[i] }
	slices.SortStableFunc(lack, func(a, b int) int { return cmp.Compare(wish(a), wish(b)) })
	give := room - total(widths)
	for n, i := range lack {
		part := min(wish(i), give/paper.Length(len(lack)-n))
		widths[i] += part
		give -= part
	}
	return widths
}

// table is its head and its rows. The head is set again on every page; a row and the
// totals right under it stay together, and so do the first two rows.
func (s *sheet) table(t printed) []paper.Block {
	if len(t.rows) == 0 {
		return para(t.empty, s.Room(), false)
	}
	f := fit(t, s.Room())
	head := f.head()
	again := head
	head.Above, head.Tied = gapBefore, true
	out := []paper.Block{head}
	for i, r := range t.rows {
		row := f.row(r)
		row.Again = &again
		row.Tied = i+1 < len(t.rows) && (i == 0 || t.rows[i+1].kind == Total)
		out = append(out, row)
	}
	out[len(out)-1].Height += 2 * pt
	return out
}

// cellLines are a row's cells folded into their columns.
func (f tableLayout) cellLines(cells []string, look paper.Style, foldAll bool) (lines [][]string, most int) {
	lines = make([][]string, len(cells))
	for c, text := range cells {
		lines[c] = []string{text}
		if foldAll || f.columns[c].align == Left {
			lines[c] = wrap(text, f.widths[c]+pt/2, look)
		}
		most = max(most, len(lines[c]))
	}
	return lines, most
}

func (f tableLayout) width() paper.Length {
	return total(f.widths) + cellGap*paper.Length(len(f.widths)-1)
}

// head sets the titles, the last line of each on one level.
func (f tableLayout) head() (b paper.Block) {
	look := f.style(Total)
	lines, most := f.cellLines(f.titles(), look, true)
	for c := range lines {
		down := paper.Length(most-len(lines[c])) * look.Leading()
		f.cell(&b.Marks, c, down, lines[c], look)
	}
	under := paper.Length(most)*look.Leading() + 2*pt
	b.Line(0, under, f.width(), under, 0.7*pt, black)
	b.Height = under + 2*pt
	return b
}

func (f tableLayout) row(r row) (b paper.Block) {
	look := f.style(r.kind)
	lines, most := f.cellLines(r.cells, look, false)
	b.Height = paper.Length(most)*look.Leading() + 2*rowAbove
	if r.kind == Total {
		b.Line(0, 0, f.width(), 0, 0.5*pt, black)
	}
	for c := range lines {
		f.cell(&b.Marks, c, rowAbove, lines[c], look)
	}
	for n := 0; r.kind == Struck && n < most; n++ {
		middle := rowAbove + look.Size*68/100 + paper.Length(n)*look.Leading()
		b.Line(0, middle, f.struckWidth(), middle, 0.5*pt, paper.Grey(60))
	}
	if r.kind != Total {
		b.Line(0, b.Height, f.width(), b.Height, 0.25*pt, rowInk)
	}
	return b
}

// struckWidth goes as far as the last figure: the words after it say why the
// row is struck.
func (f tableLayout) struckWidth() paper.Length {
	last := len(f.columns) - 1
	for last > 0 && f.columns[last].align == Left {
		last--
	}
	return total(f.widths[:last+1]) + cellGap*paper.Length(last)
}

func (f tableLayout) cell(m *paper.Marks, c int, y paper.Length, lines []string, look paper.Style) {
	x := total(f.widths[:c]) + cellGap*paper.Length(c)
	if f.columns[c].align == Left {
		m.Paragraph(x, y, lines, look)
		return
	}
	for i, line := range lines {
		m.TextEnding(x+f.widths[c], y+paper.Length(i)*look.Leading()+look.Baseline(), line, look)
	}
}
