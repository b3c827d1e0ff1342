package paperview

import (
	"tenthpoint/internal/scaleticket"
	"tenthpoint/ui/paint"
	"tenthpoint/ui/widgets"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// SlipView is the paper at the right of the form. It scrolls, by mouse or
// keyboard, only when the slip is longer than the window is high in the
// smallest type that can be read.
type SlipView struct {
	widgets.Reader
	paper    *Paper
	revealed int // the line last brought into sight
}

// NewSlipView makes a slip view with an empty sheet.
func NewSlipView() *SlipView {
	v := &SlipView{paper: NewPaper(), revealed: noLine}
	v.Scroll = container.NewVScroll(v.paper)
	v.ExtendBaseWidget(v)
	return v
}

// SetLines shows other lines, and keeps the place one had scrolled to.
func (v *SlipView) SetLines(lines []scaleticket.PaperLine) {
	if v.paper.put(lines) {
		v.Scroll.Refresh()
	}
}

// Lines gives what stands on the paper.
func (v *SlipView) Lines() []scaleticket.PaperLine { return v.paper.lines }

// Paper is the sheet itself.
func (v *SlipView) Paper() *Paper { return v.paper }

// CreateRenderer is Fyne's way to draw the view.
func (v *SlipView) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(v) }

// Paint sets the paper for the height there is. With another height another part
// of it is in sight, so the line last looked for is looked for again.
func (v *SlipView) Paint(size fyne.Size) []fyne.CanvasObject {
	isOther := v.paper.room != size.Height
	if isOther {
		v.paper.room = size.Height
		v.Scroll.Refresh()
	}
	objects := v.Reader.Paint(size)
	if isOther {
		v.ToTop()
		v.Reveal(v.revealed)
	}
	return objects
}

// noLine is no line of a slip.
const noLine = -1

// Reveal scrolls the slip no further than needed to bring a line into sight,
// with what should be seen together with it. An index that is no line moves
// nothing.
func (v *SlipView) Reveal(line int) {
	g, room := v.paper.InType(), v.Scroll.Size().Height
	row := g.RowOf(line)
	if row == nil {
		return
	}
	v.revealed = line
	want := g.wanted(row, room)
	switch at := v.Scroll.Offset.Y; {
	case want.from < at:
		v.Scroll.ScrollToOffset(fyne.NewPos(0, max(0, want.from)))
	case want.to > at+room:
		v.Scroll.ScrollToOffset(fyne.NewPos(0, paint.Ceil(g.downFrom(want, room).to-room)))
	}
}
