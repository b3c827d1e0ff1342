package desktop

import (
	"testing"

	"tenthpoint/ui/lab"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/shell"
)

// wholeLoad is a load with everything but the last figure of its tare.
func wholeLoad(b *testing.B) *scene {
	b.Helper()
	s := newScene(b, shell.Look{}, 40)
	s.Commands.Run("load.new")
	s.come("123", "corn", "77")
	s.write("52300", "17.2", "56.4", "", "", "", "")
	if at := yardOf(s.Window).Load.FocusOrder.Current(); at != "tare" {
		b.Fatalf("the keyboard is on %q, want it on the tare", at)
	}
	s.letters("2412")
	return s
}

// A keystroke is read, the load settled, the slip composed and every widget of
// the screen brought up to date. One turn is two keystrokes.
func BenchmarkTwoKeystrokes(b *testing.B) {
	s := wholeLoad(b)
	b.ResetTimer()
	for range b.N {
		s.letters("0")
		s.press("BackSpace")
	}
}

// A keystroke until its slip is painted, in the driver without a window. It is
// read, the load is settled, the slip composed, every widget of the screen
// brought up to date, the lines that changed set and laid out, and the pixels
// of the slip's pane painted in software: only where it looks otherwise, as a
// window does (pane_test.go shows that the picture is the whole one), or all of
// it again, or for comparison none. A letter of the remark changes one line, a
// figure of the moisture every line of the settlement, and with the last figure
// of the tare a settled slip takes the place of one that waits.
func BenchmarkKeystrokeToPaintedSlip(b *testing.B) {
	for _, typed := range []struct{ name, first, field, before, letter string }{
		{"remark", "0", "remark", "lat", "e"},
		{"moisture", "0", "moisture", "17.2", "5"},
		{"settling", "", "tare", "", "0"},
	} {
		for _, painted := range []struct {
			name  string
			paint func(*paperview.SlipView) func()
		}{
			{"where it changed", func(slip *paperview.SlipView) func() { return newPane(slip).update }},
			{"whole", func(slip *paperview.SlipView) func() { return func() { capture(slip, slip.Size()) } }},
			{"not at all", func(*paperview.SlipView) func() { return func() {} }},
		} {
			b.Run(typed.name+" painted "+painted.name, func(b *testing.B) {
				s := wholeLoad(b)
				s.letters(typed.first)
				if typed.field != "tare" {
					yardOf(s.Window).Load.FocusOrder.Focus(typed.field)
				}
				s.letters(typed.before)
				paint := painted.paint(yardOf(s.Window).Papers.Slip)
				b.ResetTimer()
				for i := range b.N {
					if i%2 == 0 {
						s.letters(typed.letter)
					} else {
						s.press("BackSpace")
					}
					paint()
				}
			})
		}
	}
}

// A keystroke and the picture of the whole window after it, every letter drawn
// again: what a window without a graphics card would have to do.
func BenchmarkKeystrokeAndWholePicture(b *testing.B) {
	s := wholeLoad(b)
	b.ResetTimer()
	for i := range b.N {
		if i%2 == 0 {
			s.letters("0")
		} else {
			s.press("BackSpace")
		}
		s.fyne.Canvas().Capture()
	}
}

// A truck opened by its key.
func BenchmarkSwitchTruck(b *testing.B) {
	s := newScene(b, shell.Look{}, 40)
	b.ResetTimer()
	for i := range b.N {
		if i%2 == 0 {
			s.press("F2")
		} else {
			s.press("F3")
		}
	}
}

// A keystroke on the bench: the test is read, worked and doubted, and everything
// said of the sample is brought up to date. One turn is two keystrokes.
func BenchmarkTwoKeystrokesOnTheBench(b *testing.B) {
	s := newScene(b, shell.Look{}, 120)
	s.Go("bench")
	bench := s.screen("bench").(*lab.BenchScreen)
	bench.Form.Focus("method")
	s.write("dial", "", "", "250", "65", "68", "", "57")
	s.letters("5")
	b.ResetTimer()
	for range b.N {
		s.letters("8")
		s.press("BackSpace")
	}
}
