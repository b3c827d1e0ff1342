package scalehouse_test

import (
	"context"
	"errors"
	"testing"

	"tenthpoint/internal/scalehouse"
)

// A book that cannot be read is not a book without the ticket.
func TestFailedReadIsNotAMissingTicket(t *testing.T) {
	s := newScene(t)
	_, number := s.ticket()
	s.as(manager)
	given, stop := context.WithCancel(ctx)
	err := s.Batch(given, func(w *scalehouse.Batch) error {
		stop()
		return scalehouse.Void(given, w, number, "torn")
	})
	if !errors.Is(err, context.Canceled) {
		t.Errorf("the write was given up, and the answer is: %v", err)
	}
	refused(t, scalehouse.Void(ctx, s.Desk, number+1, "torn"), "there is no ticket 2")
}
