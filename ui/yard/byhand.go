package yard

import (
	"slices"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Reasons and sources that the desk itself gives are in the book in English, and
// are translated where they are shown. People's own words never are.
const (
	readFromIndicator = "read from the indicator"
	typedAtDesk       = "typed at the desk"
)

// manualWeights are weights typed by hand on a form, each with its reason.
type manualWeights struct{ form *LoadForm }

// reason is why a weight was typed. Where the program cannot read the scale, a
// person reads it: that is the reason. Where it can, each weight that is typed all
// the same needs a reason of its own.
func (m manualWeights) reason(field string) string {
	if m.form.session.Indicator == nil {
		return readFromIndicator
	}
	return m.form.typed.reasons[field]
}

// holdBack removes from facts the weights that were typed without a reason, and
// returns the fields that can be written and those of the weights.
func holdBack(facts *entry.Facts, good []string) (kept, unexplained []string) {
	facts.Weighed = slices.DeleteFunc(facts.Weighed, func(w load.Weighing) bool {
		if w.Source == load.ByHand && w.Reason == "" {
			unexplained = append(unexplained, entry.WeightID(w.Which, w.Draft))
			return true
		}
		return false
	})
	kept = slices.DeleteFunc(slices.Clone(good), func(id string) bool { return slices.Contains(unexplained, id) })
	return kept, unexplained
}

// askWhy asks why the weights in some fields were typed by hand. With the answer
// they are written down; without it they stay in their fields.
func (m manualWeights) askWhy(fields []string) {
	f := m.form
	f.session.Put(model.Ask{
		Draft: "by hand", Of: f.id,
		Title:  session.Say("Why is the weight typed by hand?"),
		Text:   session.Say("The scale can be read. A typed weight is marked MANUAL WT on the slip, with your reason."),
		State:  model.Warn,
		Fields: []model.AskField{{ID: "reason", Label: session.Say("Reason"), Chars: 36, Required: true}},
		Yes:    session.Say("Write down"),
		Then: func(values map[string]string) {
			for _, field := range fields {
				f.typed.reasons[field] = values["reason"]
			}
			f.read()
			if err := f.Commit(); err != nil {
				f.session.Fail(err)
			}
		},
	})
}
