package sheet

import (
	"io"
	"testing"

	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/tickettest"
)

func BenchmarkText(b *testing.B) {
	d := scaleticket.Compose(tickettest.Corn(b))
	for b.Loop() {
		_ = Text(d, RollColumns)
	}
}

func BenchmarkPDF(b *testing.B) {
	d := scaleticket.Compose(tickettest.Corn(b))
	for b.Loop() {
		if err := PDF(io.Discard, d, HalfLetter, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkPDFSqueezed is a slip that is laid out five times before it fits.
func BenchmarkPDFSqueezed(b *testing.B) {
	d := scaleticket.Compose(tickettest.Split(b))
	for b.Loop() {
		if err := PDF(io.Discard, d, HalfLetter, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
