package widgets

import (
	"fmt"
	"strconv"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// What stands on a card, and over a column.
var (
	columnTitle = paint.TextStyle{Size: apptheme.SizeStatus, Color: apptheme.ColorInk, Style: paint.Bold}
	columnCount = paint.TextStyle{Size: apptheme.SizeFigure, Color: apptheme.ColorInk, Style: paint.Bold}
	cardName    = paint.TextStyle{Size: apptheme.SizeFigure, Color: apptheme.ColorInk, Style: paint.Bold}
	cardLine    = paint.TextStyle{Size: theme.SizeNameText, Color: apptheme.ColorInk}
	cardQuiet   = paint.TextStyle{Size: theme.SizeNameText, Color: apptheme.ColorQuiet}
	cardLate    = paint.TextStyle{Size: theme.SizeNameText, Color: apptheme.ColorWarn, Style: paint.Bold}
)

// CreateRenderer draws the board.
func (c *Cards) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(c) }

// LeastSize has room for one card in each column.
func (c *Cards) LeastSize() fyne.Size {
	l := c.layout(fyne.Size{})
	return fyne.NewSize(float32(len(c.columns))*8*l.painter.Measure("0", cardLine).Width, l.head+l.card)
}

// cardLayout is where the cards of a board stand.
type cardLayout struct {
	painter    paint.Painter
	wide, gap  float32 // of a column, and between two
	head, card float32 // heights
	room       int     // how many cards a column has room for
}

func (c *Cards) layout(size fyne.Size) cardLayout {
	p := paint.PainterFor(c)
	l := cardLayout{painter: p, gap: 2 * p.Inner(), head: p.LineHeight(columnCount) + p.LineHeight(columnTitle) + p.Inner()}
	l.card = p.LineHeight(cardName) + 2*p.LineHeight(cardLine) + 2*p.Inner() + p.Pad()
	if n := float32(len(c.columns)); n > 0 {
		l.wide = (size.Width+l.gap)/n - l.gap
	}
	l.room = max(1, int((size.Height-l.head-p.LineHeight(cardQuiet))/l.card))
	return l
}

// top is the first card of a column that is in sight.
func (c *Cards) top(column int, l cardLayout) int {
	if at, row := c.find(c.chosen); at == column {
		return max(0, row-l.room+1)
	}
	return 0
}

// cardAt is the card at a place of the board, by its id; empty beside the cards.
func (c *Cards) cardAt(at fyne.Position) string {
	l := c.layout(c.Size())
	for i, column := range c.columns {
		left := float32(i) * (l.wide + l.gap)
		if at.X < left || at.X > left+l.wide || at.Y < l.head {
			continue
		}
		top := c.top(i, l)
		if row := top + int((at.Y-l.head)/l.card); row < min(len(column.Rows), top+l.room) {
			return column.Rows[row].ID
		}
	}
	return ""
}

// Paint draws the columns.
func (c *Cards) Paint(size fyne.Size) []fyne.CanvasObject {
	l := c.layout(size)
	var objects []fyne.CanvasObject
	for i := range c.columns {
		objects = append(objects, c.paintColumn(l, i, size.Height)...)
	}
	return objects
}

func (c *Cards) paintColumn(l cardLayout, i int, height float32) []fyne.CanvasObject {
	p, column, left := l.painter, c.columns[i], float32(i)*(l.wide+l.gap)
	pad := p.Inner()
	objects := []fyne.CanvasObject{
		p.Block(apptheme.ColorPanel, fyne.NewPos(left, 0), fyne.NewSize(l.wide, height)),
		p.Write(strconv.Itoa(len(column.Rows)), columnCount, fyne.NewPos(left+2*pad, 0)),
		p.Write(p.Clip(column.Title, columnTitle, l.wide-3*pad), columnTitle, fyne.NewPos(left+2*pad, p.LineHeight(columnCount))),
	}
	top := c.top(i, l)
	shown := column.Rows[top:min(len(column.Rows), top+l.room)]
	for n, card := range shown {
		at := fyne.NewPos(left, l.head+float32(n)*l.card)
		objects = append(objects, c.paintCard(p, card, at, fyne.NewSize(l.wide, l.card-p.Pad()))...)
	}
	if more := len(column.Rows) - len(shown); more > 0 {
		text := fmt.Sprintf(c.words().More, more)
		objects = append(objects, p.Write(text, cardQuiet, fyne.NewPos(left+2*pad, l.head+float32(len(shown))*l.card)))
	}
	return objects
}

func (c *Cards) paintCard(p paint.Painter, row model.TruckRow, at fyne.Position, size fyne.Size) []fyne.CanvasObject {
	ground := theme.ColorNameBackground
	if row.Current {
		ground = apptheme.ColorChosen
	}
	pad, mark := p.Inner(), p.Size(apptheme.SizeMark)
	left, right := at.X+2*pad, at.X+size.Width-2*pad
	y := at.Y + pad
	key := p.WriteEnding(row.Key, cardQuiet, right, y)
	objects := []fyne.CanvasObject{
		p.Block(ground, at, size), key,
		p.Write(p.Clip(row.Truck, cardName, key.Position().X-left-pad), cardName, fyne.NewPos(left, y)),
	}
	y += p.LineHeight(cardName)
	objects = append(objects, p.Write(p.Clip(row.Who, cardLine, right-left), cardLine, fyne.NewPos(left, y)))
	y += p.LineHeight(cardLine)
	if row.Late {
		side := p.LineHeight(cardLate)
		objects = append(objects,
			p.Block(apptheme.ColorWarnGround, fyne.NewPos(left-pad/2, y), fyne.NewSize(side+p.Measure(row.Waits, cardLate).Width+2*pad, side)),
			p.Icon(apptheme.StateIcon(model.Warn), fyne.NewPos(left, y+1), side-2),
			p.Write(row.Waits, cardLate, fyne.NewPos(left+side+pad/2, y)))
	} else {
		objects = append(objects, p.Write(row.Waits, cardQuiet, fyne.NewPos(left, y)))
	}
	if row.ID == c.chosen && c.focused {
		objects = append(objects, p.Frame(apptheme.ColorFocus, mark, at.AddXY(mark, mark), size.SubtractWidthHeight(2*mark, 2*mark)))
	}
	return objects
}
