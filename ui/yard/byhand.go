package yard

import (
	"maps"
	"slices"
	"tenthpoint/internal/entry"

	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// What the desk itself gives as a reason or a source stands in the book in
// English, as all that is no person's own words, and is said where it shows.
const (
	readFromIndicator = "read from the indicator"
	typedAtDesk       = "typed at the desk"
)

// reasonFor is why a weight was typed. Where the scale cannot be read the
// person reads it: that is the reason. Where it can, each weight typed all the
// same needs one of its own.
func (f *LoadForm) reasonFor(field string) string {
	if f.session.Indicator == nil {
		return readFromIndicator
	}
	return f.reasons[field]
}

// holdBack takes the weights off facts that were typed without a reason, and
// gives the fields that can be written.
func (f *LoadForm) holdBack(facts *entry.Facts, good []string) (kept, held []string) {
	facts.Weighed = slices.DeleteFunc(facts.Weighed, func(w load.Weighing) bool {
		if w.Source == load.ByHand && w.Reason == "" {
			held = append(held, weightID(w.Which, w.Draft))
			return true
		}
		return false
	})
	kept = slices.DeleteFunc(slices.Clone(good), func(id string) bool { return slices.Contains(held, id) })
	return kept, held
}

// askReason asks why weights were typed by hand; with the answer they are
// written down, without it they stay in their fields.
func (f *LoadForm) askReason(held []string) {
	f.session.Put(model.Ask{
		Draft: "by hand", Of: f.id,
		Title:  session.Say("Why is the weight typed by hand?"),
		Text:   session.Say("The scale can be read. A typed weight is marked MANUAL WT on the slip, with your reason."),
		State:  model.Warn,
		Fields: []model.AskField{{ID: "reason", Label: session.Say("Reason"), Chars: 36, Required: true}},
		Yes:    session.Say("Write down"),
		Then: func(values map[string]string) {
			reasons := maps.Clone(f.reasons)
			for _, field := range held {
				reasons[field] = values["reason"]
			}
			f.reasons = reasons
			f.Work()
			if err := f.Commit(); err != nil {
				f.session.Fail(err)
			}
		},
	})
}
