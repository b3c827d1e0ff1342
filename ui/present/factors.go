package present

import (
	"tenthpoint/internal/grain"
	"tenthpoint/ui/model"
)

// CanAskFactor reports whether the commodity has results that the form does
// not ask for.
func (f *LoadForm) CanAskFactor() bool { return len(f.otherFactors()) > 0 }

// otherFactors are the commodity's results that are not on the form.
func (f *LoadForm) otherFactors() []model.Option {
	c, err := grain.ByID(f.form.Commodity())
	if err != nil {
		return nil
	}
	var out []model.Option
	for _, factor := range c.Factors {
		if !f.isOnForm(factor.ID) {
			out = append(out, model.Option{Code: string(factor.ID), Name: Say(factor.Name)})
		}
	}
	return out
}

// AskFactor asks which other result there is, and puts a field for it on the
// form. Then is told the field.
func (f *LoadForm) AskFactor(then func(field string)) {
	f.frame.Put(model.Ask{
		Title:  Say("Which other result?"),
		Text:   Say("It gets a field on this form and a line on the slip. The rates may not look at it."),
		Fields: []model.AskField{{ID: "factor", Label: Say("Result"), Options: f.otherFactors(), Required: true}},
		Yes:    Say("Put it on"),
		Then: func(values map[string]string) {
			f.extra[grain.FactorID(values["factor"])] = true
			f.work()
			f.jot()
			then(values["factor"])
		},
	})
}
