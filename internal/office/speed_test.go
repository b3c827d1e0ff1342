package office_test

import (
	"testing"

	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse/housetest"
)

// BenchmarkPreview measures the cost of a keystroke before drawing: the load settled in its current
// state.
func BenchmarkPreview(b *testing.B) {
	s := housetest.New(b)
	l := s.Load(s.Whole())
	for b.Loop() {
		if made, wrong := office.Preview(s.Desk, l); made == nil {
			b.Fatal(wrong)
		}
	}
}
