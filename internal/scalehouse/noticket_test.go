package scalehouse_test

import (
	"context"
	"errors"
	"testing"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

// A book that cannot be read is not a book without the ticket.
func TestFailedReadIsNotAMissingTicket(t *testing.T) {
	s := housetest.New(t)
	_, number := s.Ticket()
	s.As(housetest.Manager)
	given, stop := context.WithCancel(ctx)
	err := s.Batch(given, func(w *scalehouse.Batch) error {
		stop()
		return scalehouse.Void(given, w, number, "torn")
	})
	if !errors.Is(err, context.Canceled) {
		t.Errorf("the write was given up, and the answer is: %v", err)
	}
	refused(t, scalehouse.Void(ctx, s.Desk, number+1, "torn"), errortest.NotFound("2"))
}
