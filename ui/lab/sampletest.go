package lab

import (
	"context"
	"slices"
	"tenthpoint/internal/entry"

	"tenthpoint/internal/dryness"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/yard"
)

// SampleTest is one sample under test: the tests made so far, what people
// decided about them, and what is typed for the next one.
type SampleTest struct {
	bench *Bench
	load  *load.Load     // nil for grain without a load
	form  *yard.LoadForm // the other results of the load; nil without one
	typed map[string]string
	tests moisture.Tests
	found findings
	next  next
}

// findings are what the tests made so far come to.
type findings struct {
	testing scalehouse.Testing
	fault   error      // why they come to nothing
	would   *load.Load // the load as it would stand
	advice  dryness.Advice
	judged  bool
	worth   *office.Worth
	ruler   moisture.Ruler
}

// next is the test being typed.
type next struct {
	reading  moisture.Reading
	readings map[string]string
	remarks  session.Remarks
	flags    []moisture.Flag // doubts that can be told before the test is made
}

// newSampleTest begins where the book stands: tests written down for the load
// can be added to.
func newSampleTest(b *Bench, l *load.Load) *SampleTest {
	s := &SampleTest{bench: b, typed: map[string]string{}}
	s.offerUsual()
	if l != nil {
		s.rebase(l)
	} else {
		s.typed["grain"] = b.firstGrain()
		s.workTests()
	}
	return s
}

// firstGrain is the only commodity taken here, if there is only one.
func (b *Bench) firstGrain() string {
	if grains := b.session.Desk.Profile().Grains; len(grains) == 1 {
		return grains[0].Commodity
	}
	return ""
}

// offerUsual fills in what the tester used last.
func (s *SampleTest) offerUsual() {
	s.typed["method"], s.typed["meter"] = s.bench.last.method, s.bench.last.meter
}

// rebase takes the load as the book now has it. Tests that are not written down
// stay, unless the book has others.
func (s *SampleTest) rebase(l *load.Load) {
	var before *moisture.Tests
	if s.load != nil {
		before = testsOf(s.load)
	}
	s.load = l
	if s.form == nil {
		s.form = yard.NewLoadForm(s.bench.session, l)
	} else {
		s.form.Rebase(l)
	}
	if inBook := testsOf(l); inBook != nil && (before == nil || !sameTests(*before, *inBook)) {
		s.tests = *inBook
	}
	s.workTests()
}

func testsOf(l *load.Load) *moisture.Tests {
	if m := l.Sample.Moisture; m != nil && m.Bench != nil {
		return &m.Bench.Tests
	}
	return nil
}

func sameTests(a, b moisture.Tests) bool {
	return len(a.Readings) == len(b.Readings) && slices.Equal(a.Exclusions, b.Exclusions) && slices.Equal(a.Overrides, b.Overrides)
}

func (s *SampleTest) id() string {
	if s.load == nil {
		return ""
	}
	return s.load.ID
}

// isUntouched reports whether nothing has been tested or typed that would be
// missed.
func (s *SampleTest) isUntouched() bool {
	return len(s.tests.Readings) == 0 && s.typed[lastField(s.method())] == ""
}

// crop is the commodity the tests are of.
func (s *SampleTest) crop() string {
	if s.load != nil {
		return s.load.Details.Commodity
	}
	if _, err := grain.ByID(s.typed["grain"]); err != nil {
		return ""
	}
	return s.typed["grain"]
}

func (s *SampleTest) method() meter.Method {
	m := meter.Method(s.typed["method"])
	if !slices.Contains(meter.Methods(), m) {
		return meter.Typed
	}
	return m
}

func (s *SampleTest) meter() (meter.Meter, bool) {
	return session.Find(s.bench.equipment.Meters, func(m meter.Meter) bool { return m.ID == s.typed["meter"] })
}

// subject is the load that is tested, or a load of nothing but its grain.
func (s *SampleTest) subject() *load.Load {
	if s.load != nil {
		return s.load
	}
	return &load.Load{Details: load.Details{Direction: load.Inbound, Commodity: s.crop(), Day: s.bench.session.Desk.Today()}}
}

// workTests works the tests made so far out: moisture, doubts, verdict, worth.
func (s *SampleTest) workTests() {
	s.found = findings{}
	d, ctx := s.bench.session.Desk, context.Background()
	f := &s.found
	f.would = entry.CopyOf(s.subject())
	if len(s.tests.Readings) > 0 {
		f.testing, f.fault = scalehouse.TestSample(ctx, d, s.subject(), s.tests)
		if f.fault == nil {
			f.would.Sample = f.testing.Sample(f.would.Sample)
			f.would.UseCharts(d.Charts())
		}
	}
	if f.fault == nil && f.would.Sample.Moisture != nil {
		s.judge()
	}
	f.ruler, _ = office.Ruler(ctx, d, f.would) // bare while the moisture does not tell
}

// judge asks whether the grain is dry enough and what a tenth of it is worth.
func (s *SampleTest) judge() {
	d, ctx := s.bench.session.Desk, context.Background()
	f := &s.found
	var err error
	if f.advice, f.judged, err = office.DryEnough(ctx, d, f.would); err != nil {
		s.bench.session.Fail(err)
	}
	if s.load == nil {
		return
	}
	if worth, err := office.WorthOf(ctx, d, f.would, office.Tenth); err == nil {
		f.worth = &worth // a load that is not whole has no worth yet
	}
}

// isTested reports whether the tests made so far come to a moisture.
func (s *SampleTest) isTested() bool { return len(s.tests.Readings) > 0 && s.found.fault == nil }

// seq is the number of the next test.
func (s *SampleTest) seq() int {
	n := 0
	for _, r := range s.tests.Readings {
		n = max(n, r.Seq)
	}
	return n + 1
}

// temperatureUnit is the scale of the thermometer at this bench.
func (b *Bench) temperatureUnit() quantity.Unit {
	if b.last.celsius {
		return quantity.Celsius
	}
	return quantity.Fahrenheit
}

// TurnDegrees changes between Fahrenheit and Celsius for what is typed from now
// on.
func (b *Bench) TurnDegrees() {
	b.last.celsius = !b.last.celsius
	b.hand.work()
	b.jot()
	b.session.Say(model.OK, session.Say("Temperatures are typed in %s now.", b.temperatureUnit()))
	b.session.Window.Redraw()
}
