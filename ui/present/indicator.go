package present

import (
	"context"
	"time"

	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
)

// Indicator is the truck scale's display, where the program can read it.
type Indicator interface {
	// Latest is what the display shows now, and whether it is at rest. The
	// error says in a sentence why nothing is known.
	Latest() (weight quantity.Amount, atRest bool, err error)
	// Weigh waits for a weight at rest that may go on a ticket.
	Weigh(ctx context.Context) (quantity.Amount, error)
}

// longestRest is how long the desk waits for a truck to stand still.
const longestRest = 30 * time.Second

// Live is what the scale shows now, for the rail; shown is false where weights
// are typed.
func (f *Frame) Live() (live BigFigure, shown bool) {
	if f.Indicator == nil {
		return BigFigure{}, false
	}
	s, _ := f.Scale()
	live = BigFigure{Caption: Say("Scale %s", s.ID), Unit: f.Desk.Profile().WeightUnit().String(), State: Wait}
	weight, atRest, err := f.Indicator.Latest()
	switch {
	case err != nil:
		live.Caption, live.State = Say("Scale %s: no reading", s.ID), Stop
		return live, true
	case atRest:
		live.State = OK
	}
	live.Value, live.Unit = weight.Figure(), weight.Unit().String()
	return live, true
}

// CanWeigh reports whether a weight can be taken from the scale.
func (y *Yard) CanWeigh() bool { return y.frame.Indicator != nil }

// Weigh takes the weight of the load in hand from the scale: the side whose
// field is in hand, else the gross before the tare.
func (y *Yard) Weigh(field string) {
	form := y.hand
	if err := form.Commit(); err != nil {
		y.frame.Fail(err)
		return
	}
	which, draft := form.sideToWeigh(field)
	var weight quantity.Amount
	y.frame.Run(Job{
		Topic: "weigh", Title: Say("Waiting for the scale to come to rest"),
		Do: func(ctx context.Context, _ func(int, int)) (err error) {
			ctx, cancel := context.WithTimeout(ctx, longestRest)
			defer cancel()
			weight, err = y.frame.Indicator.Weigh(ctx)
			return err
		},
		Done: func(err error) {
			if err == nil {
				err = form.take(which, draft, weight)
			}
			if err != nil {
				y.frame.Fail(err)
			}
		},
	})
}

// sideToWeigh is the side and draft that a weight from the scale belongs to:
// the one in hand, else the first that is still missing.
func (f *LoadForm) sideToWeigh(field string) (load.Which, string) {
	if which, draft, ok := sideOf(field); ok {
		return which, draft
	}
	for _, l := range f.lines {
		if which, draft, ok := sideOf(l.id); ok && f.now.missing[l.id] {
			return which, draft
		}
	}
	return load.Tare, ""
}

// take writes a weight from the scale down.
func (f *LoadForm) take(which load.Which, draft string, weight quantity.Amount) error {
	s, _ := f.frame.Scale()
	delete(f.typed, weightID(which, draft))
	d, _ := f.read()
	d.amended, d.sampled = false, false
	d.weighed = []load.Weighing{{Which: which, Draft: draft, Weight: weight, Source: load.FromScale, Scale: s.ID, DriverOn: f.driverOn}}
	id, err := f.write(d)
	if err != nil {
		return err
	}
	f.id = id
	f.frame.Say(OK, Say("%s is %s, from scale %s.", Say(string(which)), weight, s.ID))
	if err := f.Reload(); err != nil {
		return err
	}
	f.frame.window.Redraw()
	return nil
}
