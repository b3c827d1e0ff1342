package yard

import (
	"maps"
	"slices"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
	"tenthpoint/ui/yard/loadfields"
)

// Results are the results of a sample other than moisture, typed on the form of its load: at the
// yard, or at the bench.
type Results struct{ form *LoadForm }

// ResultsOf are the results of a form.
func ResultsOf(form *LoadForm) Results { return Results{form} }

// Fields are the fields of the results, as they now are.
func (r Results) Fields() []model.Field {
	return slices.DeleteFunc(r.form.Fields(), func(f model.Field) bool { return !r.Has(f.ID) })
}

// Has reports whether a field is one of the results.
func (r Results) Has(id string) bool {
	l, known := r.form.Now.Line(id)
	return id == entry.NoneSeen || known && l.Part == model.SamplePart && id != string(grain.Moisture)
}

// Wrong is the message beside the first typed result that cannot be used.
func (r Results) Wrong() string {
	for _, f := range r.Fields() {
		if f.State == model.Stop && r.form.IsTyped(f.ID) {
			return f.Note
		}
	}
	return ""
}

// Sample returns the sample with every typed result applied.
func (r Results) Sample() load.Sample { return r.form.Now.form.Sample() }

// Findings are those of the sample as far as they can be used.
func (r Results) Findings() []load.Finding { return r.form.Now.Load.Sample.Findings }

// Written discards what was typed: the book has it.
func (r Results) Written() {
	for id := range r.form.typed.texts {
		if r.Has(id) {
			r.form.typed.forget(id)
		}
	}
}

// Typed are the texts of the results that are not in the book, by field.
func (r Results) Typed() map[string]string {
	out := map[string]string{}
	for id, text := range r.form.typed.texts {
		l, known := r.form.Now.Line(id)
		if r.Has(id) && (!known || text != l.Shown(r.form.session.Language, r.form.inBook())) {
			out[id] = text
		}
	}
	return out
}

// Asked returns the factors added to the form and not in the book, as texts of a draft.
func (r Results) Asked() map[string]string {
	return factorTexts(r.form.typed.factors, r.form.inBook().Sample)
}

// Restore restores the results on the form: the factors added in a draft, and texts by field.
func (r Results) Restore(draft, typed map[string]string) {
	maps.Copy(r.form.typed.factors, factorsOf(draft))
	r.form.read()
	for id, text := range typed {
		if r.Has(id) {
			r.form.put(id, text)
		}
	}
	r.form.read()
}

// CanSeeNone reports whether the sample's grain is known.
func (r Results) CanSeeNone() bool {
	return r.form != nil && r.form.Now.form.Commodity() != ""
}

// SeeNone answers, or takes the answer back, that whatever is counted or noticed and not typed was
// looked for and not found: without it no grade is ever whole.
func (r Results) SeeNone() {
	said, answer := r.form.session.Say("Whatever is counted or noticed and not typed counts as looked for and not found."), "yes"
	if r.Sample().NoneSeen {
		said, answer = r.form.session.Say("What is not typed counts as not looked for."), "no"
	}
	r.form.put(entry.NoneSeen, answer)
	r.form.read()
	r.form.saveDraft()
	r.form.session.Notify(model.OK, said)
}

// CanAskMore reports whether the commodity has results that the form does not ask
// for.
func (r Results) CanAskMore() bool { return len(r.others()) > 0 }

// others are the commodity's results that are not on the form.
func (r Results) others() []model.Option {
	c, err := grain.ByID(r.form.Now.form.Commodity())
	if err != nil {
		return nil
	}
	var out []model.Option
	for _, factor := range c.Factors {
		isShown := func(l loadfields.Line) bool { return l.Field.Factor.ID == factor.ID }
		if !slices.ContainsFunc(r.form.Now.lines, isShown) {
			out = append(out, model.Option{Code: string(factor.ID), Name: r.form.session.Say(factor.Name)})
		}
	}
	return out
}

// AskMore asks for another factor, and adds its field to the form. then is called with the field.
func (r Results) AskMore(then func(field string)) {
	r.form.session.Put(model.Ask{
		Title:  r.form.session.Say("Which other result?"),
		Text:   r.form.session.Say("It gets a field on this form and a line on the slip. The rates may not look at it."),
		Fields: []model.AskField{{ID: "factor", Label: r.form.session.Say("Result"), Options: r.others(), Required: true}},
		Yes:    r.form.session.Say("Put it on"),
		Then: func(values map[string]string) {
			r.form.typed.factors[grain.FactorID(values["factor"])] = true
			r.form.read()
			r.form.saveDraft()
			then(values["factor"])
		},
	})
}
