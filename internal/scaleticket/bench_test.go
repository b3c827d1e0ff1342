package scaleticket_test

import (
	"testing"

	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/tickettest"
)

// A clerk's keystroke ends in a composed slip on the screen.
func BenchmarkPreview(b *testing.B) {
	ticket := tickettest.Preview(b)
	for b.Loop() {
		scaleticket.Paper(scaleticket.Compose(ticket))
	}
}

func BenchmarkComposeSettled(b *testing.B) {
	ticket := tickettest.Shares(b)
	for b.Loop() {
		scaleticket.Compose(ticket)
	}
}
