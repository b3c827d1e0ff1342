package yard

import (
	"context"
	"errors"
	"time"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// longestRest is how long the desk waits for a truck to stand still.
const longestRest = 8 * time.Second

// ScaleReader takes weights from the scale. One truck waits for a weight at a time:
// the weight is that truck's, and when the wait ends for another reason no weight
// is taken.
type ScaleReader struct {
	session *session.Session
	wait    *scaleWait // nil when no truck waits
}

// scaleWait is the wait of a truck for the scale to come to rest.
type scaleWait struct {
	form   *LoadForm
	scale  session.Indicator
	which  load.Which
	draft  string
	end    context.CancelCauseFunc
	loaded bool // the display showed a weight since the wait began
}

// CanRead reports whether a weight can be taken from the scale.
func (r *ScaleReader) CanRead() bool { return r.session.Indicator != nil }

// Weigh takes the weight of a form's truck from the scale: the side whose field has
// the keyboard, else the gross before the tare.
func (r *ScaleReader) Weigh(form *LoadForm, field string) {
	if err := form.Commit(); err != nil {
		r.session.Fail(err)
		return
	}
	which, draft, due := form.Now.sideToWeigh(field)
	if !due {
		r.session.Say(model.Warn, session.Say("%s: gross and tare are there. Put the keyboard on the one to weigh again.", form.Now.truck()))
		return
	}
	if _, _, err := r.session.Indicator.Latest(); err != nil {
		r.refuse(form, err)
		return
	}
	own, end := context.WithCancelCause(context.Background())
	w := &scaleWait{form: form, scale: r.session.Indicator, which: which, draft: draft, end: end}
	r.endFor(nil)
	r.wait = w
	r.waitFor(own, w)
}

// waitFor waits in the background until the truck is at rest or own ends.
func (r *ScaleReader) waitFor(own context.Context, w *scaleWait) {
	var weight quantity.Amount
	r.session.Run(model.Job{
		Topic: "weigh", Title: session.Say("%s: waiting for the scale to come to rest", w.form.Now.truck()),
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
			if r.wait == w {
				r.wait = nil
			}
			if err == nil {
				err = w.take(weight)
			}
			if err != nil {
				r.refuse(w.form, err)
			}
		},
	})
}

// End ends the wait because the truck is not shown any more: the next weight at
// rest may be another truck's.
func (r *ScaleReader) End() {
	r.endFor(errors.New(session.Say("The truck was left before the scale came to rest")))
}

func (r *ScaleReader) endFor(why error) {
	if r.wait != nil {
		r.wait.end(why)
		r.wait = nil
	}
}

// Watch ends the wait when the display shows nothing any more, or the deck is
// empty again. The window calls it as often as it shows the scale.
func (r *ScaleReader) Watch() {
	if r.wait == nil {
		return
	}
	weight, _, err := r.wait.scale.Latest()
	switch {
	case err != nil:
		r.endFor(err)
	case weight.Sign() > 0:
		r.wait.loaded = true
	case r.wait.loaded:
		r.endFor(errors.New(session.Say("The truck has left the deck")))
	}
}

// refuse says for which truck no weight was taken, and why.
func (r *ScaleReader) refuse(form *LoadForm, why error) {
	r.session.Say(model.Stop, session.Say("%s: no weight is taken. %s", form.Now.truck(), session.Sentence(why)))
}

// take writes the weight from the scale down.
func (w *scaleWait) take(weight quantity.Amount) error {
	f := w.form
	s, _ := f.session.Scale()
	f.typed.forget(entry.WeightID(w.which, w.draft))
	facts := entry.Facts{}
	if f.id == "" {
		facts = entry.Facts{Details: f.Now.form.Opening().Details}
	}
	facts.Weighed = []load.Weighing{{Which: w.which, Draft: w.draft, Weight: weight, Source: load.FromScale, Scale: s.ID, DriverOn: f.typed.driverOn}}
	if err := f.write(facts); err != nil {
		return err
	}
	f.session.Say(model.OK, session.Say("%s: %s %s, from scale %s.", f.Now.truck(), session.Say(string(w.which)), weight, s.ID))
	if err := f.Reload(); err != nil {
		return err
	}
	f.session.Window.Redraw()
	return nil
}
