package yard

import (
	"slices"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// typedAtDesk is the source of a typed figure. It is in the book in English and translated when
// shown.
const typedAtDesk = "typed at the desk"

// manualWeights are weights typed by hand on a form, each with its reason.
type manualWeights struct{ form *LoadForm }

// reason returns why a weight was typed. Where the scale can be read each weight has a reason of
// its own; where it cannot, one answer holds for the person's day.
func (m manualWeights) reason(field string) string {
	if m.isLinked() {
		return m.form.typed.reasons[field]
	}
	return session.ManualReason(m.form.session)
}

func (m manualWeights) isLinked() bool { return m.form.session.Indicator != nil }

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

// askWhy asks why the weights in some fields were typed by hand. With the answer they are recorded;
// without it the figures are reverted. A field is committed once more when the box takes the
// focus, which must not ask again.
func (m manualWeights) askWhy(fields []string) {
	if m.form.asksWhy {
		return
	}
	m.form.asksWhy = true
	f := m.form.session
	ask := model.Ask{
		Draft: "by hand", Of: m.form.id,
		Title:   m.form.session.Say("Why is the weight typed by hand?"),
		Text:    session.Join("\n", m.typed(fields), m.form.session.Say("The scale can be read. A typed weight is marked MANUAL WT on the slip, with your reason.")),
		State:   model.Warn,
		Fields:  []model.AskField{{ID: "reason", Label: m.form.session.Say("Reason"), Options: manualReasons(f), FreeText: true, Chars: 36, Required: true}},
		Yes:     m.form.session.Say("Write down"),
		GivenUp: func() { m.form.asksWhy = false; m.takeBack(fields) },
		Then:    func(values map[string]string) { m.form.asksWhy = false; m.explain(fields, values["reason"]) },
	}
	if !m.isLinked() {
		ask.Text = session.Join("\n", m.typed(fields), m.form.session.Say("No scale is linked here. The answer holds for your weights of today and prints beside MANUAL WT."))
		ask.Fields[0].FreeText = false
	}
	f.Put(ask)
}

// typed names the truck and the weights that are asked about.
func (m manualWeights) typed(fields []string) string {
	weights := make([]string, len(fields))
	for i, id := range fields {
		l, _ := m.form.Now.Line(id)
		weights[i] = session.Join(" ", l.Label, m.weight(id, l.Unit))
	}
	return m.form.session.Say("%s: %s", m.form.Now.truck(), session.Join(", ", weights...))
}

// weight is the text of a field, with the signs of figures.
func (m manualWeights) weight(id, unit string) string {
	text := session.Join(" ", m.form.Text(id), unit)
	a, err := quantity.ParseAmount(text)
	if err != nil {
		return text
	}
	return a.Localize(m.form.session.Signs())
}

// manualReasons are the elevator's reasons. They are in the book in English.
func manualReasons(f *session.Session) []model.Option {
	var out []model.Option
	for _, reason := range f.Desk.Profile().WhyManual() {
		out = append(out, model.Option{Code: reason, Name: f.Say(reason), ByName: true})
	}
	return out
}

// explain sets the reason of weights and records them.
func (m manualWeights) explain(fields []string, reason string) {
	if m.isLinked() {
		for _, field := range fields {
			m.form.typed.reasons[field] = reason
		}
	} else {
		session.SetManualReason(m.form.session, reason)
	}
	m.form.read()
	if err := m.form.Commit(); err != nil {
		m.form.session.Fail(err)
	}
}

// takeBack restores the book's values in the fields of weights without a reason.
func (m manualWeights) takeBack(fields []string) {
	for _, field := range fields {
		m.form.Restore(field)
	}
	m.form.session.Notify(model.Warn, m.form.session.Say("%s: the typed weight is taken back, since no reason was given.", m.form.Now.truck()))
	m.form.session.Window.Redraw()
}
