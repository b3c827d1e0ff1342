package lab

import (
	"context"
	"errors"
	"reflect"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/ui/lab/shelf"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/yard"
)

// Bench is the presenter of the sample bench: the samples that wait, and the current one. The tests
// of a sample are kept until they are written to its load, even while another is current.
type Bench struct {
	session *session.Session
	tools   *testTools
	loads   queue
	samples map[string]*SampleTest // by load; "" is grain without a load
	current *SampleTest
	drafts  draftKeeper
	back    bool // the current sample was opened from the yard, which waits for it
}

// NewBench restores the bench from before the program stopped, with the tests that were not
// recorded. Without any, no load is chosen.
func NewBench(f *session.Session) *Bench {
	b := &Bench{session: f, tools: &testTools{session: f}, samples: map[string]*SampleTest{}, drafts: draftKeeper{f}}
	b.readBook()
	b.current = b.sample("")
	b.restoreSamples()
	b.current.read()
	return b
}

// readBook reads the waiting loads and the instruments from the book.
func (b *Bench) readBook() {
	trucks, err := office.Yard(context.Background(), b.session.Desk)
	if err != nil {
		b.session.Fail(err)
	}
	b.loads = trucks
	if b.tools.read() {
		for _, s := range b.samples {
			s.offerUsual()
		}
	}
}

// Refresh reloads the book. Samples whose load has left the yard are dropped; one whose load has
// changed is recalculated.
func (b *Bench) Refresh() {
	b.readBook()
	for id, s := range b.samples {
		l := b.loads.find(id)
		switch {
		case id == "":
		case l == nil:
			delete(b.samples, id)
		case !reflect.DeepEqual(l, s.load):
			s.rebase(l)
			b.drafts.update(s)
		}
	}
	if b.samples[b.current.id()] != b.current {
		b.current = b.sample("")
	}
	b.current.read()
}

// sample returns the sample of a load, with its tests in the book.
func (b *Bench) sample(id string) *SampleTest {
	s := b.samples[id]
	if s == nil {
		s = newSampleTest(b.tools, b.loads.find(id))
		b.samples[id] = s
	}
	return s
}

// Take makes the sample of a load current; without a load the bench only converts.
func (b *Bench) Take(id string) {
	if id != "" && b.loads.find(id) == nil {
		return
	}
	b.current, b.back = b.sample(id), false
	b.drafts.jotCurrent(b.current.id(), b.back)
	if b.current.isUntouched() {
		b.current.offerUsual()
	}
	b.current.read()
	b.session.Window.Redraw()
}

// TakeFromYard makes the sample of a yard form's load current. Once its test is recorded, the yard
// comes back.
func (b *Bench) TakeFromYard(form *yard.LoadForm) {
	if err := form.Commit(); err != nil {
		b.session.Fail(err)
		return
	}
	b.readBook()
	if form.ID() == "" {
		b.Begin()
		return
	}
	b.Take(form.ID())
	b.back = true
	b.drafts.jotCurrent(b.current.id(), b.back)
}

// Begin takes the sample that has waited longest, unless another is under way.
func (b *Bench) Begin() {
	if l := b.loads.first(); l != nil && b.current.load == nil && b.current.isUntouched() {
		b.Take(l.ID)
	}
}

// Hint returns the main keys of the screen.
func (b *Bench) Hint() string {
	if len(b.tools.equipment.Meters) == 0 {
		return b.session.Say("No meter is set up: a manager adds one under Meters, Ctrl+Shift+M. Until then type the moisture, with a reason.")
	}
	return session.Join(" ", b.loads.waiting(b.session.Language), b.session.Say("Enter in the last figure makes the test; F12 writes the sample to its load."))
}

// First is the field to begin with.
func (b *Bench) First() string { return b.current.first() }

// Type takes the text that is now in a field.
func (b *Bench) Type(id, text string) {
	s := b.current
	switch {
	case id == "load":
		b.follow(text)
		return
	case s.isResult(id):
		s.form.Type(id, text)
	default:
		s.typed[id] = text
	}
	switch id {
	case "method":
		s.typed["meter"] = b.tools.use(meter.Method(text))
	case "meter":
		b.tools.meterID = text
	case "grain":
		s.workTests()
	}
	s.read()
	b.drafts.saveDraft(b.current)
}

// follow reacts to typing in the field of loads.
func (b *Bench) follow(id string) {
	switch id {
	case "", b.current.id(): // typed over, but not yet another
	case withoutLoad:
		b.Take("")
	default:
		b.Take(id)
	}
}

// Restore discards what was typed in a field, and reports whether that changed anything.
func (b *Bench) Restore(id string) bool {
	s := b.current
	defer b.drafts.saveDraft(b.current)
	if s.isResult(id) {
		return s.form.Restore(id)
	}
	if s.typed[id] == "" || id == "load" || id == "method" || id == "meter" || id == "grain" {
		return false
	}
	s.typed.forget(id)
	s.read()
	return true
}

// Enter is Enter in a field. In the last figure of a test it makes the test; in a figure that
// cannot be used the focus stays. It returns the field to go to, empty for the one that follows.
func (b *Bench) Enter(id string) (next string) {
	s := b.current
	if wrong := s.next.messages[id]; wrong.State == model.Stop && s.typed[id] != "" && id != "chart" && id != "meter" {
		b.session.Notify(model.Stop, wrong.Text)
		return id
	}
	method := s.typed.method()
	if id != lastField(method) || strings.TrimSpace(s.typed[id]) == "" {
		return ""
	}
	return b.addFrom(id)
}

// addFrom makes the test that a field ends, after the meter's start check.
func (b *Bench) addFrom(id string) (next string) {
	if b.asksStart(func() { b.addFrom(id) }) {
		return id
	}
	if err := b.Add(); err != nil {
		b.session.Fail(err)
		return id
	}
	if b.current.found.isSettled() {
		return ""
	}
	return firstFigure(b.current.typed.method()) // the next figure on the meter is another test
}

// asksStart asks for the start check of the meter in use, where it had none today, and reports
// whether it asked. then is called after it.
func (b *Bench) asksStart(then func()) bool {
	s := starter{b.session, b.tools.setup, b.tools.degrees()}
	used := b.current.next.reading.Meter
	if !b.current.typed.method().UsesMeter() || !s.isDue(used) {
		return false
	}
	s.ask(used, then)
	return true
}

// Add adds the test that is typed, whatever the others say; their combined result goes on the
// status line.
func (b *Bench) Add() error {
	s := b.current
	if s.crop() == "" {
		return message.Incomplete.Errorf("say first what grain it is")
	}
	if err := s.alone(s.next.reading); err != nil {
		return err
	}
	s.tests = s.tests.with(s.next.reading)
	s.typed.forget(testFigures...)
	b.showTests()
	b.session.Notify(s.found.status())
	b.session.Window.Redraw()
	return nil
}

// showTests works the tests out after one was made or decided about.
func (b *Bench) showTests() {
	b.current.workTests()
	b.current.read()
	b.drafts.sync(b.current)
}

// changedTests does the same, and shows the decision.
func (b *Bench) changedTests(said string) {
	b.showTests()
	b.session.Notify(model.OK, said)
	b.session.Window.Redraw()
}

// Write stores the sample with its load: the tests, the other results, and where the retained part
// is kept. A typed test is added first.
func (b *Bench) Write() error {
	s := b.current
	if s.load == nil {
		return message.Incomplete.Errorf("No load is chosen. Choose the one this sample is of in the first field")
	}
	if s.typed.isHalfTyped() {
		if b.asksStart(func() { b.writeOrFail() }) {
			return nil
		}
		if err := b.Add(); err != nil {
			return err
		}
	}
	if s.found.fault != nil {
		return s.found.fault
	}
	if wrong := s.results().Wrong(); wrong != "" {
		return errors.New(wrong)
	}
	if err := s.write(); err != nil {
		return err
	}
	b.drafts.forget(s)
	b.session.Notify(model.OK, s.written())
	b.leave()
	return nil
}

// writeOrFail writes the sample once the start check is made.
func (b *Bench) writeOrFail() {
	if err := b.Write(); err != nil {
		b.session.Fail(err)
	}
}

// leave moves to the next work: back to the yard if it sent the sample, else to the next waiting
// sample.
func (b *Bench) leave() {
	back := b.back
	b.back = false
	b.session.Changed()
	if back {
		b.session.Go("yard")
		return
	}
	b.readBook()
	if l := b.loads.first(); l != nil {
		b.Take(l.ID)
	}
}

// StartOver forgets the tests of grain that belongs to no load. Those of a load are
// left out by rule and name, never forgotten.
func (b *Bench) StartOver() error {
	if b.current.load != nil {
		return message.Refused.Errorf("The tests of a load are not forgotten. Leave one out by its rule")
	}
	grain := b.current.typed["grain"]
	delete(b.samples, "")
	b.current = b.sample("")
	b.current.typed["grain"] = grain
	b.showTests()
	b.session.Window.Redraw()
	return nil
}

// TurnDegrees switches between Fahrenheit and Celsius for what is typed from now on.
func (b *Bench) TurnDegrees() {
	b.tools.celsius = !b.tools.celsius
	b.current.read()
	b.drafts.saveDraft(b.current)
	b.session.Notify(model.OK, b.session.Say("Temperatures are typed in %s now.", b.tools.degrees()))
	b.session.Window.Redraw()
}

// CanAskFactor reports whether the load has factors that are not shown yet.
func (b *Bench) CanAskFactor() bool {
	return b.current.form != nil && b.current.results().CanAskMore()
}

// AskFactor asks for another factor, and adds its field.
func (b *Bench) AskFactor(then func(field string)) {
	b.current.results().AskMore(func(field string) {
		b.drafts.saveDraft(b.current)
		then(field)
	})
}

// CanSeeNone reports whether a load of known grain is tested.
func (b *Bench) CanSeeNone() bool { return b.current.form != nil && b.current.results().CanSeeNone() }

// SeeNone answers that whatever is not typed was looked for and not found, or takes it back.
func (b *Bench) SeeNone() {
	b.current.results().SeeNone()
	b.drafts.saveDraft(b.current)
}

// CanPrintLabel reports whether the current sample has a number in the book.
func (b *Bench) CanPrintLabel() bool {
	return b.current.load != nil && b.current.load.Sample.Number != ""
}

// PrintLabel prints the label for the container of the current sample.
func (b *Bench) PrintLabel() { shelf.PrintLabel(b.session, b.current.load) }
