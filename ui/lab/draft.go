package lab

import (
	"maps"
	"slices"

	"tenthpoint/internal/moisture"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/yard"
)

// The names of a sample's texts in its draft, beside those of its tests. They are
// stored in books and never change.
const (
	typedText   = "typed."  // the text of a field of the next test or of the sample
	resultText  = "result." // the text of a field of the other results
	degreesText = "degrees" // the unit in which temperatures are typed
	backText    = "back"    // the yard waits for the current sample
)

// prefixed are texts with a prefix before each name.
func prefixed(prefix string, texts map[string]string) map[string]string {
	out := map[string]string{}
	for name, text := range texts {
		out[prefix+name] = text
	}
	return out
}

func (s *SampleTest) draftAt() session.DraftAt {
	return session.DraftAt{Place: scalehouse.DraftOfTests, ID: s.id()}
}

// draft returns the tests and texts of a sample that are not in the book. Grain, method, meter and
// thermometer are included, so that the rest is read the same way; alone they are no draft.
func (s *SampleTest) draft() map[string]string {
	out := map[string]string{}
	for _, id := range benchFields {
		if text, typed := s.typed[id]; typed && text != s.untyped(id) && !slices.Contains(benchContext, id) {
			out[typedText+id] = text
		}
	}
	if s.form != nil {
		maps.Copy(out, prefixed(resultText, s.results().Typed()))
		maps.Copy(out, s.results().Asked())
	}
	if !s.tests.areIn(s.load) {
		maps.Copy(out, s.tests.draft())
	}
	if len(out) > 0 {
		for _, id := range benchContext {
			out[typedText+id] = s.typed[id]
		}
		out[degreesText] = s.tools.degrees().String()
	}
	return out
}

// restoreDraft restores the tests and texts from before the program stopped. Tests that cannot have
// been made here, or that the book has superseded, are dropped, with a message.
func (s *SampleTest) restoreDraft(texts map[string]string) {
	for id, text := range session.CutAll(texts, typedText) {
		if slices.Contains(benchFields, id) {
			s.typed[id] = text
		}
	}
	s.typed.markDegrees(degreesNamed(texts[degreesText]), s.tools.degrees())
	if s.form != nil {
		s.results().Restore(texts, session.CutAll(texts, resultText))
	}
	switch tests, err := s.testsIn(texts); {
	case err != nil:
		s.session.Drafts().IsLost(s.session.Say("Tests of %s made before the stop were dropped: %s Test the sample again.", s.called(), s.session.Sentence(err)))
	case len(tests.Readings) > 0:
		s.tests = tests
	}
	s.workTests()
	s.read()
	if len(s.draft()) > 0 {
		s.session.Drafts().StandsAgain(s.session.Say("%s at the bench", s.called()))
	}
}

// testsIn reads the tests of a draft, with a manager's overrides from the book.
func (s *SampleTest) testsIn(texts map[string]string) (replicates, error) {
	tests, err := replicatesIn(texts, func(r moisture.Reading) error { return s.alone(r) })
	if inBook := testsOf(s.load); err == nil && inBook != nil && len(tests.Readings) > 0 {
		tests.Overrides = inBook.Overrides
		err = tests.continues(*inBook)
	}
	return tests, err
}

// called names the sample's load for a sentence.
func (s *SampleTest) called() string {
	if s.form != nil {
		return s.form.Now.Called()
	}
	return s.session.Say("grain without a load")
}

// degreesNamed is the unit of temperature with a name; the plain unit where there
// is none.
func degreesNamed(name string) quantity.Unit {
	for _, u := range []quantity.Unit{quantity.Fahrenheit, quantity.Celsius} {
		if u.String() == name {
			return u
		}
	}
	return quantity.Plain
}

// draftKeeper saves the tests and texts of the bench, so that they survive a restart.
type draftKeeper struct{ session *session.Session }

// saveDraft keeps a sample at every keystroke.
func (k draftKeeper) saveDraft(s *SampleTest) { k.session.Drafts().Save(s.draftAt(), s.draft()) }

// update keeps a sample again if it has a draft.
func (k draftKeeper) update(s *SampleTest) {
	if k.session.Drafts().IsKept(s.draftAt()) {
		k.saveDraft(s)
	}
}

// sync keeps a sample on the disk.
func (k draftKeeper) sync(s *SampleTest) { k.session.Drafts().SaveSync(s.draftAt(), s.draft()) }

// forget deletes the draft of a sample: its load has it.
func (k draftKeeper) forget(s *SampleTest) { k.session.Drafts().SaveSync(s.draftAt(), nil) }

// jotCurrent keeps which sample is current, and whether the yard waits for it.
func (k draftKeeper) jotCurrent(id string, back bool) {
	texts := map[string]string{}
	if id != "" {
		texts[yard.CurrentText] = id
		if back {
			texts[backText] = model.TickOn
		}
	}
	k.session.Drafts().Save(benchDraft, texts)
}

// benchDraft is the place of the id of the current sample.
var benchDraft = session.DraftAt{Place: session.Current, ID: "bench"}

// restoreSamples restores the samples with tests or texts from before the program stopped, and the
// current one.
func (b *Bench) restoreSamples() {
	for _, id := range b.session.Drafts().TypedBeforeAt(scalehouse.DraftOfTests) {
		if id == "" || b.loads.find(id) != nil {
			s := b.sample(id)
			s.restoreDraft(b.session.Drafts().TypedBefore(s.draftAt()))
		}
	}
	texts := b.session.Drafts().TypedBefore(benchDraft)
	if id := texts[yard.CurrentText]; b.loads.find(id) != nil {
		b.current, b.back = b.sample(id), texts[backText] != ""
		b.tools.method, b.tools.meterID = b.current.typed.method(), b.current.typed["meter"]
	}
}
