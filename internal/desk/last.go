package desk

import (
	"context"

	"tenthpoint/internal/load"
	"tenthpoint/internal/store"
)

// LastLoad is the newest ticketed load of a grower, or of a truck where no
// grower is given: what the desk offers when the same one comes again. Found
// is false when neither has been here.
func LastLoad(ctx context.Context, d *Desk, grower, truck string) (l *load.Load, found bool, err error) {
	filter := store.LoadFilter{Grower: grower, Newest: true, Limit: 1}
	if grower == "" {
		filter.Truck = truck
	}
	if grower == "" && truck == "" {
		return nil, false, nil
	}
	rows, err := d.book.Loads(ctx, filter)
	if err != nil || len(rows) == 0 {
		return nil, false, err
	}
	l, err = Load(ctx, d, rows[0].ID)
	return l, err == nil, err
}

// LastTicket is the highest ticket number given so far; found is false while
// no ticket has been issued.
func LastTicket(ctx context.Context, d *Desk) (number int64, found bool, err error) {
	rows, err := d.book.Loads(ctx, store.LoadFilter{Newest: true, FromTicket: 1, Limit: 1})
	if err != nil || len(rows) == 0 {
		return 0, false, err
	}
	return rows[0].Ticket, true, nil
}
