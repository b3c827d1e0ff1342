package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// figureRenderer draws an entry as Fyne does and then, for figures, moves the
// scrolling part that holds the letters against the right edge. Fyne's entry
// knows no alignment, and a column of weights that starts at the left cannot
// be compared at a glance.
type figureRenderer struct {
	fyne.WidgetRenderer
	entry *FieldEntry
	ring  fyne.CanvasObject // while the entry has the keyboard
	size  fyne.Size         // the ring is for
}

func newFigureRenderer(e *FieldEntry, inside fyne.WidgetRenderer) fyne.WidgetRenderer {
	return &figureRenderer{WidgetRenderer: inside, entry: e}
}

func (r *figureRenderer) Layout(size fyne.Size) {
	r.WidgetRenderer.Layout(size)
	r.align(size)
	r.outline(size)
}

func (r *figureRenderer) Refresh() {
	r.WidgetRenderer.Refresh()
	r.align(r.entry.Size())
	r.ring = nil // colors may have changed
	r.outline(r.entry.Size())
}

// outline draws the ring round the entry that has the keyboard. Fyne only
// changes the color of the frame, which sunlight swallows. A ring that is there
// stays: the window lays an entry out at every frame in which it finds a new one.
func (r *figureRenderer) outline(size fyne.Size) {
	switch {
	case !r.entry.focused:
		r.ring = nil
	case r.ring == nil || r.size != size:
		r.ring, r.size = penFor(r.entry).focusRing(size), size
	}
}

func (r *figureRenderer) Objects() []fyne.CanvasObject {
	objects := r.WidgetRenderer.Objects()
	if r.ring == nil {
		return objects
	}
	return append(objects[:len(objects):len(objects)], r.ring)
}

func (r *figureRenderer) align(size fyne.Size) {
	letters := lettersOf(r.WidgetRenderer)
	if letters == nil {
		return
	}
	border := (size.Height - letters.Size().Height) / 2
	room := size.Width - letterInset(r.entry)
	width := letters.Content.MinSize().Width
	if !r.entry.Figures || width > room {
		width = room
	}
	letters.Resize(fyne.NewSize(width, letters.Size().Height))
	letters.Move(fyne.NewPos(room-width, border))
}

// lettersOf finds the scrolling part among what an entry draws.
func lettersOf(r fyne.WidgetRenderer) *container.Scroll {
	for _, o := range r.Objects() {
		if s, ok := o.(*container.Scroll); ok {
			return s
		}
	}
	return nil
}

// letterInset is the room at the right that an action item takes.
func letterInset(e *FieldEntry) float32 {
	if e.ActionItem == nil {
		return 0
	}
	return e.ActionItem.MinSize().Width
}

// indent is how far the letters stand from the left edge.
func (e *FieldEntry) indent() float32 {
	if !e.Figures {
		return 0
	}
	p := penFor(e)
	width := fyne.MeasureText(e.Text, p.size("text"), e.TextStyle).Width + 2*p.inner()
	return max(0, e.Size().Width-letterInset(e)-width)
}
