package shell

import (
	"tenthpoint/ui/session"

	"fyne.io/fyne/v2"
)

// Widths in digits: the least at which a sheet of paper is readable, the width it gets when two are
// side by side, the width past which it does not grow; and the form's width beside two sheets.
const (
	leastPaper   = 31
	paperFigures = 42
	MostPaper    = 62
	formFigures  = 62
	readFigures  = 84 // of a paper in large letters: its smallest are as large as the notes of a form
)

// FormAndPaper sets a form at the left and the resulting paper at the right, over the buttons that
// finish the work. Where there is room for two sheets, a second one is always beside the first.
// Where there is room for one only, form and Paper have the whole width in turn, with the buttons
// in a row below.
type FormAndPaper struct {
	Fields      *FieldSheet
	Head        fyne.CanvasObject // the large figures, always in sight
	Form, Paper fyne.CanvasObject
	Buttons     *fyne.Container // laid out by endings
	Second      fyne.CanvasObject
	OverPaper   bool    // the head is over the paper, not over the form
	Share       float32 // percent of the width for the paper where the form needs less
	Most        float32 // how wide the paper grows, in figures; 0: no end
	Turned      bool    // the paper is in front, where only one has room
	Working     bool    // the paper is the working
	Reading     bool    // the paper is read in large letters, with the form behind it
	Narrow      bool    // as last laid out
	OnNarrow    func()  // called when that changes
}

// Objects are the objects laid out. The head comes after the form, so that it covers what is
// scrolled under it.
func (l *FormAndPaper) Objects() []fyne.CanvasObject {
	out := []fyne.CanvasObject{l.Form, l.Paper, l.Buttons, l.Head}
	if l.Second != nil {
		out = append(out, l.Second)
	}
	return out
}

func PaperGap() float32 { return 2 * Margin{}.gap() }

// isWide reports whether two sheets have room beside the form.
func (l *FormAndPaper) isWide(width float32) bool {
	return l.Second != nil && width > Wide{formFigures + 2*paperFigures}.width()+2*PaperGap()
}

// isNarrow reports whether only one of form and paper has room, or is wanted.
func (l *FormAndPaper) isNarrow(width float32) bool {
	return l.Reading || width < l.Form.MinSize().Width+PaperGap()+Wide{leastPaper}.width()
}

// sheet is the width of the paper beside the form: its share, less where the
// words in the form would be cut.
func (l *FormAndPaper) sheet(width float32) float32 {
	most := width
	if l.Most > 0 {
		most = Wide{l.Most}.width()
	}
	if l.isWide(width) {
		return min(most, (width-Wide{formFigures}.width()-2*PaperGap())/2)
	}
	left := width - PaperGap() - l.Fields.wish() - 2*SlimGap
	return min(most, max(Wide{leastPaper}.width(), min(left, width*l.Share/100)))
}

// MinSize is the size needed while one of form and paper is in front.
func (l *FormAndPaper) MinSize([]fyne.CanvasObject) fyne.Size {
	form, paper, head, buttons := l.Form.MinSize(), l.Paper.MinSize(), l.Head.MinSize(), l.Buttons.MinSize()
	return fyne.NewSize(max(form.Width, Wide{leastPaper}.width(), head.Width, buttons.Width), head.Height+max(form.Height, paper.Height)+buttons.Height)
}

// Layout sets everything for the width there is.
func (l *FormAndPaper) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	narrow := l.isNarrow(size.Width)
	l.Buttons.Layout.(*Endings).turn(l.Buttons.Objects, narrow)
	if narrow {
		l.inTurn(size)
	} else {
		l.sideBySide(size)
	}
	if l.Narrow != narrow {
		l.Narrow = narrow
		l.OnNarrow()
	}
}

// inTurn gives the whole width to form or paper.
func (l *FormAndPaper) inTurn(size fyne.Size) {
	high, low := l.Head.MinSize().Height, l.Buttons.MinSize().Height+Margin{}.gap()
	Put(l.Head, 0, 0, size.Width, high)
	Put(l.Buttons, 0, size.Height-low+Margin{}.gap(), size.Width, low-Margin{}.gap())
	Put(l.Form, 0, high, size.Width, size.Height-high-low)
	sheet := min(size.Width, Wide{readFigures}.width())
	Put(l.Paper, (size.Width-sheet)/2, high, sheet, size.Height-high-low)
	SetVisible(l.Form, !l.Turned)
	SetVisible(l.Paper, l.Turned)
	if l.Second != nil {
		SetVisible(l.Second, false)
	}
}

// sideBySide sets the form beside one sheet, or beside two.
func (l *FormAndPaper) sideBySide(size fyne.Size) {
	sheet := l.sheet(size.Width)
	left := size.Width - sheet - PaperGap()
	SetVisible(l.Form, true)
	SetVisible(l.Paper, true)
	if l.Second != nil {
		SetVisible(l.Second, l.isWide(size.Width))
		Put(l.Second, size.Width-sheet, 0, sheet, size.Height)
	}
	at := size.Width - sheet
	if l.isWide(size.Width) {
		at -= sheet + PaperGap()
		left -= sheet + PaperGap()
	}
	high, low := l.Head.MinSize().Height, l.Buttons.MinSize().Height+Margin{}.gap()
	over, under := high, float32(0)
	if l.OverPaper {
		over, under = 0, high
		Put(l.Head, at, 0, sheet, high)
	} else {
		Put(l.Head, 0, 0, left, high)
	}
	Put(l.Form, 0, over, left, size.Height-over)
	Put(l.Paper, at, under, sheet, size.Height-under-low)
	Put(l.Buttons, at, size.Height-low+Margin{}.gap(), sheet, low-Margin{}.gap())
}

// Put moves and sizes an object.
func Put(o fyne.CanvasObject, x, y, width, height float32) {
	o.Move(fyne.NewPos(x, y))
	o.Resize(fyne.NewSize(width, max(0, height)))
}

// Form, paper and working take turns by one key. Beside a form the paper and the
// working change places; where only one has room, the form is the third in turn.

// Turn brings the next to the front.
func (l *FormAndPaper) Turn() {
	switch {
	case l.Narrow && !l.Turned:
		l.Turned, l.Working = true, false
	case l.Narrow && l.Working:
		l.Turned, l.Working, l.Reading = false, false, false
	default:
		l.Working = !l.Working
	}
}

// Read brings the paper to the front in large letters, or form and paper back beside each other.
func (l *FormAndPaper) Read() {
	l.Reading = !l.Reading
	l.Turned, l.Working = l.Reading, false
}

// ToForm brings the form to the front, and reports whether that changed anything.
func (l *FormAndPaper) ToForm() bool {
	if !l.Narrow || !l.Turned {
		return false
	}
	l.Turned, l.Working, l.Reading = false, false, false
	return true
}

// Next names the part the key brings to the front; paper is the paper's own name.
func (l *FormAndPaper) Next(in session.Language, paper string) string {
	switch {
	case l.Narrow && !l.Turned:
		return paper
	case l.Narrow && l.Working:
		return in.Say("Form")
	case l.Working:
		return paper
	}
	return in.Say("Working")
}
