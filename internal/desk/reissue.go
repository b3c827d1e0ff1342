package desk

import (
	"context"
	"fmt"

	"tenthpoint/internal/load"
)

// Reissue opens a load for the grain of a void ticket: it starts with everything
// the void ticket's load had, and its own ticket names the void one. The void
// ticket stays void on its day, and the grain counts with the new ticket.
//
// A void ticket is reissued once. A load turned away before it had its ticket
// leaves the void ticket free to be reissued; of a ticket that is voided in its
// turn, that one is.
func Reissue(ctx context.Context, at Actor, number int64, reason string) (string, error) {
	return result(ctx, at, func(w *Batch) (string, error) {
		if err := w.desk.mayManage("Reissuing a void ticket"); err != nil {
			return "", err
		}
		old, err := w.ticket(number)
		if err != nil {
			return "", err
		}
		if err := old.Allow(load.Reissued{By: number + 1}); err != nil {
			return "", err
		}
		if err := w.notUnderReissue(number); err != nil {
			return "", err
		}
		return w.openInPlace(old, load.Opened{Details: old.Details, Reissues: number, Reason: reason})
	})
}

// notUnderReissue refuses a second load for a void ticket while one is on the
// yard: the grain would count twice.
func (w *Batch) notUnderReissue(number int64) error {
	id, err := w.onYardFor("reissues", number)
	if err != nil || id == "" {
		return err
	}
	return fmt.Errorf("ticket %d is being reissued already, as load %s. Finish that load, or turn it away with a reason", number, id)
}
