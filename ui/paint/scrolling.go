package paint

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// ScrollTo scrolls no further than needed to have what lies from one height to another in sight.
func ScrollTo(s *container.Scroll, from, to float32) {
	at := max(0, min(s.Offset.Y, from), to-s.Size().Height)
	if at != s.Offset.Y {
		s.ScrollToOffset(fyne.NewPos(0, at))
	}
}
