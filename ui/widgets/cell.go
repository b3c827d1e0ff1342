package widgets

import (
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

var (
	cellLetters   = paint.TextStyle{Size: theme.SizeNameText, Color: apptheme.ColorInk}
	headerLetters = paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.ColorQuiet, Style: paint.Bold}
)

// cell is one place in a table. The ground of a chosen row is drawn by its
// cells, each reaching over the gap to the next.
type cell struct {
	widget.BaseWidget
	face
}

// face is the content of a cell and its style.
type face struct {
	text     string
	letters  paint.TextStyle
	trailing bool        // at the right, as figures are set
	state    model.State // its icon is drawn before the text
	chosen   bool        // its row is chosen
	keyed    bool        // and the table has the focus
	first    bool        // it begins the row
	struck   bool        // a line goes through it
	total    bool        // a total of the cells above
	header   bool
	twoLine  bool // the text may wrap to two lines
	narrow   bool // little ground at its sides
	striped  bool // its row is tinted, so that the eye keeps to it across a wide table
}

func newCell(l paint.TextStyle) *cell {
	c := &cell{face: face{letters: l}}
	c.ExtendBaseWidget(c)
	return c
}

// show sets the content of a cell, and repaints only when it differs.
func (c *cell) show(f face) {
	if c.face != f {
		c.face = f
		c.Refresh()
	}
}

// aside is the padding left and right of a cell's text.
func aside(p paint.Painter, narrow bool) float32 {
	if narrow {
		return p.Pad()
	}
	return p.Inner()
}

func (c *cell) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(c) }

func (c *cell) LeastSize() fyne.Size {
	p := paint.PainterFor(c)
	return fyne.NewSize(p.Inner()*4, p.LineHeight(c.letters)+p.Inner())
}

func (c *cell) Paint(size fyne.Size) []fyne.CanvasObject {
	p := paint.PainterFor(c)
	gap := p.Pad()
	var objects []fyne.CanvasObject
	if c.chosen {
		objects = append(objects, p.Block(apptheme.ColorChosen, fyne.NewPos(0, -gap/2), size.AddWidthHeight(gap, gap)))
		if c.keyed {
			objects = append(objects,
				p.Block(apptheme.ColorFocus, fyne.NewPos(0, -gap/2), fyne.NewSize(size.Width+gap, 1)),
				p.Block(apptheme.ColorFocus, fyne.NewPos(0, size.Height+gap/2-1), fyne.NewSize(size.Width+gap, 1)))
		}
		if c.first {
			objects = append(objects, p.Block(apptheme.ColorFocus, fyne.NewPos(0, -gap/2), fyne.NewSize(p.Size(apptheme.SizeMark)+1, size.Height+gap)))
		}
	} else if !c.header {
		if c.striped {
			objects = append(objects, p.Block(apptheme.ColorStripe, fyne.NewPos(0, -gap/2), size.AddWidthHeight(gap, gap)))
		}
		objects = append(objects, p.Block(apptheme.ColorRule, fyne.NewPos(0, size.Height+gap/2-1), fyne.NewSize(size.Width+gap, 1)))
	}
	if c.total {
		objects = append(objects, p.Block(apptheme.ColorInk, fyne.NewPos(0, -gap/2), fyne.NewSize(size.Width+gap, 1)))
	}
	left, right := aside(p, c.narrow), size.Width-aside(p, c.narrow)
	top := (size.Height - p.LineHeight(c.letters)) / 2
	if icon := apptheme.StateIcon(c.state); icon != nil {
		side := p.LineHeight(c.letters) - 2
		objects = append(objects, p.Icon(icon, fyne.NewPos(left, top+1), side))
		left += side + p.Pad()
	}
	if c.twoLine {
		return append(objects, c.onLines(p, left, right, size.Height)...)
	}
	text := p.Clip(c.text, c.letters, right-left)
	width := p.Measure(text, c.letters).Width
	if c.trailing {
		left = right - width
		objects = append(objects, p.WriteEnding(text, c.letters, right, top))
	} else {
		objects = append(objects, p.Write(text, c.letters, fyne.NewPos(left, top)))
	}
	if c.struck && text != "" {
		objects = append(objects, p.Block(c.letters.Color, fyne.NewPos(left, size.Height/2), fyne.NewSize(width, 1)))
	}
	return objects
}

// onLines writes the text on as many lines as it needs, in the middle.
func (c *cell) onLines(p paint.Painter, left, right, height float32) []fyne.CanvasObject {
	lines := p.Wrap(c.text, c.letters, right-left+1)
	y := (height - float32(len(lines))*p.LineHeight(c.letters)) / 2
	var out []fyne.CanvasObject
	for _, line := range lines {
		if c.trailing {
			out = append(out, p.WriteEnding(line, c.letters, right, y))
		} else {
			out = append(out, p.Write(line, c.letters, fyne.NewPos(left, y)))
		}
		y += p.LineHeight(c.letters)
	}
	return out
}
