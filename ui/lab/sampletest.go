package lab

import (
	"context"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/yard"
)

// SampleTest is one sample under test: the tests made so far with their result, and what is typed
// for the next one.
type SampleTest struct {
	session *session.Session
	tools   *testTools
	load    *load.Load     // nil for grain without a load
	form    *yard.LoadForm // the load's other results; nil without a load
	typed   texts
	tests   replicates
	found   outcome
	next    nextTest
}

// newSampleTest starts from the book: tests recorded for the load can be added to.
func newSampleTest(tools *testTools, l *load.Load) *SampleTest {
	s := &SampleTest{session: tools.session, tools: tools, typed: texts{}}
	s.offerUsual()
	if l != nil {
		s.rebase(l)
	} else {
		s.typed["grain"] = s.tools.onlyGrain()
		s.workTests()
	}
	return s
}

// offerUsual fills in the method and meter used last.
func (s *SampleTest) offerUsual() {
	s.typed["method"], s.typed["meter"] = string(s.tools.method), s.tools.meterID
}

// rebase updates the load from the book. Tests that are not recorded stay, unless the book has
// others.
func (s *SampleTest) rebase(l *load.Load) {
	before := testsOf(s.load)
	s.load = l
	if s.form == nil {
		s.form = yard.NewLoadForm(s.session, l)
	} else {
		s.form.Rebase(l)
	}
	if inBook := testsOf(l); inBook != nil && (before == nil || !before.equal(*inBook)) {
		s.tests = *inBook
	}
	s.workTests()
}

func (s *SampleTest) id() string {
	if s.load == nil {
		return ""
	}
	return s.load.ID
}

// results are the load's results beside the moisture; only a sample of a load has
// them.
func (s *SampleTest) results() yard.Results { return yard.ResultsOf(s.form) }

// isResult reports whether a field is one of them.
func (s *SampleTest) isResult(id string) bool { return s.form != nil && s.results().Has(id) }

// kept is the sample itself: its number, and where it was probed and is kept.
func (s *SampleTest) kept() keptPart { return keptPart{s.load.Sample, s.typed} }

// isUntouched reports whether nothing has been tested or typed that would be
// missed.
func (s *SampleTest) isUntouched() bool {
	return len(s.tests.Readings) == 0 && s.typed[lastField(s.typed.method())] == ""
}

// crop returns the commodity tested; empty while it is not known.
func (s *SampleTest) crop() string {
	if s.load != nil {
		return s.load.Details.Commodity
	}
	if _, err := grain.ByID(s.typed["grain"]); err != nil {
		return ""
	}
	return s.typed["grain"]
}

// subject is the load that is tested, or a load of nothing but its grain.
func (s *SampleTest) subject() *load.Load {
	if s.load != nil {
		return s.load
	}
	return &load.Load{Details: load.Details{Direction: load.Inbound, Commodity: s.crop(), Day: s.session.Desk.Today()}}
}

// workTests calculates the result of the tests made so far.
func (s *SampleTest) workTests() { s.found = workOut(s.session, s.subject(), s.tests) }

// read parses what is typed for the next test.
func (s *SampleTest) read() {
	var results []load.Finding
	if s.form != nil {
		results = s.results().Findings()
	}
	s.next = readNext(s.tools, s.typed, s.crop(), s.tests.next(), results)
	if s.load != nil {
		s.next.readings["load"] = whose(s.session.Language, s.load)
	}
	switch {
	case s.crop() != "":
	case s.load != nil:
		s.next.addMessage("load", model.Stop, s.session.Say("Nobody has said what grain it is. Type the commodity on the load's form first."))
	default:
		s.next.addMessage("grain", model.Missing, s.session.Say("Which grain is it?"))
	}
}

// fields returns the fields of a sample: the next test at the left, the load's other results and
// the sample's own data at the right.
func (s *SampleTest) fields(loads func() []model.Option) []model.Field {
	out := []model.Field{{ID: "load", Label: s.session.Say("Load"), Kind: model.FindField, Chars: 24, Options: loads()}}
	if s.load == nil {
		out = append(out, model.Field{ID: "grain", Label: s.session.Say("Commodity"), Kind: model.FindField, Chars: 24, Options: s.session.Known().CommodityOptions})
	}
	out = append(append(out, s.next.methodFields()...), s.next.figureFields()...)
	for i := range out {
		s.fill(&out[i])
	}
	return append(out, s.atRight()...)
}

// atRight are the load's other results, then the fields of the sample itself.
func (s *SampleTest) atRight() []model.Field {
	if s.load == nil {
		return nil
	}
	kept := s.kept().fields(s.session.Language)
	for i := range kept {
		s.fill(&kept[i])
	}
	return append(s.results().Fields(), kept...)
}

// fill sets the text and message of a field.
func (s *SampleTest) fill(f *model.Field) {
	f.Value = s.text(f.ID)
	if reading := s.next.readings[f.ID]; reading != "" {
		f.Reading = reading
	}
	if r := s.next.messages[f.ID]; r.Text != "" {
		f.State, f.Note = r.State, r.Text
	}
}

// text is the text in a field.
func (s *SampleTest) text(id string) string {
	if text, typed := s.typed[id]; typed {
		return text
	}
	return s.untyped(id)
}

// untyped is the text of a field where nothing is typed.
func (s *SampleTest) untyped(id string) string {
	switch {
	case id == "load" && s.load == nil:
		return withoutLoad
	case id == "load":
		return s.load.ID
	case s.load == nil:
		return ""
	}
	return s.kept().inBook(id)
}

// first is the field to begin with: the load or the grain while that is not known,
// else the first empty figure of the next test, and after the last test the first
// of the other results that is empty or cannot be used.
func (s *SampleTest) first() string {
	method := s.typed.method()
	switch {
	case s.load == nil && s.crop() == "":
		return "load"
	case method.UsesMeter() && s.typed["meter"] == "":
		return "meter"
	}
	if s.found.isSettled() {
		for _, f := range s.atRight() {
			if f.Value == "" || f.State == model.Stop {
				return f.ID
			}
		}
		return "write"
	}
	for _, f := range s.next.figureFields() {
		if s.typed[f.ID] == "" && f.Kind != model.TickField {
			return f.ID
		}
	}
	return lastField(method)
}

// alone checks that one test on its own gives a moisture, or returns why not.
func (s *SampleTest) alone(r moisture.Reading) error {
	tests := moisture.Tests{Readings: []moisture.Reading{r}}
	_, err := scalehouse.TestSample(context.Background(), s.session.Desk, s.subject(), tests)
	return err
}

// write stores the sample in the book: where it was probed and is kept, then the tests with the
// other results.
func (s *SampleTest) write() error {
	if k := s.kept(); k.isTyped() {
		if _, err := scalehouse.Probe(context.Background(), s.session.Desk, s.load.ID, k.probed()); err != nil {
			return err
		}
		s.typed.forget(keptFields...)
		if err := s.reload(); err != nil {
			return err
		}
	}
	if err := s.record(s.found, s.session.Desk.Who().Name); err != nil {
		return err
	}
	s.results().Written()
	return s.reload()
}

// record writes tests, if there are any, and the other results, as made by a
// tester.
func (s *SampleTest) record(found outcome, tester string) error {
	d, ctx := s.session.Desk, context.Background()
	sample := s.results().Sample()
	sample.Tester = tester
	if found.isTested() {
		return scalehouse.RecordTest(ctx, d, s.load.ID, sample, found.testing)
	}
	return scalehouse.RecordSample(ctx, d, s.load.ID, sample)
}

// reload reads the load from the book again.
func (s *SampleTest) reload() error {
	l, err := office.Load(context.Background(), s.session.Desk, s.load.ID)
	if err == nil {
		s.rebase(l)
		s.read()
	}
	return err
}

// written describes what is now in the book.
func (s *SampleTest) written() string {
	moisture := s.session.Say("no moisture")
	if m := s.load.Sample.Moisture; m != nil {
		moisture = m.Percent.String()
	}
	text := s.session.Say("the sample of load %s, truck %s, is written down: %s.", s.load.ID, session.TruckText(s.load.Details.Truck), moisture)
	if n := len(s.load.Sample.Stops); n > 0 {
		text += " " + s.session.Say("A flag stops the ticket: %s", s.session.Text(s.load.Sample.Stops[0].Sentence))
	}
	return text
}
