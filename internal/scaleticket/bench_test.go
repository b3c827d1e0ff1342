package scaleticket_test

import (
	"testing"

	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/tickettest"
)

func BenchmarkComposeSettled(b *testing.B) {
	ticket := tickettest.Shares(b)
	for b.Loop() {
		scaleticket.Compose(ticket)
	}
}
