package present

import (
	"slices"
	"strings"

	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
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
	{"number", "Sample number", func(l *load.Load) string { return l.Sample.Number }, func(d *draft, v string) { d.sample.Number = v }},
	{"probes", "Probed", func(l *load.Load) string { return l.Sample.Probes }, func(d *draft, v string) { d.sample.Probes = v }},
	{"tester", "Tester", func(l *load.Load) string { return l.Sample.Tester }, func(d *draft, v string) { d.sample.Tester = v }},
	{"kept", "Sample kept", func(l *load.Load) string { return l.Sample.Kept }, func(d *draft, v string) { d.sample.Kept = v }},
}

// AskDetails asks for what few loads need.
func (f *LoadForm) AskDetails() {
	l := f.now.load
	var fields []model.AskField
	for _, s := range seldom {
		fields = append(fields, model.AskField{ID: s.id, Label: Say(s.label), Value: s.get(l), Chars: 26})
	}
	fields = append(fields,
		model.AskField{ID: "driverOn", Label: Say("Driver is"), Options: driverOptions(), Value: f.driverOn, Chars: 20, Hint: Say("on the weights to come")},
		model.AskField{ID: "until", Label: Say("Kept until"), Value: l.Sample.Until.String(), Chars: 12, Hint: Say("year-month-day")},
		model.AskField{ID: "schedule", Label: Say("Rates"), Options: f.scheduleOptions(), Value: l.Details.Schedule, Chars: 20, Hint: Say("empty: as set up")})
	f.frame.Put(model.Ask{
		Draft: "details", Of: f.id,
		Title: Say("More about this load"), Fields: fields, Yes: Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			if _, err := dateOrNone(values["until"]); err != nil {
				return map[string]string{"until": sentence(err)}
			}
			return nil
		},
		Then: f.setSeldom,
	})
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
	before := f.now.load
	d, _ := f.read()
	for _, s := range seldom {
		s.set(d, strings.TrimSpace(values[s.id]))
	}
	d.details.Schedule = values["schedule"]
	d.sample.Until, _ = dateOrNone(values["until"])
	d.amended = !sameDetails(d.details, before.Details)
	d.sampled = !sameSample(d.sample, before.Sample)
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
	for _, name := range slices.Compact(f.frame.Desk.Rates().Schedules(f.commodityID())) {
		out = append(out, model.Option{Code: name})
	}
	return out
}
