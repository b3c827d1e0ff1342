package desktop

import (
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/internal/paper"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/shell"
)

// leastLetters is the size of the smallest letters of a slip as the window shows it, in Fyne's units.
func leastLetters(v *paperview.SlipView) float32 {
	const shownMargin = 10 * paper.Point
	layout := v.InFront()
	least, left := paper.Length(1<<40), layout.Width
	for _, p := range layout.Pages {
		for _, r := range p.Runs {
			least, left = min(least, r.Style.Size), min(left, r.At.X)
		}
	}
	shown := layout.Width - 2*(left-shownMargin)
	return float32(least) * v.Pages().Size().Width / float32(shown)
}

// TestSlipIsReadInLargeLetters: even the smallest window can show the slip with letters of 11 units
// or more. The form lies behind it and comes back by the same key, or by Escape.
func TestSlipIsReadInLargeLetters(t *testing.T) {
	s := newScene(t, shell.Look{Scale: apptheme.TextOrdinary}, 40)
	s.resize(smallest)
	s.letCornBeTyped()
	y := yardOf(s.Window)
	beside := leastLetters(y.Papers.Slip)
	for _, back := range []func(){
		func() { s.Commands.Run("load.read") },
		func() { s.press(fyne.KeyEscape) },
		func() { s.Commands.Run("load.working"); s.Commands.Run("load.working") },
	} {
		s.Commands.Run("load.read")
		if got := leastLetters(y.Papers.Slip); got < 11 || y.Pane.Form.Visible() || !y.Papers.Slip.Visible() {
			t.Errorf("the smallest letters have %.1f units, %.1f beside the form; the form is seen: %v", got, beside, y.Pane.Form.Visible())
		}
		back()
		if got := leastLetters(y.Papers.Slip); got != beside || !y.Pane.Form.Visible() || !y.Papers.Slip.Visible() {
			t.Errorf("then they have %.1f units, %.1f before; the form is seen: %v", got, beside, y.Pane.Form.Visible())
		}
	}
}
