package desk

import (
	"context"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/house"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// Entering is the desk as a form of a load sees it. It reads each list once, so it
// is made for one act, and anew after the lists have changed.
type Entering struct {
	*Desk
	ctx       context.Context
	growers   once[house.Grower]
	trucks    once[house.Truck]
	bins      once[house.Bin]
	contracts once[house.ContractTerms]
}

var _ entry.House = (*Entering)(nil)

// Entering lets loads be entered at the desk.
func (d *Desk) Entering(ctx context.Context) *Entering { return &Entering{Desk: d, ctx: ctx} }

// once is a list that is read at most once.
type once[T any] struct {
	read bool
	all  []T
	err  error
}

func (o *once[T]) list(ctx context.Context, read func(context.Context) ([]T, error)) ([]T, error) {
	if !o.read {
		o.all, o.err = read(ctx)
		o.read = true
	}
	return o.all, o.err
}

// Growers are all growers.
func (e *Entering) Growers() ([]house.Grower, error) { return e.growers.list(e.ctx, e.Desk.Growers) }

// Trucks are all trucks.
func (e *Entering) Trucks() ([]house.Truck, error) { return e.trucks.list(e.ctx, e.Desk.Trucks) }

// Bins are all pits and bins.
func (e *Entering) Bins() ([]house.Bin, error) { return e.bins.list(e.ctx, e.Desk.Bins) }

// Contracts are all contracts.
func (e *Entering) Contracts() ([]house.ContractTerms, error) {
	return e.contracts.list(e.ctx, e.Desk.Contracts)
}

// Profile is the elevator as set up.
func (e *Entering) Profile() house.Profile { return e.Desk.Profile() }

// Rates are the editions in force.
func (e *Entering) Rates() *rates.Set { return e.Desk.Rates() }

// Today is the day at the desk.
func (e *Entering) Today() quantity.Date { return e.Desk.Today() }

// Stamp is who is signed in, now.
func (e *Entering) Stamp() load.Stamp { return load.Stamp{At: e.Desk.Now(), Who: e.Desk.Who().Name} }

// RetainDays is how long samples are kept here.
func (e *Entering) RetainDays() int {
	if keep, err := e.Desk.Retention(e.ctx); err == nil {
		return keep.Days
	}
	return e.Desk.Profile().RetainDays
}

// Settle is [Desk.Preview].
func (e *Entering) Settle(l *load.Load) (*settle.Settlement, settle.Problems) {
	return e.Desk.Preview(l)
}
