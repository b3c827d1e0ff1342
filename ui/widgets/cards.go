package widgets

import (
	"fmt"
	"slices"
	"strconv"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Cards are trucks in columns, large enough to be read across a room. Arrows move from card to card,
// Enter or a click opens one. Of a column with more cards than it has room for the one that has the
// keyboard is always in sight.
type Cards struct {
	widget.BaseWidget
	focusStop

	OnOpen func(id string)
	// Open is the word for it in the menu of a right click.
	Open string

	columns []model.TruckColumn
	chosen  string // the card that has the keyboard, by its id
	focused bool
}

var (
	_ Keyed                  = (*Cards)(nil)
	_ fyne.Tabbable          = (*Cards)(nil)
	_ fyne.SecondaryTappable = (*Cards)(nil)
)

// NewCards makes a board without columns.
func NewCards(open string) *Cards {
	c := &Cards{Open: open}
	c.ExtendBaseWidget(c)
	return c
}

// Set shows other columns. The card that has the keyboard keeps it while it is there, in whichever
// column.
func (c *Cards) Set(columns []model.TruckColumn) {
	if slices.EqualFunc(columns, c.columns, sameColumn) {
		return
	}
	c.columns = columns
	if at, _ := c.find(c.chosen); at < 0 {
		c.chosen = c.first()
	}
	c.Refresh()
}

func sameColumn(a, b model.TruckColumn) bool {
	return a.Title == b.Title && slices.Equal(a.Rows, b.Rows)
}

// Chosen is the card that has the keyboard, by its id; empty without cards.
func (c *Cards) Chosen() string { return c.chosen }

// find is the column and the row of a card; -1 where it is on none.
func (c *Cards) find(id string) (column, row int) {
	for at, one := range c.columns {
		if i := slices.IndexFunc(one.Rows, func(r model.TruckRow) bool { return r.ID == id }); i >= 0 {
			return at, i
		}
	}
	return -1, -1
}

// first is the first card of the first column that has any.
func (c *Cards) first() string {
	for _, one := range c.columns {
		if len(one.Rows) > 0 {
			return one.Rows[0].ID
		}
	}
	return ""
}

func (c *Cards) choose(id string) {
	if id != "" && id != c.chosen {
		c.chosen = id
		c.Refresh()
	}
}

// along moves up or down in a column, and stays at its ends.
func (c *Cards) along(by int) {
	if at, row := c.find(c.chosen); at >= 0 {
		cards := c.columns[at].Rows
		c.choose(cards[max(0, min(len(cards)-1, row+by))].ID)
	}
}

// across moves to the next column with cards, to the card at the same height.
func (c *Cards) across(by int) {
	at, row := c.find(c.chosen)
	if at < 0 {
		return
	}
	for to := at + by; to >= 0 && to < len(c.columns); to += by {
		if cards := c.columns[to].Rows; len(cards) > 0 {
			c.choose(cards[min(row, len(cards)-1)].ID)
			return
		}
	}
}

func (c *Cards) open() {
	if c.chosen != "" && c.OnOpen != nil {
		c.OnOpen(c.chosen)
	}
}

// TypedKey offers a key to focus order and commands first; then it moves, or opens the card.
func (c *Cards) TypedKey(ev *fyne.KeyEvent) {
	if c.offer(ev) {
		return
	}
	switch ev.Name {
	case fyne.KeyUp:
		c.along(-1)
	case fyne.KeyDown:
		c.along(+1)
	case fyne.KeyLeft:
		c.across(-1)
	case fyne.KeyRight:
		c.across(+1)
	case fyne.KeyHome:
		c.choose(c.first())
	case fyne.KeyReturn, fyne.KeyEnter:
		c.open()
	}
}

// TypedRune ignores letters.
func (c *Cards) TypedRune(letter rune) { c.scans(letter) }

// Tapped opens the card under the pointer.
func (c *Cards) Tapped(ev *fyne.PointEvent) {
	if id := c.cardAt(ev.Position); id != "" {
		c.choose(id)
		c.open()
	}
}

// TappedSecondary chooses the card under the pointer and offers what can be done.
func (c *Cards) TappedSecondary(ev *fyne.PointEvent) {
	if id := c.cardAt(ev.Position); id != "" {
		c.choose(id)
		c.offerMenu(ev.AbsolutePosition, fyne.NewMenuItem(c.Open, c.open))
	}
}

// FocusGained marks the card that has the keyboard.
func (c *Cards) FocusGained() { c.focused = true; c.tookFocus(); c.Refresh() }

// FocusLost takes the mark away.
func (c *Cards) FocusLost() { c.focused = false; c.Refresh() }

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
