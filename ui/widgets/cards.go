package widgets

import (
	"slices"

	"tenthpoint/ui/model"

	"fyne.io/fyne/v2"
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
