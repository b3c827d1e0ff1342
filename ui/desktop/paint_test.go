package desktop

import (
	"sync"
	"tenthpoint/ui/shell"
	"testing"
	"time"
)

// The first picture of a window, from nothing to the pixels of the whole of it in software, on
// books of more and more loads. A yard holds a handful of trucks in any book, so the pictures
// should take the same time. Each turn opens a window on an empty book too, and the metric is the
// ratio: a busy machine slows both. The two differ in the yard's form, sidebar and slip, where a
// new book shows the set-up.
func BenchmarkFirstPaint(b *testing.B) {
	for _, book := range []struct {
		name  string
		loads int
	}{{"1,000 loads", 1000}, {"100,000 loads", 100_000}} {
		if testing.Short() && book.loads > 1000 {
			continue // filling the book takes longer than all other benchmarks
		}
		filled := sync.OnceValue(func() *scene { return newScene(b, shell.Look{}, book.loads) })
		b.Run(book.name, func(b *testing.B) {
			empty, full := newScene(b, shell.Look{}, 0), filled()
			var first, other time.Duration
			b.ResetTimer()
			for range b.N {
				first += firstPaint(empty)
				other += firstPaint(full)
			}
			b.ReportMetric(float64(other)/float64(first), "times-empty")
		})
	}
}

// firstPaint returns the time until a window is painted.
func firstPaint(s *scene) time.Duration {
	start := time.Now()
	s.open(shell.Look{})
	s.fyne.Canvas().Capture()
	return time.Since(start)
}
