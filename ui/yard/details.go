package yard

import (
	"slices"
	"strings"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// seldom are the facts of a load that few loads need: they have no place on the
// form and stand in a sheet of their own.
var seldom = []struct {
	id, label string
	get       func(*load.Load) string
	set       func(*draft, string)
}{
	{"driver", "Driver", func(l *load.Load) string { return l.Details.Driver }, func(d *draft, v string) { d.details.Driver = v }},
	{"plate", "Plate", func(l *load.Load) string { return l.Details.Truck.Plate }, func(d *draft, v string) { d.details.Truck.Plate = v }},
	{"trailer", "Trailer", func(l *load.Load) string { return l.Details.Truck.Trailer }, func(d *draft, v string) { d.details.Truck.Trailer = v }},
	{"class", "Class", func(l *load.Load) string { return l.Details.Class }, func(d *draft, v string) { d.details.Class = v }},
	{"crop", "Crop year", func(l *load.Load) string { return l.Details.CropYear }, func(d *draft, v string) { d.details.CropYear = v }},
	{"consignee", "Consignee", func(l *load.Load) string { return l.Details.Consignee }, func(d *draft, v string) { d.details.Consignee = v }},
	{"agent", "Agent", func(l *load.Load) string { return l.Details.Agent }, func(d *draft, v string) { d.details.Agent = v }},
	{"number", "Sample number", func(l *load.Load) string { return l.Sample.Number }, func(d *draft, v string) { d.Sample.Number = v }},
	{"probes", "Probed", func(l *load.Load) string { return l.Sample.Probes }, func(d *draft, v string) { d.Sample.Probes = v }},
	{"tester", "Tester", func(l *load.Load) string { return l.Sample.Tester }, func(d *draft, v string) { d.Sample.Tester = v }},
	{"kept", "Sample kept", func(l *load.Load) string { return l.Sample.Kept }, func(d *draft, v string) { d.Sample.Kept = v }},
}

// AskDetails asks for what few loads need.
func (f *LoadForm) AskDetails() {
	l := f.Now.Load
	var fields []model.AskField
	for _, s := range seldom {
		fields = append(fields, model.AskField{ID: s.id, Label: session.Say(s.label), Value: s.get(l), Chars: 26})
	}
	fields = append(fields,
		model.AskField{ID: "driverOn", Label: session.Say("Driver is"), Options: driverOptions(), Value: f.driverOn, Chars: 20, Hint: session.Say("on the weights to come")},
		model.AskField{ID: "until", Label: session.Say("Kept until"), Value: l.Sample.Until.String(), Chars: 12, Hint: session.Say("year-month-day")},
		model.AskField{ID: "schedule", Label: session.Say("Rates"), Options: f.scheduleOptions(), Value: l.Details.Schedule, Chars: 20, Hint: session.Say("empty: as set up")})
	f.session.Put(model.Ask{
		Draft: "details", Of: f.id,
		Title: session.Say("More about this load"), Fields: fields, Yes: session.Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			if _, err := session.DateOrNone(values["until"]); err != nil {
				return map[string]string{"until": session.Sentence(err)}
			}
			return nil
		},
		Then: f.setSeldom,
	})
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
	before := f.Now.Load
	d, _ := f.Read()
	for _, s := range seldom {
		s.set(d, strings.TrimSpace(values[s.id]))
	}
	d.details.Schedule = values["schedule"]
	d.Sample.Until, _ = session.DateOrNone(values["until"])
	d.amended = !sameDetails(d.details, before.Details)
	d.sampled = !sameSample(d.Sample, before.Sample)
	d.weighed = nil
	if !d.isEmpty() {
		f.save(d)
	}
}

func sameDetails(a, b load.Details) bool {
	return a.Driver == b.Driver && a.Truck == b.Truck && a.Class == b.Class && a.CropYear == b.CropYear &&
		a.Consignee == b.Consignee && a.Agent == b.Agent && a.Schedule == b.Schedule
}

func sameSample(a, b load.Sample) bool {
	return a.Number == b.Number && a.Probes == b.Probes && a.Tester == b.Tester && a.Kept == b.Kept && a.Until == b.Until
}

// scheduleOptions are the schedules there are rates of for the commodity.
func (f *LoadForm) scheduleOptions() []model.Option {
	out := []model.Option{}
	for _, name := range slices.Compact(f.session.Desk.Rates().Schedules(f.commodityID())) {
		out = append(out, model.Option{Code: name})
	}
	return out
}

// CanAskFactor reports whether the commodity has results that the form does
// not ask for.
func (f *LoadForm) CanAskFactor() bool { return len(f.otherFactors()) > 0 }

// otherFactors are the commodity's results that are not on the form.
func (f *LoadForm) otherFactors() []model.Option {
	c, err := grain.ByID(f.commodityID())
	if err != nil {
		return nil
	}
	asked := f.factorsAsked(c)
	var out []model.Option
	for _, factor := range c.Factors {
		if !slices.Contains(asked, factor.ID) {
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
