package paperview

import (
	"tenthpoint/internal/paper"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"
	"tenthpoint/ui/widgets"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// SlipView is the paper at the right of the form: the pages that print, or a card of
// lines. It scrolls, by mouse or keyboard, only when the paper is longer than the
// window is high.
type SlipView struct {
	widgets.Reader
	pages    *Pages
	card     *Card
	revealed string // the fact last brought into sight
}

// NewSlipView makes a view of an empty card.
func NewSlipView() *SlipView {
	v := &SlipView{card: NewCard(), pages: NewPages()}
	v.Scroll, v.Text = container.NewVScroll(v.card), v.text
	v.ExtendBaseWidget(v)
	return v
}

// SetLines shows the lines of a card, and keeps the place one had scrolled to.
func (v *SlipView) SetLines(lines []model.CardLine) {
	isOther := v.card.put(lines)
	if v.show(v.card) || isOther {
		v.Scroll.Refresh()
	}
}

// SetPages shows the pages of a paper, and keeps the place one had scrolled to.
func (v *SlipView) SetPages(l paper.Layout) {
	isOther := v.pages.put(l)
	if v.show(v.pages) || isOther {
		v.pages.Refresh()
		v.Scroll.Refresh()
	}
}

// show brings pages or card to the front, and reports whether that changed anything.
func (v *SlipView) show(content fyne.CanvasObject) bool {
	if v.Scroll.Content == content {
		return false
	}
	v.Scroll.Content = content
	v.revealed = ""
	return true
}

// InFront are the pages in front; nil while a card is.
func (v *SlipView) InFront() *paper.Layout {
	if v.Scroll.Content != v.pages {
		return nil
	}
	return &v.pages.layout
}

// Lines returns the lines of the card.
func (v *SlipView) Lines() []model.CardLine { return v.card.lines }

// Card is the card itself.
func (v *SlipView) Card() *Card { return v.card }

// Pages are the pages themselves.
func (v *SlipView) Pages() *Pages { return v.pages }

// CreateRenderer implements fyne.Widget.
func (v *SlipView) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(v) }

// Paint draws the paper for the current height. After a change of height it scrolls to the fact
// last revealed again.
func (v *SlipView) Paint(size fyne.Size) []fyne.CanvasObject {
	isOther := v.card.room != size.Height
	if isOther {
		v.card.room, v.pages.room = size.Height, size.Height
		v.Scroll.Refresh()
	}
	objects := v.Reader.Paint(size)
	if isOther {
		v.ToTop()
		v.Reveal(v.revealed)
	}
	return objects
}

// Reveal scrolls the pages no further than needed to show a fact, with what should be seen together
// with it. Unknown facts scroll nothing.
func (v *SlipView) Reveal(field string) {
	if v.Scroll.Content != v.pages {
		return
	}
	fact, found := v.pages.find(field)
	if !found {
		return
	}
	v.revealed = field
	room := v.Scroll.Size().Height
	want := v.pages.wanted(fact)
	switch at := v.Scroll.Offset.Y; {
	case want.from < at:
		v.Scroll.ScrollToOffset(fyne.NewPos(0, max(0, want.from)))
	case want.to > at+room:
		v.Scroll.ScrollToOffset(fyne.NewPos(0, paint.Ceil(want.to-room)))
	}
}
