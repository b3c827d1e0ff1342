package view

import "testing"

// wholeLoad is a load with everything but the last figure of its tare.
func wholeLoad(b *testing.B) *scene {
	b.Helper()
	s := newScene(b, Look{}, 40)
	s.letCornBeTyped()
	s.yard().load.ring.Focus("tare")
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

// A keystroke and the picture of the whole window after it, every letter drawn
// anew: what a window without a graphics card would have to do.
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

// A truck taken in hand by its key.
func BenchmarkSwitchTruck(b *testing.B) {
	s := newScene(b, Look{}, 40)
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
	s := newScene(b, Look{}, 120)
	s.Go("bench")
	bench := s.screen("bench").(*benchScreen)
	bench.form.focus("method")
	s.write("dial", "", "", "250", "65", "68", "", "57")
	s.letters("5")
	b.ResetTimer()
	for range b.N {
		s.letters("8")
		s.press("BackSpace")
	}
}
