package view

import (
	"fyne.io/fyne/v2"
)

// Widths in figures: the least a sheet of paper can be read at, what it has
// when two stand side by side, and from where on it grows no more; and what the
// form has beside two sheets.
const (
	leastPaper   = 31
	paperFigures = 42
	mostPaper    = 62
	formFigures  = 62
)

// formAndPaper sets a form at the left and what comes of it at the right, over
// the buttons that end the work. Where there is room for two sheets, a second one
// stands beside the first for good. Where there is room for one only, form and
// paper have the whole width in turn, with the buttons in a row beneath.
type formAndPaper struct {
	fields      *fieldSheet
	head        fyne.CanvasObject // the large figures, always in sight
	form, paper fyne.CanvasObject
	buttons     *fyne.Container // laid out by endings
	second      fyne.CanvasObject
	overPaper   bool    // the head stands over the paper, not over the form
	share       float32 // of a hundred: what the paper has where the form needs less
	most        float32 // how wide the paper grows, in figures; 0: no end
	turned      bool    // the paper is in front, where only one has room
	working     bool    // the paper is the working
	narrow      bool    // as last laid out
	onNarrow    func()  // called when that changes
}

// objects are what the layout sets. The head comes after the form, so that it
// lies over what is scrolled beneath it.
func (l *formAndPaper) objects() []fyne.CanvasObject {
	out := []fyne.CanvasObject{l.form, l.paper, l.buttons, l.head}
	if l.second != nil {
		out = append(out, l.second)
	}
	return out
}

func paperGap() float32 { return 2 * margin{}.gap() }

// isWide reports whether two sheets have room beside the form.
func (l *formAndPaper) isWide(width float32) bool {
	return l.second != nil && width > wide{formFigures + 2*paperFigures}.width()+2*paperGap()
}

// isNarrow reports whether only one of form and paper has room.
func (l *formAndPaper) isNarrow(width float32) bool {
	return width < l.form.MinSize().Width+paperGap()+wide{leastPaper}.width()
}

// sheet is the width of the paper beside the form: its share, less where the
// words in the form would be cut.
func (l *formAndPaper) sheet(width float32) float32 {
	most := width
	if l.most > 0 {
		most = wide{l.most}.width()
	}
	if l.isWide(width) {
		return min(most, (width-wide{formFigures}.width()-2*paperGap())/2)
	}
	left := width - paperGap() - l.fields.wish() - 2*slimGap
	return min(most, max(wide{leastPaper}.width(), min(left, width*l.share/100)))
}

// MinSize is what is needed while one of form and paper is in front.
func (l *formAndPaper) MinSize([]fyne.CanvasObject) fyne.Size {
	form, paper, head, buttons := l.form.MinSize(), l.paper.MinSize(), l.head.MinSize(), l.buttons.MinSize()
	return fyne.NewSize(max(form.Width, wide{leastPaper}.width(), head.Width, buttons.Width), head.Height+max(form.Height, paper.Height)+buttons.Height)
}

// Layout sets everything for the width there is.
func (l *formAndPaper) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	narrow := l.isNarrow(size.Width)
	l.buttons.Layout.(*endings).turn(l.buttons.Objects, narrow)
	if narrow {
		l.inTurn(size)
	} else {
		l.sideBySide(size)
	}
	if l.narrow != narrow {
		l.narrow = narrow
		l.onNarrow()
	}
}

// inTurn gives the whole width to form or paper.
func (l *formAndPaper) inTurn(size fyne.Size) {
	high, low := l.head.MinSize().Height, l.buttons.MinSize().Height+margin{}.gap()
	put(l.head, 0, 0, size.Width, high)
	put(l.buttons, 0, size.Height-low+margin{}.gap(), size.Width, low-margin{}.gap())
	put(l.form, 0, high, size.Width, size.Height-high-low)
	put(l.paper, 0, high, size.Width, size.Height-high-low)
	setVisible(l.form, !l.turned)
	setVisible(l.paper, l.turned)
	if l.second != nil {
		setVisible(l.second, false)
	}
}

// sideBySide sets the form beside one sheet, or beside two.
func (l *formAndPaper) sideBySide(size fyne.Size) {
	sheet := l.sheet(size.Width)
	left := size.Width - sheet - paperGap()
	setVisible(l.form, true)
	setVisible(l.paper, true)
	if l.second != nil {
		setVisible(l.second, l.isWide(size.Width))
		put(l.second, size.Width-sheet, 0, sheet, size.Height)
	}
	at := size.Width - sheet
	if l.isWide(size.Width) {
		at -= sheet + paperGap()
		left -= sheet + paperGap()
	}
	high, low := l.head.MinSize().Height, l.buttons.MinSize().Height+margin{}.gap()
	over, under := high, float32(0)
	if l.overPaper {
		over, under = 0, high
		put(l.head, at, 0, sheet, high)
	} else {
		put(l.head, 0, 0, left, high)
	}
	put(l.form, 0, over, left, size.Height-over)
	put(l.paper, at, under, sheet, size.Height-under-low)
	put(l.buttons, at, size.Height-low+margin{}.gap(), sheet, low-margin{}.gap())
}

// put moves and sizes an object.
func put(o fyne.CanvasObject, x, y, width, height float32) {
	o.Move(fyne.NewPos(x, y))
	o.Resize(fyne.NewSize(width, max(0, height)))
}
