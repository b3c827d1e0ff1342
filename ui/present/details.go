package present

import (
	"slices"
	"strings"

	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
)

// seldom are the facts of a load that few loads need: they have no place on the
// form and stand in a sheet of their own.
var seldom = []string{"driver", "plate", "trailer", "class", "crop", "consignee", "agent", "number", "probes", "tester", "kept"}

// AskDetails asks for what few loads need.
func (f *LoadForm) AskDetails() {
	l := f.now.load
	var fields []model.AskField
	for _, id := range seldom {
		field, _ := f.form.Field(id)
		fields = append(fields, model.AskField{ID: id, Label: Say(field.Label), Value: field.Shown(l), Chars: 26})
	}
	fields = append(fields,
		model.AskField{ID: "driverOn", Label: Say("Driver is"), Options: driverOptions(), Value: f.driverOn, Chars: 20, Hint: Say("on the weights to come")},
		model.AskField{ID: "until", Label: Say("Kept until"), Value: l.Sample.Until.String(), Chars: 12, Hint: Say("year-month-day")},
		model.AskField{ID: "schedule", Label: Say("Rates"), Options: f.scheduleOptions(), Value: l.Details.Schedule, Chars: 20, Hint: Say("empty: as set up")})
	f.frame.Put(model.Ask{
		Draft: "details", Of: f.id,
		Title: Say("More about this load"), Fields: fields, Yes: Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			faults := map[string]string{}
			for id, err := range f.over(f.changed(values)).Refused() {
				faults[id] = sentence(err)
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
		if field, known := f.form.Field(id); known && strings.TrimSpace(text) != field.Shown(f.now.load) {
			out[id] = text
		}
	}
	return out
}

// driverOptions are where the driver may be while the truck is weighed.
func driverOptions() []model.Option {
	return []model.Option{{Code: "on", Name: Say("on the truck")}, {Code: "off", Name: Say("off the truck")}}
}

// setSeldom writes the sheet into the book.
func (f *LoadForm) setSeldom(values map[string]string) {
	if err := f.Commit(); err != nil {
		f.frame.Fail(err)
		return
	}
	f.driverOn = values["driverOn"]
	f.jot()
	if err := f.writeDown(f.changed(values)); err != nil {
		f.frame.Fail(err)
		return
	}
	f.frame.Changed()
}

func dateOrNone(text string) (quantity.Date, error) {
	if strings.TrimSpace(text) == "" {
		return quantity.Date{}, nil
	}
	return quantity.ParseDate(text)
}

// scheduleOptions are the schedules there are rates of for the commodity.
func (f *LoadForm) scheduleOptions() []model.Option {
	out := []model.Option{}
	for _, name := range slices.Compact(f.frame.Desk.Rates().Schedules(f.form.Commodity())) {
		out = append(out, model.Option{Code: name})
	}
	return out
}
