package kit

import (
	"tenthpoint/ui/model"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

var (
	cellLetters   = lettering{size: theme.SizeNameText, color: ColorInk}
	headerLetters = lettering{size: SizeNote, color: ColorQuiet, style: bold}
)

// cell is one place in a table. The ground of a chosen row is drawn by its
// cells, each reaching over the gap to the next.
type cell struct {
	widget.BaseWidget
	face
}

// face is what a cell shows.
type face struct {
	text    string
	letters lettering
	align   fyne.TextAlign
	state   model.State // its icon stands before the text
	chosen  bool        // its row is chosen
	keyed   bool        // and the table has the keyboard
	first   bool        // it begins the row
	struck  bool        // a line goes through it
	total   bool        // it adds up what stands above
	header  bool
	twoLine bool // the text may stand on two lines
	narrow  bool // little ground at its sides
}

func newCell(l lettering) *cell {
	c := &cell{face: face{letters: l}}
	c.ExtendBaseWidget(c)
	return c
}

// show gives a cell another face, and repaints only when it differs.
func (c *cell) show(f face) {
	if c.face != f {
		c.face = f
		c.Refresh()
	}
}

// showCell fills a cell. A row that is gone by now shows empty: Fyne may still
// ask for it after the list shrank.
func (t *Table) showCell(id widget.TableCellID, o fyne.CanvasObject) {
	c := o.(*cell)
	if id.Row < 0 || id.Row >= len(t.rows) || id.Col < 0 || id.Col >= len(t.shown) {
		c.show(face{letters: t.letters()})
		return
	}
	at := t.shown[id.Col]
	row, column := t.rows[id.Row], t.columns[at]
	f := face{
		text: row.Cell(at), letters: t.letters(), align: column.Align,
		chosen: id.Row == t.chosen, keyed: t.focused, first: id.Col == 0, narrow: t.isNarrow(),
		struck: row.Struck && !column.State, total: row.Total,
	}
	if row.Total {
		f.letters.style = bold
	}
	if column.State && row.State != model.Plain {
		f.state, f.letters.color = row.State, stateInk(row.State)
	}
	c.show(f)
}

func (t *Table) showHeader(id widget.TableCellID, o fyne.CanvasObject) {
	f := t.headerFace()
	if id.Col >= 0 && id.Col < len(t.shown) {
		column := t.columns[t.shown[id.Col]]
		f.text, f.align = column.Title, column.Align
	}
	o.(*cell).show(f)
}

func (t *Table) headerFace() face {
	return face{letters: t.headers(), header: true, narrow: t.isNarrow(), twoLine: t.fitted.twoLine}
}

// aside is the ground left and right of what a cell says.
func aside(p pen, narrow bool) float32 {
	if narrow {
		return p.pad()
	}
	return p.inner()
}

// CreateRenderer is Fyne's way to draw the cell.
func (c *cell) CreateRenderer() fyne.WidgetRenderer { return newDrawing(c) }

func (c *cell) least() fyne.Size {
	p := penFor(c)
	return fyne.NewSize(p.inner()*4, p.lineHeight(c.letters)+p.inner())
}

func (c *cell) draw(size fyne.Size) []fyne.CanvasObject {
	p := penFor(c)
	gap := p.pad()
	var objects []fyne.CanvasObject
	if c.chosen {
		objects = append(objects, p.block(ColorChosen, fyne.NewPos(0, -gap/2), size.AddWidthHeight(gap, gap)))
		if c.keyed {
			objects = append(objects,
				p.block(ColorFocus, fyne.NewPos(0, -gap/2), fyne.NewSize(size.Width+gap, 1)),
				p.block(ColorFocus, fyne.NewPos(0, size.Height+gap/2-1), fyne.NewSize(size.Width+gap, 1)))
		}
		if c.first {
			objects = append(objects, p.block(ColorFocus, fyne.NewPos(0, -gap/2), fyne.NewSize(p.size(SizeMark)+1, size.Height+gap)))
		}
	} else if !c.header {
		objects = append(objects, p.block(ColorRule, fyne.NewPos(0, size.Height+gap/2-1), fyne.NewSize(size.Width+gap, 1)))
	}
	if c.total {
		objects = append(objects, p.block(ColorInk, fyne.NewPos(0, -gap/2), fyne.NewSize(size.Width+gap, 1)))
	}
	left, right := aside(p, c.narrow), size.Width-aside(p, c.narrow)
	top := (size.Height - p.lineHeight(c.letters)) / 2
	if icon := StateIcon(c.state); icon != nil {
		side := p.lineHeight(c.letters) - 2
		objects = append(objects, p.icon(icon, fyne.NewPos(left, top+1), side))
		left += side + p.pad()
	}
	if c.twoLine {
		return append(objects, c.onLines(p, left, right, size.Height)...)
	}
	text := p.clip(c.text, c.letters, right-left)
	width := p.measure(text, c.letters).Width
	if c.align == fyne.TextAlignTrailing {
		left = right - width
		objects = append(objects, p.writeEnding(text, c.letters, right, top))
	} else {
		objects = append(objects, p.write(text, c.letters, fyne.NewPos(left, top)))
	}
	if c.struck && text != "" {
		objects = append(objects, p.block(c.letters.color, fyne.NewPos(left, size.Height/2), fyne.NewSize(width, 1)))
	}
	return objects
}

// onLines writes the text on as many lines as it needs, in the middle.
func (c *cell) onLines(p pen, left, right, height float32) []fyne.CanvasObject {
	lines := p.wrap(c.text, c.letters, right-left+1)
	y := (height - float32(len(lines))*p.lineHeight(c.letters)) / 2
	var out []fyne.CanvasObject
	for _, line := range lines {
		if c.align == fyne.TextAlignTrailing {
			out = append(out, p.writeEnding(line, c.letters, right, y))
		} else {
			out = append(out, p.write(line, c.letters, fyne.NewPos(left, y)))
		}
		y += p.lineHeight(c.letters)
	}
	return out
}
