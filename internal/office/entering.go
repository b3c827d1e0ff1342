package office

import (
	"context"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/guard/lookup"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// Entering implements the form's view of the desk. It reads each list once, so it is made for one
// act, and again after the lists have changed.
type Entering struct {
	desk      Desk
	ctx       context.Context
	growers   once[elevator.Grower]
	trucks    once[elevator.Truck]
	bins      once[elevator.Bin]
	contracts once[elevator.ContractTerms]
}

var _ entry.House = (*Entering)(nil)

// NewEntering lets loads be entered at a desk.
func NewEntering(ctx context.Context, d Desk) *Entering { return &Entering{desk: d, ctx: ctx} }

// once is a list that is read at most once.
type once[T any] struct {
	read bool
	all  []T
	err  error
}

func (o *once[T]) list(ctx context.Context, d Desk, read func(context.Context, Desk) ([]T, error)) ([]T, error) {
	if !o.read {
		o.all, o.err = read(ctx, d)
		o.read = true
	}
	return o.all, o.err
}

// Growers are all growers.
func (e *Entering) Growers() ([]elevator.Grower, error) {
	return e.growers.list(e.ctx, e.desk, Growers)
}

// Trucks are all trucks.
func (e *Entering) Trucks() ([]elevator.Truck, error) { return e.trucks.list(e.ctx, e.desk, Trucks) }

// Bins are all pits and bins.
func (e *Entering) Bins() ([]elevator.Bin, error) { return e.bins.list(e.ctx, e.desk, Bins) }

// Contracts are all contracts.
func (e *Entering) Contracts() ([]elevator.ContractTerms, error) {
	return e.contracts.list(e.ctx, e.desk, Contracts)
}

// Profile is the elevator as set up.
func (e *Entering) Profile() elevator.Profile { return e.desk.Profile() }

// Rates are the editions in force.
func (e *Entering) Rates() *rates.Set { return e.desk.Rates() }

// Today is the day at the desk.
func (e *Entering) Today() quantity.Date { return e.desk.Today() }

// Stamp returns the person signed in and the current time.
func (e *Entering) Stamp() load.Stamp { return load.Stamp{At: e.desk.Now(), Who: e.desk.Signature()} }

// RetainDays returns how many days samples are kept.
func (e *Entering) RetainDays() int {
	if keep, err := RetentionRule(e.ctx, e.desk); err == nil {
		return keep.Days
	}
	return e.desk.Profile().RetainDays
}

// Settle is [Preview].
func (e *Entering) Settle(l *load.Load) (*settle.Settlement, settle.Problems) {
	return Preview(e.desk, l)
}

// Around returns the [Surroundings] in the current book.
func (e *Entering) Around(l *load.Load) (guard.Setting, error) {
	return Surroundings(e.desk, ReadNow(e.ctx, e.desk), l)
}

// Posted is the price posted for a grain and a day.
func (e *Entering) Posted(commodity string, day quantity.Date) (*load.Posted, error) {
	return lookup.Posted(ReadNow(e.ctx, e.desk), commodity, day)
}

// Surroundings returns what a load is compared with.
func Surroundings(d Desk, lists Lists, l *load.Load) (guard.Setting, error) {
	return lookup.Around(lists, d.Profile(), d.Today(), l)
}

// MoistureClasses is [MoistureClasses].
func (e *Entering) MoistureClasses(l *load.Load) []grain.MoistureClass {
	return MoistureClasses(e.desk, l)
}
