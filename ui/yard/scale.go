package yard

import (
	"context"
	"errors"
	"tenthpoint/internal/entry"
	"time"

	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// longestRest is how long the desk waits for a truck to stand still.
const longestRest = 8 * time.Second

// CanWeigh reports whether a weight can be taken from the scale.
func (y *Yard) CanWeigh() bool { return y.session.Indicator != nil }

// weighing is a wait for the truck in hand to come to rest. The weight is that
// load's: when the wait ends for another reason, no weight is taken.
type weighing struct {
	form   *LoadForm
	scale  session.Indicator
	which  load.Which
	draft  string
	end    context.CancelCauseFunc
	loaded bool // the display showed a weight since the wait began
}

// Weigh takes the weight of the load in hand from the scale: the side whose
// field is in hand, else the gross before the tare.
func (y *Yard) Weigh(field string) {
	form := y.hand
	if err := form.Commit(); err != nil {
		y.session.Fail(err)
		return
	}
	which, draft, due := form.sideToWeigh(field)
	if !due {
		y.session.Say(model.Warn, session.Say("%s: gross and tare are there. Put the keyboard on the one to weigh again.", form.truckInWords()))
		return
	}
	if _, _, err := y.session.Indicator.Latest(); err != nil {
		y.noWeight(form, err)
		return
	}
	own, end := context.WithCancelCause(context.Background())
	w := &weighing{form: form, scale: y.session.Indicator, which: which, draft: draft, end: end}
	y.endWait(nil)
	y.wait = w
	y.waitFor(own, w)
}

// waitFor waits away from the window until the truck is at rest or own ends.
func (y *Yard) waitFor(own context.Context, w *weighing) {
	var weight quantity.Amount
	y.session.Run(model.Job{
		Topic: "weigh", Title: session.Say("%s: waiting for the scale to come to rest", w.form.truckInWords()),
		Do: func(ctx context.Context, _ func(int, int)) (err error) {
			ctx, cancel := context.WithTimeout(ctx, longestRest)
			defer cancel()
			defer context.AfterFunc(own, cancel)()
			weight, err = w.scale.Weigh(ctx)
			return err
		},
		Done: func(err error) {
			if why := context.Cause(own); why != nil {
				err = why
			} else if err == context.Canceled {
				err = errors.New(session.Say("The wait was ended"))
			}
			w.end(nil)
			if y.wait == w {
				y.wait = nil
			}
			if err == nil {
				err = w.form.take(w.which, w.draft, weight)
			}
			if err != nil {
				y.noWeight(w.form, err)
			}
		},
	})
}

// EndWait ends the wait for the scale, for the truck in hand is out of sight: the
// next weight at rest may be another truck's.
func (y *Yard) EndWait() {
	y.endWait(errors.New(session.Say("The truck was left before the scale came to rest")))
}

func (y *Yard) endWait(why error) {
	if y.wait != nil {
		y.wait.end(why)
		y.wait = nil
	}
}

// WatchScale ends the wait for the scale when the display shows nothing any more,
// or the deck is empty again. The window calls it as often as it shows the scale.
func (y *Yard) WatchScale() {
	if y.wait == nil {
		return
	}
	weight, _, err := y.wait.scale.Latest()
	switch {
	case err != nil:
		y.endWait(err)
	case weight.Sign() > 0:
		y.wait.loaded = true
	case y.wait.loaded:
		y.endWait(errors.New(session.Say("The truck has left the deck")))
	}
}

// noWeight says for which truck no weight was taken, and why.
func (y *Yard) noWeight(form *LoadForm, why error) {
	y.session.Say(model.Stop, session.Say("%s: no weight is taken. %s", form.truckInWords(), session.Sentence(why)))
}

// truckInWords names the truck of the form.
func (f *LoadForm) truckInWords() string {
	if truck := session.TruckText(f.Now.Load.Details.Truck); truck != "" {
		return session.Say("Truck %s", truck)
	}
	return session.Say("truck ?")
}

// sideToWeigh is the side and draft that a weight from the scale belongs to:
// the one in hand, else the first that is still missing. A weight that is there
// is only taken again from its own field.
func (f *LoadForm) sideToWeigh(field string) (_ load.Which, draft string, due bool) {
	if which, draft, ok := sideOf(field); ok {
		return which, draft, true
	}
	for _, l := range f.Lines {
		if which, draft, ok := sideOf(l.ID); ok && f.Now.missing[l.ID] {
			return which, draft, true
		}
	}
	return load.Tare, "", false
}

// take writes a weight from the scale down.
func (f *LoadForm) take(which load.Which, draft string, weight quantity.Amount) error {
	s, _ := f.session.Scale()
	delete(f.Typed, weightID(which, draft))
	facts := entry.Facts{}
	if f.id == "" {
		facts = entry.Facts{Details: f.form.Opening().Details}
	}
	facts.Weighed = []load.Weighing{{Which: which, Draft: draft, Weight: weight, Source: load.FromScale, Scale: s.ID, DriverOn: f.driverOn}}
	id, err := f.write(facts)
	if err != nil {
		return err
	}
	f.id = id
	f.session.Say(model.OK, session.Say("%s: %s %s, from scale %s.", f.truckInWords(), session.Say(string(which)), weight, s.ID))
	if err := f.Reload(); err != nil {
		return err
	}
	f.session.Window.Redraw()
	return nil
}
