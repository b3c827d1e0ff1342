package kit

import "fyne.io/fyne/v2"

// Reveal scrolls the slip no further than needed to bring a line into sight,
// with a little of what stands before and after it. An index that is no line
// moves nothing.
func (v *SlipView) Reveal(line int) {
	lines := v.paper.lines
	if line < 0 || line >= len(lines) {
		return
	}
	from, to := v.paper.top(line), v.paper.top(line+1)
	around := 3 * (to - from)
	high := v.scroll.Size().Height
	at := v.scroll.Offset.Y
	switch {
	case from-around < at:
		at = from - around
	case to+around > at+high:
		at = to + around - high
	default:
		return
	}
	v.scroll.ScrollToOffset(fyne.NewPos(0, max(0, at)))
}

// top is how far down a line begins.
func (p *Paper) top(line int) float32 {
	s := &setting{pen: penFor(p), width: max(p.width, 1)}
	s.setAll(p.lines[:line])
	return s.y
}
