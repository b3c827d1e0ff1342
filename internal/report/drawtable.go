package report

import (
	"cmp"
	"slices"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"

	"tenthpoint/internal/textwrap"
)

const (
	cellGap  = 9.0 // between columns
	rowAbove = 1.2 // above and below a row's words
)

// tableSizes are tried from the first; a table that fits in none is set as
// small as it must be.
var tableSizes = []float64{9, 8.5, 8, 7.5, 7, 6.5, 6}

// fitting is how a table fits between the margins.
type fitting struct {
	size   float64
	widths []float64
}

func (f fitting) pen(kind RowKind) pen {
	p := pen{size: f.size, bold: kind == Total}
	if kind == Struck {
		p.grey = 90
	}
	return p
}

// fit finds the largest size in which every row takes one line, and failing
// that one in which no figure and no word is broken.
func (s *sheet) fit(t Table) fitting {
	least, full := s.natural(t)
	room := s.room() - cellGap*float64(len(t.Columns)-1)
	for _, size := range tableSizes[:5] {
		if total(full)*size <= room {
			return s.spread(fitting{size, scaled(full, size)}, room)
		}
	}
	for _, size := range tableSizes[3:] {
		if total(least)*size <= room {
			return s.between(size, least, full, room)
		}
	}
	size := room / total(least)
	return fitting{size, scaled(least, size)}
}

// natural are the least and the full widths of the columns at size 1.
func (s *sheet) natural(t Table) (least, full []float64) {
	least, full = make([]float64, len(t.Columns)), make([]float64, len(t.Columns))
	for c, column := range t.Columns {
		least[c] = s.longestWord(column.Title, pen{size: 1, bold: true})
		full[c] = least[c]
		for _, r := range t.Rows {
			p := pen{size: 1, bold: r.Kind == Total}
			whole := s.measure(r.Cells[c], p)
			full[c] = max(full[c], whole)
			if column.Align == Right {
				least[c] = max(least[c], whole)
			} else {
				least[c] = max(least[c], s.longestWord(r.Cells[c], p))
			}
		}
	}
	return least, full
}

func (s *sheet) longestWord(text string, p pen) float64 {
	longest := 0.0
	for _, word := range textwrap.Fields(text) {
		longest = max(longest, s.measure(word, p))
	}
	return longest
}

func total(widths []float64) float64 {
	sum := 0.0
	for _, w := range widths {
		sum += w
	}
	return sum
}

func scaled(widths []float64, by float64) []float64 {
	out := make([]float64, len(widths))
	for i, w := range widths {
		out[i] = w * by
	}
	return out
}

// spread gives the columns some of the room that is left, so that a small table
// is not pressed together and not pulled apart.
func (s *sheet) spread(f fitting, room float64) fitting {
	const most = 26.0
	each := min(most, (room-total(f.widths))/float64(len(f.widths)))
	for i := range f.widths {
		f.widths[i] += each
	}
	return f
}

// between gives the columns that lack least all they would like, for a short
// word broken in two saves nothing; the ones that lack most share what is left.
func (s *sheet) between(size float64, least, full []float64, room float64) fitting {
	widths := scaled(least, size)
	lack := make([]int, len(widths))
	for i := range lack {
		lack[i] = i
	}
	wish := func(i int) float64 { return (full[i] - least[i]) * size }
	slices.SortStableFunc(lack, func(a, b int) int { return cmp.Compare(wish(a), wish(b)) })
	give := room - total(widths)
	for n, i := range lack {
		part := min(wish(i), give/float64(len(lack)-n))
		widths[i] += part
		give -= part
	}
	return fitting{size, widths}
}

func (s *sheet) table(t Table) {
	if len(t.Rows) == 0 {
		s.para(Para{Text: t.Empty})
		return
	}
	f := s.fit(t)
	s.need(f.headHeight(s, t) + f.rowHeight(s, t, t.Rows[0]))
	f.head(s, t)
	for i, row := range t.Rows {
		if s.y+f.together(s, t, i) > s.floor {
			s.newPage()
			f.head(s, t)
		}
		f.row(s, t, row)
	}
	s.y += 2
}

// together is the height of a row with the totals right under it, which do not
// stand on a page of their own.
func (f fitting) together(s *sheet, t Table, i int) float64 {
	height := f.rowHeight(s, t, t.Rows[i])
	if t.Rows[i].Kind == Total {
		return height
	}
	for _, next := range t.Rows[i+1:] {
		if next.Kind != Total {
			break
		}
		height += f.rowHeight(s, t, next)
	}
	return height
}

// cellLines are a row's cells folded into their columns.
func (f fitting) cellLines(s *sheet, t Table, cells []string, p pen, foldAll bool) (lines [][]string, most int) {
	lines = make([][]string, len(cells))
	for c, text := range cells {
		lines[c] = []string{text}
		if foldAll || t.Columns[c].Align == Left {
			lines[c] = s.wrap(text, f.widths[c]+0.5, p)
		}
		most = max(most, len(lines[c]))
	}
	return lines, most
}

func (f fitting) rowHeight(s *sheet, t Table, r Row) float64 {
	_, most := f.cellLines(s, t, r.Cells, f.pen(r.Kind), false)
	return float64(most)*f.pen(r.Kind).lead() + 2*rowAbove
}

func (f fitting) headHeight(s *sheet, t Table) float64 {
	_, most := f.cellLines(s, t, t.titles(), f.pen(Total), true)
	return float64(most)*f.pen(Total).lead() + 4
}

func (f fitting) width() float64 {
	return total(f.widths) + cellGap*float64(len(f.widths)-1)
}

// head sets the titles, the last line of each on one level.
func (f fitting) head(s *sheet, t Table) {
	p := f.pen(Total)
	lines, most := f.cellLines(s, t, t.titles(), p, true)
	for c := range lines {
		down := float64(most-len(lines[c])) * p.lead()
		f.cell(s, t, c, s.y+down, lines[c], p)
	}
	s.y += float64(most)*p.lead() + 2
	s.line(margin, s.y, margin+f.width(), s.y, 0.7, 0)
	s.y += 2
}

func (f fitting) row(s *sheet, t Table, r Row) {
	p := f.pen(r.Kind)
	lines, most := f.cellLines(s, t, r.Cells, p, false)
	height := float64(most)*p.lead() + 2*rowAbove
	if r.Kind == Total {
		s.line(margin, s.y, margin+f.width(), s.y, 0.5, 0)
	}
	for c := range lines {
		f.cell(s, t, c, s.y+rowAbove, lines[c], p)
	}
	for n := 0; r.Kind == Struck && n < most; n++ {
		middle := s.y + rowAbove + p.size*0.68 + float64(n)*p.lead()
		s.line(margin, middle, margin+f.struckWidth(t), middle, 0.5, 60)
	}
	s.y += height
	if r.Kind != Total {
		s.line(margin, s.y, margin+f.width(), s.y, 0.25, 205)
	}
}

// struckWidth goes as far as the last figure: the words after it say why the
// row is struck.
func (f fitting) struckWidth(t Table) float64 {
	last := len(t.Columns) - 1
	for last > 0 && t.Columns[last].Align == Left {
		last--
	}
	return total(f.widths[:last+1]) + cellGap*float64(last)
}

func (f fitting) cell(s *sheet, t Table, c int, y float64, lines []string, p pen) {
	x := margin + total(f.widths[:c]) + cellGap*float64(c)
	for _, line := range lines {
		if t.Columns[c].Align == Right {
			s.writeRight(x+f.widths[c], y, line, p)
		} else {
			s.write(x, y, line, p)
		}
		y += p.lead()
	}
}

// widths makes each column of a sheet as wide as what is in it, within reason.
func (b *workbook) widths(sheet string, t Table) {
	for c, column := range t.Columns {
		widest := min(utf8.RuneCountInString(column.Title), 12) // titles wrap
		for _, row := range t.Rows {
			widest = max(widest, utf8.RuneCountInString(row.Cells[c]))
		}
		letter, err := excelize.ColumnNumberToName(c + 1)
		b.must(err)
		b.must(b.SetColWidth(sheet, letter, letter, float64(min(widest, 50)+2)))
	}
}
