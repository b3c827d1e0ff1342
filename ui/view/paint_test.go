package view

import "testing"

// The first picture of a window on an empty book and on books of more and more
// loads. A yard holds a handful of trucks whatever the book holds, so the
// pictures should take the same time.
func BenchmarkFirstPaint(b *testing.B) {
	for _, book := range []struct {
		name  string
		loads int
	}{{"empty book", 0}, {"1,000 loads", 1000}, {"20,000 loads", 20_000}} {
		b.Run(book.name, func(b *testing.B) {
			s := newScene(b, Look{}, book.loads)
			b.ResetTimer()
			for range b.N {
				s.open(Look{})
				s.fyne.Canvas().Capture()
			}
		})
	}
}
