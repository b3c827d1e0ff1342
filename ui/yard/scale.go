package yard

import (
	"context"
	"time"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// longestRest is the timeout for a truck to come to rest.
const longestRest = 8 * time.Second

// ScaleReader takes weights from the scale. One truck waits for a weight at a time:
// the weight is that truck's, and when the wait ends for another reason no weight
// is taken.
type ScaleReader struct {
	session *session.Session
	wait    *scaleWait // nil when no truck waits
}

// scaleWait is a wait for the scale to come to rest.
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

// Weigh takes the weight of a form's truck from the scale: the side whose field has the focus, else
// the gross before the tare. It asks before it replaces an existing weight. The side is empty where it
// asked, or where nothing is waited for.
func (r *ScaleReader) Weigh(form *LoadForm, field string) (side string) {
	if err := form.Commit(); err != nil {
		r.session.Fail(err)
		return ""
	}
	side = form.Now.sideToWeigh(field)
	if side == "" {
		r.askSide(form)
		return ""
	}
	r.begin(form, side)
	return side
}

// askSide asks which weight is meant.
func (r *ScaleReader) askSide(form *LoadForm) {
	r.session.Put(model.Ask{
		Title:  r.session.Say("%s: which weight is on the scale?", form.Now.truck()),
		Text:   r.session.Say("A weight that is there is struck out when another takes its place. Why is asked before the ticket."),
		State:  model.Warn,
		Fields: []model.AskField{{ID: "side", Label: r.session.Say("Weight"), Options: form.Now.sides(), Required: true}},
		Yes:    r.session.Say("Weigh"),
		Then:   func(values map[string]string) { r.begin(form, values["side"]) },
	})
}

// begin waits for the weight of one side, named by its field.
func (r *ScaleReader) begin(form *LoadForm, side string) {
	which, draft, _ := entry.SideOf(side)
	if _, err := r.session.Indicator.Latest(); err != nil {
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
		Topic: "weigh", Title: r.session.Say("%s: waiting for the scale to come to rest", w.form.Now.truck()),
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
				err = message.Device.Errorf("The wait was ended")
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

// End cancels the wait because the truck is no longer shown: the next weight at rest may be another
// truck's.
func (r *ScaleReader) End() {
	r.endFor(message.Device.Errorf("The truck was left before the scale came to rest"))
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
	display, err := r.wait.scale.Latest()
	switch {
	case err != nil:
		r.endFor(err)
	case display.Weight.Sign() > 0:
		r.wait.loaded = true
	case r.wait.loaded:
		r.endFor(message.Device.Errorf("The truck has left the deck"))
	}
}

// refuse reports for which truck no weight was taken, and why.
func (r *ScaleReader) refuse(form *LoadForm, why error) {
	r.session.Notify(model.Stop, r.session.Say("%s: no weight is taken. %s", form.Now.truck(), r.session.Sentence(why)))
}

// take records the weight from the scale.
func (w *scaleWait) take(weight quantity.Amount) error {
	f := w.form
	s, _ := f.session.Scale()
	if had, weighed := f.inBook().Weight(w.which, w.draft); weighed && had.Source == load.FromScale && had.Scale == s.ID && had.Weight.Equal(weight) {
		f.session.Notify(model.OK, w.form.session.Say("%s: %s is %s already.", f.Now.truck(), w.form.session.Say(string(w.which)), weight))
		return nil
	}
	f.typed.forget(entry.WeightID(w.which, w.draft))
	facts := entry.Facts{}
	if f.id == "" {
		facts = entry.Facts{Details: f.Now.form.Opening().Details}
	}
	facts.Weighed = []load.Weighing{{Which: w.which, Draft: w.draft, Weight: weight, Source: load.FromScale, Scale: s.ID, DriverOn: f.typed.driverOn}}
	if err := f.write(facts); err != nil {
		return err
	}
	f.session.Notify(model.OK, w.form.session.Say("%s: %s %s, from scale %s.", f.Now.truck(), w.form.session.Say(string(w.which)), weight, s.ID))
	if err := f.Reload(); err != nil {
		return err
	}
	f.session.Window.Redraw()
	return nil
}
