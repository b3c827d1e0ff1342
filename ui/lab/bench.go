package lab

import (
	"context"
	"reflect"
	"slices"

	"tenthpoint/internal/load"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/yard"
)

// Bench is the sample tester's place: the samples that wait, and the one that
// is being tested. What has been tested of a sample stays with it, whichever is
// in hand, until it is written to its load.
type Bench struct {
	session   *session.Session
	samples   map[string]*SampleTest // by load; "" is grain without a load
	hand      *SampleTest
	trucks    []*load.Load
	equipment moisture.Equipment
	setup     office.Bench
	last      usual
	back      bool // the sample in hand was opened from the yard, which waits for it
}

// usual is what the tester used last and will most likely use again.
type usual struct {
	method, meter string
	celsius       bool
}

// NewBench makes the bench as it stood before the program stopped, with the
// tests that were made and not written down. Without any, no load is in hand.
func NewBench(f *session.Session) *Bench {
	b := &Bench{session: f, samples: map[string]*SampleTest{}}
	b.read()
	b.hand = b.sample("")
	b.formsBack()
	b.hand.work()
	return b
}

// read reads from the book what stands at the bench and what waits for it.
func (b *Bench) read() {
	ctx := context.Background()
	var errs [3]error
	b.trucks, errs[0] = office.Yard(ctx, b.session.Desk)
	b.equipment, errs[1] = office.Equipment(ctx, b.session.Desk)
	b.setup, errs[2] = office.BenchSetup(ctx, b.session.Desk)
	for _, err := range errs {
		if err != nil {
			b.session.Fail(err)
		}
	}
	if b.last.method == "" {
		b.last = b.firstUsual()
	}
}

// firstUsual is what to offer before anything has been tested: the first meter,
// and the thermometer's scale that goes with the house's weights.
func (b *Bench) firstUsual() usual {
	p := b.session.Desk.Profile()
	u := usual{method: string(meter.Typed), celsius: p.Rules == "canada" || p.WeightUnit() == quantity.Kg}
	if m, ok := b.bestMeter(); ok {
		u.method, u.meter = string(m.Method), m.ID
	}
	return u
}

// bestMeter is the first meter that stands well with its checks, or else the
// first.
func (b *Bench) bestMeter() (meter.Meter, bool) {
	meters := b.equipment.Meters
	for _, m := range meters {
		if s := b.equipment.Statuses[m.ID].State; s == meter.Good || s == meter.Due {
			return m, true
		}
	}
	if len(meters) == 0 {
		return meter.Meter{}, false
	}
	return meters[0], true
}

// Refresh reads the book again. Samples whose load has left the yard go with
// it; one whose load has changed is worked again.
func (b *Bench) Refresh() {
	hadMeters := len(b.equipment.Meters) > 0
	b.read()
	if !hadMeters && len(b.equipment.Meters) > 0 {
		b.last = b.firstUsual()
		for _, s := range b.samples {
			s.offerUsual()
		}
	}
	for id, s := range b.samples {
		l := b.truck(id)
		switch {
		case id == "":
		case l == nil:
			delete(b.samples, id)
		case !reflect.DeepEqual(l, s.load):
			s.rebase(l)
			if b.session.Drafts().IsKept(s.draftAt()) {
				b.session.Drafts().Jot(s.draftAt(), s.texts())
			}
		}
	}
	if b.samples[b.hand.id()] != b.hand {
		b.hand = b.sample("")
	}
	b.hand.work()
}

func (b *Bench) truck(id string) *load.Load {
	l, _ := session.Find(b.trucks, func(l *load.Load) bool { return l.ID == id && id != "" })
	return l
}

// sample is the sample of a load, with what the book has of its tests.
func (b *Bench) sample(id string) *SampleTest {
	s := b.samples[id]
	if s == nil {
		s = newSampleTest(b, b.truck(id))
		b.samples[id] = s
	}
	return s
}

// Take takes the sample of a load in hand; without a load the bench only
// converts.
func (b *Bench) Take(id string) {
	if id != "" && b.truck(id) == nil {
		return
	}
	b.hand, b.back = b.sample(id), false
	b.jotHand()
	if b.hand.isUntouched() {
		b.hand.offerUsual()
	}
	b.hand.work()
	b.session.Window.Redraw()
}

// TakeFromYard takes the load of a yard form in hand. Once its test is written
// down, the yard comes back.
func (b *Bench) TakeFromYard(form *yard.LoadForm) {
	if err := form.Commit(); err != nil {
		b.session.Fail(err)
		return
	}
	b.read()
	if form.ID() != "" {
		b.Take(form.ID())
		b.back = true
		b.jotHand()
		return
	}
	b.takeWaiting()
}

// takeWaiting takes the sample that has waited longest, unless one is in hand.
func (b *Bench) takeWaiting() {
	if b.hand.load != nil {
		return
	}
	if i := slices.IndexFunc(b.trucks, waitsForTest); i >= 0 && b.hand.isUntouched() {
		b.Take(b.trucks[i].ID)
	}
}

// Begin takes the longest waiting sample when nothing else is under way.
func (b *Bench) Begin() { b.takeWaiting() }

func waitsForTest(l *load.Load) bool {
	return l.Sample.Moisture == nil && l.Details.Direction != load.Outbound
}

// Waiting says how many samples wait.
func (b *Bench) Waiting() string {
	n := 0
	for _, l := range b.trucks {
		if waitsForTest(l) {
			n++
		}
	}
	switch n {
	case 0:
		return session.Say("No sample waits for its test.")
	case 1:
		return session.Say("One sample waits for its test.")
	}
	return session.Say("%d samples wait for their tests.", n)
}

// withoutLoad is the option for grain that belongs to no load.
const withoutLoad = "none"

// loadOptions are the loads on the yard, those that wait for their test first.
func (b *Bench) loadOptions() []model.Option {
	var waiting, tested []model.Option
	for _, l := range b.trucks {
		o := model.Option{Code: l.ID, Name: session.Say("truck %s", session.TruckText(l.Details.Truck)), Detail: whose(l)}
		if m := l.Sample.Moisture; m != nil {
			o.Detail = session.Join(", ", o.Detail, session.Say("tested: %s", m.Percent))
			tested = append(tested, o)
			continue
		}
		waiting = append(waiting, o)
	}
	return append(append(waiting, tested...), model.Option{Code: withoutLoad, Name: session.Say("no load, only convert"), ByName: true})
}

// whose says whose grain a load brings, and which.
func whose(l *load.Load) string {
	return session.Join(", ", session.GrainName(l.Details.Commodity), l.Details.Grower.Name)
}

// Hint says what carries the work on here.
func (b *Bench) Hint() string {
	if len(b.equipment.Meters) == 0 {
		return session.Say("No meter is set up: a manager adds one under Meters, Ctrl+Shift+M. Until then type the moisture, with a reason.")
	}
	return session.Join(" ", b.Waiting(), session.Say("Enter in the last figure makes the test; F12 writes the sample to its load."))
}

// First is the field to begin with: the load or the grain while that is not
// known, else the first figure of the next test that is empty, and after the
// last test the first of the other results that is empty or cannot stand.
func (b *Bench) First() string {
	s := b.hand
	switch {
	case s.load == nil && s.crop() == "":
		return "load"
	case s.method().UsesMeter() && s.typed["meter"] == "":
		return "meter"
	}
	if s.isTested() && s.found.testing.Result.More == 0 {
		for _, f := range s.otherFields() {
			if f.Value == "" || f.State == model.Stop {
				return f.ID
			}
		}
		return "write"
	}
	for _, f := range s.testFields() {
		if s.typed[f.ID] == "" && f.Kind != model.TickField {
			return f.ID
		}
	}
	return lastField(s.method())
}

// CanAskFactor reports whether the load has results that are not asked for.
func (b *Bench) CanAskFactor() bool { return b.hand.form != nil && b.hand.form.CanAskFactor() }

// AskFactor asks which other result there is, and puts a field for it on.
func (b *Bench) AskFactor(then func(field string)) {
	b.hand.form.AskFactor(func(field string) {
		b.jot()
		then(field)
	})
}
