package lab

import (
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/yard"
)

// The names of a sample's texts in its draft.
const (
	typedText   = "typed."  // what stands in a field of the next test or of the sample
	resultText  = "result." // what stands in a field of the other results
	testText    = "test."   // a test made, by its number
	dropText    = "drop."   // a test left out
	degreesText = "degrees" // the scale in which temperatures are typed
)

// benchFields are the fields of a sample that are typed at the bench itself.
var benchFields = []string{
	"grain", "method", "meter", "chart", "mass", "temperature", "room", "dryer",
	"dial", "percent", "wet", "tare", "dry", "reason", "number", "probes", "place",
}

func (s *SampleTest) draftAt() session.DraftAt {
	return session.DraftAt{Place: scalehouse.DraftOfTests, ID: s.id()}
}

// benchContext are the fields that say what the others mean.
var benchContext = []string{"grain", "method", "meter"}

// texts are the tests and texts of a sample that the book does not have. With
// them go grain, method, meter and thermometer, so that they are read as they
// were meant; by themselves those are nothing to be missed.
func (s *SampleTest) texts() map[string]string {
	out := map[string]string{}
	for _, id := range benchFields {
		if text, typed := s.typed[id]; typed && text != s.untyped(id) && !slices.Contains(benchContext, id) {
			out[typedText+id] = text
		}
	}
	if s.form != nil {
		maps.Copy(out, s.resultTexts())
	}
	if !s.areInBook() {
		maps.Copy(out, testTexts(s.tests))
	}
	if len(out) > 0 {
		for _, id := range benchContext {
			out[typedText+id] = s.typed[id]
		}
		out[degreesText] = s.bench.temperatureUnit().String()
	}
	return out
}

// resultTexts are the other results as typed.
func (s *SampleTest) resultTexts() map[string]string {
	out := map[string]string{}
	for id, text := range s.form.Typed {
		if l, known := s.form.Line(id); known && s.isOther(id) && text != l.Shown(s.load) {
			out[resultText+id] = text
		}
	}
	for id := range s.form.Extra {
		if !yard.HasFinding(s.load.Sample, id) {
			out[yard.FactorText+string(id)] = model.TickOn
		}
	}
	return out
}

// areInBook reports whether the tests are those the book has.
func (s *SampleTest) areInBook() bool {
	if s.load != nil {
		if inBook := testsOf(s.load); inBook != nil {
			return sameTests(*inBook, s.tests)
		}
	}
	return len(s.tests.Readings) == 0
}

// testTexts are tests as the book would keep them, each with its own day, person
// and meter.
func testTexts(tests moisture.Tests) map[string]string {
	out := map[string]string{}
	for _, r := range tests.Readings {
		out[testName(r)] = asText(r)
	}
	for _, d := range tests.Exclusions {
		out[fmt.Sprintf("%s%04d", dropText, d.Test)] = asText(d)
	}
	return out
}

// testName is the name of a test; the names of a sample's tests sort in their
// order.
func testName(r moisture.Reading) string { return fmt.Sprintf("%s%04d", testText, r.Seq) }

// asText is something of the bench as its facts write it: figures as text.
func asText(v any) string {
	body, err := json.Marshal(v)
	if err != nil { // nothing of the bench is beyond writing down
		panic(err)
	}
	return string(body)
}

// takeBack puts back what was made and typed before the program stopped. Tests
// that cannot be, or that the book has gone on without, are dropped, and it is
// said.
func (s *SampleTest) takeBack(texts map[string]string) {
	for id, text := range session.CutAll(texts, typedText) {
		if slices.Contains(benchFields, id) {
			s.typed[id] = text
		}
	}
	s.takeDegrees(texts[degreesText])
	if s.form != nil {
		s.takeResults(texts)
	}
	switch tests, err := s.testsFrom(texts); {
	case err == nil && len(tests.Readings) > 0:
		s.tests = tests
	case err != nil:
		s.bench.session.Drafts().IsLost(session.Say("Tests of %s made before the stop were dropped: %s Test the sample again.", s.called(), session.Sentence(err)))
	}
	s.workTests()
	s.work()
	if len(s.texts()) > 0 {
		s.bench.session.Drafts().StandsAgain(session.Say("%s at the bench", s.called()))
	}
}

// called is what the sample's load is called.
func (s *SampleTest) called() string {
	if s.form != nil {
		return s.form.Called()
	}
	return session.Say("grain without a load")
}

// takeDegrees reads temperatures in the scale they were typed in: where the
// bench has another by now, its letter is put to them.
func (s *SampleTest) takeDegrees(scale string) {
	letter := map[string]string{quantity.Fahrenheit.String(): "F", quantity.Celsius.String(): "C"}[scale]
	if letter == "" || scale == s.bench.temperatureUnit().String() {
		return
	}
	for _, id := range []string{"temperature", "room"} {
		if text := strings.TrimSpace(s.typed[id]); text != "" && !strings.ContainsAny(text, "FCfc") {
			s.typed[id] = text + " " + letter
		}
	}
}

func (s *SampleTest) takeResults(texts map[string]string) {
	for id := range session.CutAll(texts, yard.FactorText) {
		s.form.Extra[grain.FactorID(id)] = true
	}
	s.form.Work()
	for id, text := range session.CutAll(texts, resultText) {
		if s.isOther(id) {
			s.form.Put(id, text)
		}
	}
	s.form.Work()
}

// testsFrom reads the tests of a draft; no tests are none. What a manager let
// through is in the book and only there.
func (s *SampleTest) testsFrom(texts map[string]string) (moisture.Tests, error) {
	var tests moisture.Tests
	var wrong []error
	for _, name := range slices.Sorted(maps.Keys(texts)) {
		switch text := texts[name]; {
		case strings.HasPrefix(name, testText):
			var r moisture.Reading
			wrong = append(wrong, json.Unmarshal([]byte(text), &r), s.isSound(r, name))
			tests.Readings = append(tests.Readings, r)
		case strings.HasPrefix(name, dropText):
			var d moisture.Exclusion
			wrong = append(wrong, json.Unmarshal([]byte(text), &d))
			tests.Exclusions = append(tests.Exclusions, d)
		}
	}
	if s.load != nil && len(tests.Readings) > 0 {
		if inBook := testsOf(s.load); inBook != nil {
			tests.Overrides = inBook.Overrides
			wrong = append(wrong, goOn(*inBook, tests))
		}
	}
	return tests, errors.Join(wrong...)
}

// goOn says why tests do not go on from those the book has.
func goOn(inBook, tests moisture.Tests) error {
	for i, r := range inBook.Readings {
		if i >= len(tests.Readings) || asText(r) != asText(tests.Readings[i]) {
			return errors.New(session.Say("the book has other tests by now"))
		}
	}
	return nil
}

// isSound says why a test cannot have been made here: each that was came to a
// moisture by itself.
func (s *SampleTest) isSound(r moisture.Reading, name string) error {
	if name != testName(r) {
		return errors.New(session.Say("test %d stands under another number", r.Seq))
	}
	_, err := s.workAlone(r)
	return err
}

// jot keeps the sample in hand as it stands, at every keystroke.
func (b *Bench) jot() { b.session.Drafts().Jot(b.hand.draftAt(), b.hand.texts()) }

// keep keeps the sample in hand as it stands, on the disk.
func (b *Bench) keep() { b.session.Drafts().Keep(b.hand.draftAt(), b.hand.texts()) }

// isWritten forgets what was typed of the sample in hand: its load has it.
func (b *Bench) isWritten() { b.session.Drafts().Keep(b.hand.draftAt(), nil) }

// formsBack makes the samples of which something was tested or typed before the
// program stopped, and takes up the one that was in hand.
func (b *Bench) formsBack() {
	for _, id := range b.session.Drafts().TypedBeforeAt(scalehouse.DraftOfTests) {
		if id == "" || b.truck(id) != nil {
			s := b.sample(id)
			s.takeBack(b.session.Drafts().TypedBefore(s.draftAt()))
		}
	}
	texts := b.session.Drafts().TypedBefore(session.DraftAt{Place: session.InHand, ID: "bench"})
	if id := texts[yard.HandText]; b.truck(id) != nil {
		b.hand, b.back = b.sample(id), texts[backText] != ""
		b.last.method, b.last.meter = string(b.hand.method()), b.hand.typed["meter"]
	}
}

// backText tells that the yard waits for the sample in hand.
const backText = "back"

// jotHand keeps which sample is in hand.
func (b *Bench) jotHand() {
	texts := map[string]string{}
	if id := b.hand.id(); id != "" {
		texts[yard.HandText] = id
		if b.back {
			texts[backText] = model.TickOn
		}
	}
	b.session.Drafts().Jot(session.DraftAt{Place: session.InHand, ID: "bench"}, texts)
}
