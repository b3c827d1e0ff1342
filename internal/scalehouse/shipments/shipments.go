// Package shipments has the act by which the figures of a destination come into the book.
package shipments

import (
	"context"

	"tenthpoint/internal/message"
	"tenthpoint/internal/office/shipments"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/shipment"
)

// Arrive writes down what the destination of a load found. What was written before stays in the
// journal; the last one counts.
func Arrive(ctx context.Context, d *scalehouse.Desk, a shipment.Arrived) error {
	return d.Batch(ctx, func(w *scalehouse.Batch) error {
		l, err := scalehouse.IssuedIn(w, a.Ticket)
		if err != nil {
			return err
		}
		if err := shipments.MayArrive(l); err != nil {
			return err
		}
		if a.Day.Before(l.IssuedDay) || a.Day.After(d.Today()) {
			return message.Refused.Errorf("the load of ticket %d left on %s and cannot have arrived on %s", a.Ticket, l.IssuedDay, a.Day)
		}
		return scalehouse.SetRecord(ctx, w, a.ID(), a)
	})
}
