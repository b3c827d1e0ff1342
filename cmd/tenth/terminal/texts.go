package terminal

import (
	"maps"
	"slices"
	"strings"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// Texts are texts of a load by the ids of their fields.
type Texts map[string]string

// Put sets the text of a field unless it is empty.
func (t Texts) Put(field, text string) {
	if text != "" {
		t[field] = text
	}
}

// PutResults put results typed as FACTOR=RESULT into their fields.
func (t Texts) PutResults(all []string) error {
	for _, text := range all {
		factor, result, err := SplitResult(text)
		if err != nil {
			return err
		}
		if _, twice := t[factor]; twice {
			return Refusal("Give it once", "%s is given twice", factor)
		}
		t[factor] = result
	}
	return nil
}

// SplitResult parts "test-weight=54.2".
func SplitResult(text string) (factor, result string, err error) {
	factor, result, ok := strings.Cut(text, "=")
	if !ok || strings.TrimSpace(factor) == "moisture" {
		return "", "", Refusal("Write it like test-weight=54.2 or musty=yes", "%q is no factor and its result", text)
	}
	return strings.TrimSpace(factor), result, nil
}

// into types them into a form; the error is a result given twice, under two names.
func (t Texts) into(f *entry.Form) error {
	called := map[string]string{}
	for _, id := range slices.Sorted(maps.Keys(t)) {
		field := entry.FieldCalled(f, id)
		if other, twice := called[field]; twice {
			return Refusal("Give it once", "%s and %s are one result", other, id)
		}
		called[field] = id
		f.Set(field, t[id])
	}
	return nil
}

// Entered sets texts of a form; the error is the first invalid text, or a weight typed without a
// reason.
func (p *Session) Entered(f *entry.Form, all ...Texts) (*entry.Form, error) {
	for _, t := range all {
		if err := t.into(f); err != nil {
			return f, err
		}
	}
	if _, err := f.FirstRefused(); err != nil {
		return f, err
	}
	for _, w := range f.Facts().Weighed {
		if w.Source != load.ByHand {
			continue
		}
		if err := guard.Typed(w.Reason, p.Profile()); err != nil {
			return f, complaint(message.Of(err), message.Words("Give it by --manual"))
		}
	}
	return f, nil
}

// TrialFacts reads a load that is in no book. The error is the first invalid text, with its field.
func TrialFacts(e *rates.Edition, load Texts, needed ...string) (settle.Facts, error) {
	facts, faults := entry.Trial{Edition: e, Needed: needed, Source: message.New("as given")}.Read(load)
	if len(faults) > 0 {
		return facts, faults[0]
	}
	return facts, nil
}
