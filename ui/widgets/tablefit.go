package widgets

import (
	"slices"
	"strings"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
)

// letters is how the rows are written.
func (t *Table) letters() paint.TextStyle {
	return paint.TextStyle{Size: t.fitted.size.name(), Color: apptheme.ColorInk}
}

// headers is how the titles of the columns are written.
func (t *Table) headers() paint.TextStyle {
	if t.fitted.size == fineCells {
		return paint.TextStyle{Size: apptheme.SizeFine, Color: apptheme.ColorQuiet, Style: paint.Bold}
	}
	return headerLetters
}

// rowHeight is a row with the gap to the next.
func (t *Table) rowHeight() float32 {
	return newCell(t.letters()).MinSize().Height + paint.PainterFor(t).Pad()
}

// cellSize is how large the letters of a table are.
type cellSize int

const (
	ordinaryCells cellSize = iota
	smallCells
	fineCells // half as much larger than ordinary as the others are, where letters are large
)

func (s cellSize) name() fyne.ThemeSizeName {
	return [...]fyne.ThemeSizeName{cellLetters.Size, apptheme.SizeNote, apptheme.SizeFine}[s]
}

// fitting is one way to set a table: how large its letters are, whether columns
// get the width they wish for, whether titles stand on two lines, and whether
// columns that can be done without may go rather than try the next.
type fitting struct {
	size                     cellSize
	wished, twoLine, sparing bool
}

// fittings are tried in turn until one fits; the last one stays in any case.
func (t *Table) fittings() []fitting {
	if t.Small {
		return []fitting{
			{wished: true}, {size: smallCells, wished: true}, {size: smallCells},
			{size: smallCells, twoLine: true}, {size: fineCells, twoLine: true},
		}
	}
	return []fitting{
		{wished: true}, {sparing: true}, {size: smallCells, sparing: true},
		{size: smallCells, twoLine: true, sparing: true}, {size: fineCells, twoLine: true},
	}
}

// titleWidth is the room a title needs, on the lines it may stand on.
func (t *Table) titleWidth(p paint.Painter, title string) float32 {
	l := t.headers()
	width := p.Measure(title, l).Width
	if !t.fitted.twoLine {
		return width
	}
	words := strings.Fields(title)
	for i := 1; i < len(words); i++ {
		upper, lower := strings.Join(words[:i], " "), strings.Join(words[i:], " ")
		width = min(width, max(p.Measure(upper, l).Width, p.Measure(lower, l).Width))
	}
	return width
}

// fit sets the letters, the columns that are shown and their widths. It reports
// whether letters or columns are others than before.
func (t *Table) fit(room float32) (changed bool) {
	before, shown := t.fitted, t.shown
	var widths []float32
	var left float32
	for _, f := range t.fittings() {
		if room <= 0 && f.size != ordinaryCells { // not yet on a screen
			break
		}
		t.fitted = f
		widths, left = t.widths(room)
		if _, without := t.spare(widths, left); left >= 0 || f.sparing && without >= 0 {
			break
		}
	}
	t.shown, left = t.spare(widths, left)
	for at, i := range t.shown {
		w := widths[i]
		if t.columns[i].Grow && left > 0 {
			w, left = w+paint.Floor(left), 0
		}
		widths[i] = w
		t.SetColumnWidth(at, w)
	}
	t.fitHeader(widths)
	return t.fitted.size != before.size || t.fitted.twoLine != before.twoLine || !slices.Equal(t.shown, shown)
}

// fitHeader gives the header the height of its titles.
func (t *Table) fitHeader(widths []float32) {
	p, lines, l := paint.PainterFor(t), 1, t.headers()
	for _, i := range t.shown {
		if t.fitted.twoLine {
			lines = max(lines, len(p.Wrap(t.columns[i].Title, l, widths[i]-2*aside(p, t.isNarrow())+1)))
		}
	}
	high := max(float32(lines)*p.LineHeight(l), p.LineHeight(t.letters())) + p.Inner()
	if high != t.header {
		t.header = high
		t.SetRowHeight(-1, high)
	}
}

// spare takes columns away that can be done without, until the others fit, and
// gives those that stay and the room they leave.
func (t *Table) spare(widths []float32, left float32) ([]int, float32) {
	shown := make([]int, len(widths))
	for i := range shown {
		shown[i] = i
	}
	for left < 0 {
		out := -1
		for at, i := range shown {
			if spare := t.columns[i].Spare; spare > 0 && (out < 0 || spare > t.columns[shown[out]].Spare) {
				out = at
			}
		}
		if out < 0 {
			break
		}
		left += widths[shown[out]] + paint.PainterFor(t).Pad()
		shown = slices.Delete(shown, out, out+1)
	}
	return shown, left
}

// widths are the columns' widths in the letters set, and the room they leave.
func (t *Table) widths(room float32) ([]float32, float32) {
	p, l := paint.PainterFor(t), t.letters()
	figure := p.Measure("0", l).Width
	widths := make([]float32, len(t.columns))
	left := room + p.Pad()
	for i, c := range t.columns {
		figures := c.Width
		if t.fitted.wished {
			figures = max(figures, c.Wish)
		}
		title := paint.Ceil(t.titleWidth(p, c.Title))
		widths[i] = paint.Floor(max(float32(figures)*figure, title) + 2*aside(p, t.isNarrow()) + 1)
		if c.State {
			widths[i] += paint.Floor(p.LineHeight(l) + p.Pad())
		}
		left -= widths[i] + p.Pad()
	}
	return widths, left
}

// isNarrow reports whether there is little ground at the sides of the cells.
func (t *Table) isNarrow() bool { return t.fitted.size != ordinaryCells }

// Column says how one column of a table looks.
type Column struct {
	ID    string
	Title string
	Width int            // in figures; at least this wide
	Wish  int            // in figures; this wide where there is room for all
	Spare int            // where there is no room for all, the highest goes first; 0 stays
	Grow  bool           // takes what room is left; at most one column should
	Align fyne.TextAlign // trailing for figures
	State bool           // shows the row's state: icon before the word, in its colour
}
