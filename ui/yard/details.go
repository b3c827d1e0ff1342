package yard

import (
	"slices"
	"strings"
	"tenthpoint/internal/grain"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// seldom are the facts of a load that few loads need: they have no place on the
// form and stand in a sheet of their own.
var seldom = []string{"driver", "plate", "trailer", "class", "crop", "consignee", "agent", "number", "probes", "tester", "kept"}

// AskDetails asks for what few loads need.
func (f *LoadForm) AskDetails() {
	l := f.Now.Load
	var fields []model.AskField
	for _, id := range seldom {
		field, _ := f.form.Field(id)
		fields = append(fields, model.AskField{ID: id, Label: session.Say(field.Label), Value: field.Shown(l), Chars: 26})
	}
	fields = append(fields,
		model.AskField{ID: "driverOn", Label: session.Say("Driver is"), Options: driverOptions(), Value: f.driverOn, Chars: 20, Hint: session.Say("on the weights to come")},
		model.AskField{ID: "until", Label: session.Say("Kept until"), Value: l.Sample.Until.String(), Chars: 12, Hint: session.Say("year-month-day")},
		model.AskField{ID: "schedule", Label: session.Say("Rates"), Options: f.scheduleOptions(), Value: l.Details.Schedule, Chars: 20, Hint: session.Say("empty: as set up")})
	f.session.Put(model.Ask{
		Draft: "details", Of: f.id,
		Title: session.Say("More about this load"), Fields: fields, Yes: session.Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			faults := map[string]string{}
			for id, err := range f.over(f.changed(values)).Refused() {
				faults[id] = session.Sentence(err)
			}
			return faults
		},
		Then: f.setSeldom,
	})
}

// changed are the texts of the sheet that are not what the load has.
func (f *LoadForm) changed(values map[string]string) map[string]string {
	out := map[string]string{}
	for id, text := range values {
		if field, known := f.form.Field(id); known && strings.TrimSpace(text) != field.Shown(f.Now.Load) {
			out[id] = text
		}
	}
	return out
}

// driverOptions are where the driver may be while the truck is weighed.
func driverOptions() []model.Option {
	return []model.Option{{Code: "on", Name: session.Say("on the truck")}, {Code: "off", Name: session.Say("off the truck")}}
}

// setSeldom writes the sheet into the book.
func (f *LoadForm) setSeldom(values map[string]string) {
	if err := f.Commit(); err != nil {
		f.session.Fail(err)
		return
	}
	f.driverOn = values["driverOn"]
	f.jot()
	if err := f.writeDown(f.changed(values)); err != nil {
		f.session.Fail(err)
		return
	}
	f.session.Changed()
}

// scheduleOptions are the schedules there are rates of for the commodity.
func (f *LoadForm) scheduleOptions() []model.Option {
	out := []model.Option{}
	for _, name := range slices.Compact(f.session.Desk.Rates().Schedules(f.form.Commodity())) {
		out = append(out, model.Option{Code: name})
	}
	return out
}

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
			out = append(out, model.Option{Code: string(factor.ID), Name: session.Say(factor.Name)})
		}
	}
	return out
}

// AskFactor asks which other result there is, and puts a field for it on the
// form. Then is told the field.
func (f *LoadForm) AskFactor(then func(field string)) {
	f.session.Put(model.Ask{
		Title:  session.Say("Which other result?"),
		Text:   session.Say("It gets a field on this form and a line on the slip. The rates may not look at it."),
		Fields: []model.AskField{{ID: "factor", Label: session.Say("Result"), Options: f.otherFactors(), Required: true}},
		Yes:    session.Say("Put it on"),
		Then: func(values map[string]string) {
			f.Extra[grain.FactorID(values["factor"])] = true
			f.Work()
			f.jot()
			then(values["factor"])
		},
	})
}
