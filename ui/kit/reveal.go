package kit

import "fyne.io/fyne/v2"

// noLine is no line of a slip.
const noLine = -1

// Reveal scrolls the slip no further than needed to bring a line into sight,
// with what should be seen together with it. An index that is no line moves
// nothing.
func (v *SlipView) Reveal(line int) {
	g, room := v.paper.inType(), v.scroll.Size().Height
	row := g.rowOf(line)
	if row == nil {
		return
	}
	v.revealed = line
	want := g.wanted(row, room)
	switch at := v.scroll.Offset.Y; {
	case want.from < at:
		v.scroll.ScrollToOffset(fyne.NewPos(0, max(0, want.from)))
	case want.to > at+room:
		v.scroll.ScrollToOffset(fyne.NewPos(0, ceil(g.downFrom(want, room).to-room)))
	}
}
