package widgets

import (
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// WorkBar shows long work: what is being done, how far it has come, and the
// button that stops it. It is hidden while there is no work.
type WorkBar struct {
	widget.BaseWidget
	halt     *Button
	text     string
	permille int
}

// NewWorkBar makes a hidden bar that speaks some words. Add Halt to a ring to reach it by keyboard.
func NewWorkBar(words Words) *WorkBar {
	w := &WorkBar{}
	w.halt = NewButton(words.Halt, nil)
	w.ExtendBaseWidget(w)
	w.Hide()
	return w
}

// Halt is the stop button.
func (w *WorkBar) Halt() *Button { return w.halt }

// Start shows the bar for work that the function stops.
func (w *WorkBar) Start(text string, stop func()) {
	w.text, w.permille = text, 0
	w.halt.OnTapped = stop
	w.Show()
	w.Refresh()
}

// Progress moves the bar: so many of so many. An unknown total leaves it empty.
func (w *WorkBar) Progress(done, total int) {
	w.permille = 0
	if total > 0 {
		w.permille = paint.Within(done * 1000 / total)
	}
	w.Refresh()
}

// Finish hides the bar.
func (w *WorkBar) Finish() {
	w.halt.OnTapped = nil
	w.Hide()
}

// CreateRenderer draws the bar.
func (w *WorkBar) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(w) }

func (w *WorkBar) textStyle() paint.TextStyle {
	return paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.ColorInk}
}

func (w *WorkBar) LeastSize() fyne.Size {
	p := paint.PainterFor(w)
	return w.halt.MinSize().AddWidthHeight(p.Measure(w.text, w.textStyle()).Width+8*p.Inner(), 0)
}

func (w *WorkBar) Paint(size fyne.Size) []fyne.CanvasObject {
	p := paint.PainterFor(w)
	button := w.halt.MinSize()
	w.halt.Resize(fyne.NewSize(button.Width, size.Height))
	w.halt.Move(fyne.NewPos(size.Width-button.Width, 0))
	room := size.Width - button.Width - p.Inner()
	bar := p.Size(apptheme.SizeMark) * 2
	y := size.Height - bar
	l := w.textStyle()
	return []fyne.CanvasObject{
		p.Write(p.Clip(w.text, l, room), l, fyne.NewPos(0, max(0, y-p.LineHeight(l)-1))),
		p.Block(apptheme.ColorPlainGround, fyne.NewPos(0, y), fyne.NewSize(room, bar)),
		p.Block(apptheme.ColorWait, fyne.NewPos(0, y), fyne.NewSize(paint.Along(w.permille, room), bar)),
		w.halt,
	}
}
