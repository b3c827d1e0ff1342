package scaleticket

import (
	"io"
	"testing"
)

// A clerk's keystroke ends in a composed slip on the screen.
func BenchmarkPreview(b *testing.B) {
	ticket := previewTicket(b)
	for b.Loop() {
		Paper(Compose(ticket))
	}
}

func BenchmarkComposeSettled(b *testing.B) {
	ticket := sharesTicket(b)
	for b.Loop() {
		Compose(ticket)
	}
}

func BenchmarkText(b *testing.B) {
	d := Compose(cornTicket(b))
	for b.Loop() {
		_ = d.Text(RollColumns)
	}
}

func BenchmarkPDF(b *testing.B) {
	d := Compose(cornTicket(b))
	for b.Loop() {
		if err := PDF(io.Discard, d, HalfLetter, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkPDFSqueezed is a slip that is laid out five times before it fits.
func BenchmarkPDFSqueezed(b *testing.B) {
	d := Compose(splitTicket(b))
	for b.Loop() {
		if err := PDF(io.Discard, d, HalfLetter, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
