package yard

import (
	"context"
	"errors"
	"strings"
	"testing"
	"time"

	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

// later is a room whose background work waits until the test continues it.
type later struct {
	*sessiontest.Room
	waiting []model.Job
}

func (l *later) Run(job model.Job) { l.waiting = append(l.waiting, job) }

// goOn does the work that waits.
func (l *later) goOn() {
	l.T.Helper()
	for len(l.waiting) > 0 {
		job := l.waiting[0]
		l.waiting = l.waiting[1:]
		l.Room.Run(job)
	}
}

// twoTrucks is a yard with two loads that lack their tare, the first one current,
// and a scale that comes to rest at 14,200 lb.
func twoTrucks(t *testing.T) (*later, *Yard, *sessiontest.FakeScale) {
	l := &later{Room: sessiontest.EmptyDemo(t)}
	d := &sessiontest.FakeScale{Weight: sessiontest.Lb(14200), AtRest: true}
	y := NewYard(l.Session)
	for _, truck := range []string{"7", "4"} {
		y.TakeNew()
		fillIn(y.Form(), wholeCorn[:3])
		y.Form().Type("truck", truck)
		y.Form().Type("gross", "52300")
		sessiontest.Must(t, y.Form().Commit())
		y.Refresh()
	}
	l.Session.Window = l
	l.Session.Indicator = d
	if !y.TakePlace(0) || y.Form().Text("truck") != "7" {
		t.Fatalf("truck %q is in hand", y.Form().Text("truck"))
	}
	return l, y, d
}

// tares are the tares in the book, by truck.
func (l *later) tares() map[string]string {
	l.T.Helper()
	trucks, err := office.Yard(context.Background(), l.Session.Desk)
	sessiontest.Must(l.T, err)
	out := map[string]string{}
	for _, one := range trucks {
		if w, weighed := one.Weight(load.Tare, ""); weighed {
			out[one.Details.Truck.ID] = w.Weight.String()
		}
	}
	return out
}

// The weight from the scale goes to the load it was asked for, and its truck is
// named.
func TestWeightNamesItsTruck(t *testing.T) {
	l, y, _ := twoTrucks(t)
	y.Weigh("tare")
	l.goOn()
	sessiontest.WantSaid(t, l.Room, model.OK, "Truck 7: tare 14,200 lb, from scale 1.")
	if got := l.tares(); len(got) != 1 || got["7"] != "14,200 lb" {
		t.Errorf("tares in the book: %v", got)
	}
}

// Whatever ends the wait before the scale is at rest, no load gets the weight,
// and the desk says for which truck none was taken.
func TestWaitForTheScaleEnds(t *testing.T) {
	tests := []struct {
		name string
		do   func(l *later, y *Yard, d *sessiontest.FakeScale)
		want string
	}{
		{"another truck", func(_ *later, y *Yard, _ *sessiontest.FakeScale) { y.TakePlace(1) }, "was left"},
		{"there and back", func(_ *later, y *Yard, _ *sessiontest.FakeScale) { y.TakePlace(1); y.TakePlace(0) }, "was left"},
		{"a new truck", func(_ *later, y *Yard, _ *sessiontest.FakeScale) { y.TakeNew() }, "was left"},
		{"another screen", func(_ *later, y *Yard, _ *sessiontest.FakeScale) { y.Scale.End() }, "was left"},
		{"refused", func(l *later, y *Yard, _ *sessiontest.FakeScale) {
			sessiontest.Must(l.T, scalehouse.Refuse(context.Background(), l.Session.Desk, y.Form().ID(), "smells musty"))
			y.Refresh()
		}, "was left"},
		{"no reading", func(_ *later, y *Yard, d *sessiontest.FakeScale) {
			d.Err = errors.New("No reading: scale 1 is not connected")
			y.Scale.Watch()
			d.Err = nil
		}, "not connected"},
		{"deck empty", func(_ *later, y *Yard, d *sessiontest.FakeScale) {
			*d = sessiontest.FakeScale{Weight: sessiontest.Lb(14000)}
			y.Scale.Watch()
			*d = sessiontest.FakeScale{Weight: sessiontest.Lb(0)}
			y.Scale.Watch()
			*d = sessiontest.FakeScale{Weight: sessiontest.Lb(26000), AtRest: true}
		}, "has left the deck"},
		{"stopped", func(l *later, _ *Yard, _ *sessiontest.FakeScale) {
			l.waiting[0].Do = func(context.Context, func(int, int)) error { return context.Canceled }
		}, "was ended"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			l, y, d := twoTrucks(t)
			y.Weigh("tare")
			tt.do(l, y, d)
			l.goOn()
			sessiontest.WantSaid(t, l.Room, model.Stop, "Truck 7: no weight is taken. ")
			if !strings.Contains(l.Last(), tt.want) {
				t.Errorf("the desk says %q, want %q in it", l.Last(), tt.want)
			}
			if got := l.tares(); len(got) > 0 {
				t.Errorf("tares in the book: %v", got)
			}
			y.TakePlace(0)
			if tt.name != "refused" {
				y.Weigh("tare")
				l.goOn()
				sessiontest.WantSaid(t, l.Room, model.OK, "lb, from scale 1.")
			}
		})
	}
}

// restless is a scale that never comes to rest.
type restless struct{ sessiontest.FakeScale }

func (r *restless) Weigh(ctx context.Context) (quantity.Amount, error) {
	<-ctx.Done()
	return quantity.Amount{}, errors.New("No steady weight came. Scale 1 is still moving at 14,000 lb")
}

// The desk waits 8 seconds at most.
func TestWaitForTheScaleIsShort(t *testing.T) {
	l, y, _ := twoTrucks(t)
	l.Session.Indicator = &restless{sessiontest.FakeScale{Weight: sessiontest.Lb(14000)}}
	y.Weigh("tare")
	begun := time.Now()
	l.goOn()
	if took := time.Since(begun); took > 9*time.Second {
		t.Errorf("it waited %s", took)
	}
	sessiontest.WantSaid(t, l.Room, model.Stop, "Truck 7: no weight is taken. No steady weight came")
}

// An existing weight is only taken again when a person says which one is meant, in any field; the
// same weight again changes nothing.
func TestWeightIsNotReplacedUnasked(t *testing.T) {
	l, y, d := twoTrucks(t)
	y.Weigh("gross")
	if got := l.Question().Fields[0].Options; len(got) != 2 || got[0].Code != "tare" {
		t.Errorf("asked which of %+v, want the missing tare first", got)
	}
	l.Answer(map[string]string{"side": "tare"})
	l.goOn()
	d.Weight = sessiontest.Lb(26000)
	for _, field := range []string{"moisture", "tare"} {
		y.Weigh(field)
		l.goOn()
		if got := l.tares(); got["7"] != "14,200 lb" {
			t.Errorf("from %s, tares in the book: %v", field, got)
		}
	}
	l.Answer(map[string]string{"side": "tare"})
	l.goOn()
	if got := l.tares(); got["7"] != "26,000 lb" {
		t.Errorf("weighed again, tares in the book: %v", got)
	}
	y.Weigh("tare")
	l.Answer(map[string]string{"side": "tare"})
	l.goOn()
	if got := y.Form().inBook().Struck; len(got) != 1 || !strings.Contains(l.Last(), "already") {
		t.Errorf("the same weight again struck %v, said %q", got, l.Last())
	}
}

// A display that shows nothing ends the act at once.
func TestWeighWithoutAReading(t *testing.T) {
	l, y, d := twoTrucks(t)
	d.Err = errors.New("No reading: scale 1 is not connected")
	y.Weigh("tare")
	sessiontest.WantSaid(t, l.Room, model.Stop, "Truck 7: no weight is taken. No reading: scale 1 is not connected.")
	if len(l.waiting) > 0 {
		t.Error("the desk waits for a scale that shows nothing")
	}
}
