package kit

import (
	"tenthpoint/internal/slip"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// SlipView is the paper at the right of the form. It scrolls, by mouse or
// keyboard, only when the slip is longer than the window is high in the
// smallest type that can be read.
type SlipView struct {
	Reader
	paper    *Paper
	revealed int // the line last brought into sight
}

// NewSlipView makes a slip view with an empty sheet.
func NewSlipView() *SlipView {
	v := &SlipView{paper: NewPaper(), revealed: noLine}
	v.scroll = container.NewVScroll(v.paper)
	v.ExtendBaseWidget(v)
	return v
}

// SetLines shows other lines, and keeps the place one had scrolled to.
func (v *SlipView) SetLines(lines []slip.PaperLine) {
	if v.paper.put(lines) {
		v.scroll.Refresh()
	}
}

// Lines gives what stands on the paper.
func (v *SlipView) Lines() []slip.PaperLine { return v.paper.lines }

// Paper is the sheet itself.
func (v *SlipView) Paper() *Paper { return v.paper }

// CreateRenderer is Fyne's way to draw the view.
func (v *SlipView) CreateRenderer() fyne.WidgetRenderer { return newDrawing(v) }

// draw sets the paper for the height there is. With another height another part
// of it is in sight, so the line last looked for is looked for again.
func (v *SlipView) draw(size fyne.Size) []fyne.CanvasObject {
	isOther := v.paper.room != size.Height
	if isOther {
		v.paper.room = size.Height
		v.scroll.Refresh()
	}
	objects := v.Reader.draw(size)
	if isOther {
		v.ToTop()
		v.Reveal(v.revealed)
	}
	return objects
}
