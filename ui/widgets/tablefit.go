package widgets

import (
	"slices"
	"strings"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
)

// columnFit fits the columns of a table into a width: the text size, the columns shown, and their
// widths.
type columnFit struct {
	columns []model.Column
	fitting
	shown  []int   // the columns there is room for
	header float32 // how high the header is
}

// letters is the text style of the rows.
func (c *columnFit) letters() paint.TextStyle {
	return paint.TextStyle{Size: c.size.name(), Color: apptheme.ColorInk}
}

// headers is the text style of the column titles.
func (c *columnFit) headers() paint.TextStyle {
	if c.size == fineCells {
		return paint.TextStyle{Size: apptheme.SizeFine, Color: apptheme.ColorQuiet, Style: paint.Bold}
	}
	return headerLetters
}

// isNarrow reports whether there is little ground at the sides of the cells.
func (c *columnFit) isNarrow() bool { return c.size != ordinaryCells }

// cellSize is the text size of a table.
type cellSize int

const (
	ordinaryCells cellSize = iota
	smallCells
	fineCells // half as much larger than ordinary as the others are, where letters are large
)

func (s cellSize) name() fyne.ThemeSizeName {
	return [...]fyne.ThemeSizeName{cellLetters.Size, apptheme.SizeNote, apptheme.SizeFine}[s]
}

// fitting is one way to lay out a table: its text size, whether columns get the width they prefer,
// whether titles wrap to two lines, and whether optional columns may be dropped before the next way
// is tried.
type fitting struct {
	size                     cellSize
	wished, twoLine, sparing bool
}

// fittings are tried in turn until one fits; the last one is used in any case.
func fittings(small bool) []fitting {
	if small {
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

// fit chooses text size and columns for a width, and returns the widths of the columns shown. Small
// tables prefer small text to leaving columns out.
func (c *columnFit) fit(p paint.Painter, room float32, small bool) []float32 {
	var widths []float32
	var left float32
	for _, f := range fittings(small) {
		if room <= 0 && f.size != ordinaryCells { // not yet on a screen
			break
		}
		c.fitting = f
		widths, left = c.widths(p, room)
		if _, without := c.drop(p, widths, left); left >= 0 || f.sparing && without >= 0 {
			break
		}
	}
	c.shown, left = c.drop(p, widths, left)
	out := make([]float32, len(c.shown))
	for at, i := range c.shown {
		out[at] = widths[i]
		if c.columns[i].Grow && left > 0 {
			out[at], left = out[at]+paint.Floor(left), 0
		}
	}
	return out
}

// widths are the widths of all columns in the letters set, and the room they
// leave, which is negative where they do not fit.
func (c *columnFit) widths(p paint.Painter, room float32) ([]float32, float32) {
	l := c.letters()
	figure := p.Measure("0", l).Width
	widths := make([]float32, len(c.columns))
	left := room + p.Pad()
	for i, column := range c.columns {
		figures := column.Width
		if c.wished {
			figures = max(figures, column.Wish)
		}
		title := paint.Ceil(c.titleWidth(p, column.Title))
		widths[i] = paint.Floor(max(float32(figures)*figure, title) + 2*aside(p, c.isNarrow()) + 1)
		if column.State {
			widths[i] += paint.Floor(p.LineHeight(l) + p.Pad())
		}
		left -= widths[i] + p.Pad()
	}
	return widths, left
}

// titleWidth returns the width a title needs, on the lines it may take.
func (c *columnFit) titleWidth(p paint.Painter, title string) float32 {
	l := c.headers()
	width := p.Measure(title, l).Width
	if !c.twoLine {
		return width
	}
	words := strings.Fields(title)
	for i := 1; i < len(words); i++ {
		upper, lower := strings.Join(words[:i], " "), strings.Join(words[i:], " ")
		width = min(width, max(p.Measure(upper, l).Width, p.Measure(lower, l).Width))
	}
	return width
}

// drop leaves out optional columns until the others fit, and returns those that stay and the room
// they leave.
func (c *columnFit) drop(p paint.Painter, widths []float32, left float32) ([]int, float32) {
	shown := make([]int, len(widths))
	for i := range shown {
		shown[i] = i
	}
	for left < 0 {
		out := -1
		for at, i := range shown {
			if rank := c.columns[i].Drop; rank > 0 && (out < 0 || rank > c.columns[shown[out]].Drop) {
				out = at
			}
		}
		if out < 0 {
			break
		}
		left += widths[shown[out]] + p.Pad()
		shown = slices.Delete(shown, out, out+1)
	}
	return shown, left
}

// headerHeight is the height the titles need in columns of these widths.
func (c *columnFit) headerHeight(p paint.Painter, widths []float32) float32 {
	lines, l := 1, c.headers()
	for at, i := range c.shown {
		if c.twoLine {
			lines = max(lines, len(p.Wrap(c.columns[i].Title, l, widths[at]-2*aside(p, c.isNarrow())+1)))
		}
	}
	return max(float32(lines)*p.LineHeight(l), p.LineHeight(c.letters())) + p.Inner()
}

// wideFigures is how wide a table is, in figures, before its rows are tinted in turn.
const wideFigures = 90

// wide is that width.
func (c *columnFit) wide(p paint.Painter) float32 {
	return wideFigures * p.Measure("0", c.letters()).Width
}

// rowFace returns the content of a row's cell in the column at an index.
func (c *columnFit) rowFace(row model.Row, at int) face {
	i := c.shown[at]
	column := c.columns[i]
	f := face{
		text: row.Cell(i), letters: c.letters(), trailing: column.Figures, first: at == 0, narrow: c.isNarrow(),
		struck: row.Struck && !column.State, total: row.Total,
	}
	if row.Total {
		f.letters.Style = paint.Bold
	}
	if column.State && row.State != model.Plain {
		f.state, f.letters.Color = row.State, apptheme.StateInk(row.State)
	}
	return f
}

// titleFace returns the header of the column at an index.
func (c *columnFit) titleFace(at int) face {
	f := face{letters: c.headers(), header: true, narrow: c.isNarrow(), twoLine: c.twoLine}
	if at >= 0 && at < len(c.shown) {
		column := c.columns[c.shown[at]]
		f.text, f.trailing = column.Title, column.Figures
	}
	return f
}
