package lab

import (
	"context"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// testTools are the means of testing a sample: the meters with their checks and charts, the
// elevator's rules of testing, and which of them were used last.
type testTools struct {
	session   *session.Session
	equipment moisture.Equipment
	setup     office.Bench
	method    meter.Method // used last, and most likely used next
	meterID   string       // likewise
	celsius   bool         // the thermometer's scale
	begun     bool         // method, meter and scale are known
}

// read loads meters, charts and rules from the book. It reports whether it chose defaults: at the
// start, and again with the first meter.
func (i *testTools) read() (chose bool) {
	ctx := context.Background()
	had := len(i.equipment.Meters) > 0
	var errs [2]error
	i.equipment, errs[0] = office.Equipment(ctx, i.session.Desk)
	i.setup, errs[1] = office.BenchSetup(ctx, i.session.Desk)
	for _, err := range errs {
		if err != nil {
			i.session.Fail(err)
		}
	}
	if chose = !i.begun || !had && len(i.equipment.Meters) > 0; chose {
		i.begin()
	}
	return chose
}

// begin chooses the defaults: the first meter that can be used, and the usual thermometer.
func (i *testTools) begin() {
	i.begun, i.celsius = true, usesCelsius(i.session.Desk.Profile())
	i.method, i.meterID = meter.Typed, ""
	if m, ok := i.best(); ok {
		i.method, i.meterID = m.Method, m.ID
	}
}

// usesCelsius reports whether an elevator's thermometers show Celsius: they go with its weights.
func usesCelsius(p elevator.Profile) bool {
	return p.Rules == "canada" || p.WeightUnit() == quantity.Kg
}

// best is the first meter whose checks are in order, or else the first.
func (i *testTools) best() (meter.Meter, bool) {
	meters := i.equipment.Meters
	for _, m := range meters {
		if s := i.equipment.Statuses[m.ID].State; s == meter.Good || s == meter.Due {
			return m, true
		}
	}
	if len(meters) == 0 {
		return meter.Meter{}, false
	}
	return meters[0], true
}

// use notes the method used, with the meter to offer for it: the one used last, or
// the first. It returns the meter's id.
func (i *testTools) use(method meter.Method) string {
	first := ""
	for _, m := range i.equipment.Meters {
		if m.Method == method && (first == "" || m.ID == i.meterID) {
			first = m.ID
		}
	}
	i.method, i.meterID = method, first
	return first
}

// meter is a meter by its id.
func (i *testTools) meter(id string) (meter.Meter, bool) {
	return session.Find(i.equipment.Meters, func(m meter.Meter) bool { return m.ID == id })
}

// describe is a meter's model, with the state of its checks.
func (i *testTools) describe(m meter.Meter) string {
	return session.Join(", ", m.Model, instrumentStatus(i.session.Language, i.equipment.Statuses[m.ID].State).Text)
}

// metersFor are the meters of a method to choose from.
func (i *testTools) metersFor(method meter.Method) []model.Option {
	out := []model.Option{}
	for _, m := range i.equipment.Meters {
		if m.Method == method {
			out = append(out, model.Option{Code: m.ID, Detail: i.describe(m)})
		}
	}
	return out
}

// charts are the charts in force for a crop on a meter, the one for the driest
// grain first.
func (i *testTools) charts(crop, meterID string) []*chart.Chart {
	m, ok := i.meter(meterID)
	if !ok || crop == "" {
		return nil
	}
	return i.equipment.Charts.For(crop, m.Model, m.Calibration, i.session.Desk.Today())
}

// policy returns the elevator's policy for a crop.
func (i *testTools) policy(crop string) moisture.Policy {
	return moisture.PolicyFor(i.setup.Policies, crop)
}

// degrees is the unit in which temperatures are typed.
func (i *testTools) degrees() quantity.Unit {
	if i.celsius {
		return quantity.Celsius
	}
	return quantity.Fahrenheit
}

// onlyGrain is the only commodity taken here, if there is only one.
func (i *testTools) onlyGrain() string {
	if grains := i.session.Desk.Profile().Grains; len(grains) == 1 {
		return grains[0].Commodity
	}
	return ""
}
