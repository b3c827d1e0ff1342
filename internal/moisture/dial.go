package moisture

import (
	"slices"
	"tenthpoint/internal/fault"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

func (r Reading) checkDial(faults *fault.List) {
	faults.Unless(r.Dial.Unit() == quantity.Dial, "%s: the dial reading is missing", r.label())
	faults.Unless(quantity.IsTemperature(r.Sample), "%s: the sample temperature is missing; the chart cannot be read without it", r.label())
	faults.Unless(quantity.Recorded(r.Mass), "%s: the sample mass is missing; write the grams put into the meter", r.label())
	faults.Unless(r.Meter != "", "%s: the meter is missing; choose the one that was used", r.label())
	faults.Unless(r.Chart != "", "%s: the chart is missing; choose one for this crop, meter and mass", r.label())
}

// workDial looks the dial up in the chart. It refuses a chart for another crop, meter or
// calibration, or out of its dates: the result would be meaningless.
func (r Reading) workDial(s *worksheet.Sheet, e Equipment) (*worksheet.Step, error) {
	meter, err := e.Meter(r.Meter)
	if err != nil {
		return nil, err
	}
	chart, err := e.Charts.ByID(r.Chart)
	if err != nil {
		return nil, err
	}
	if err := r.refuseChart(chart, meter); err != nil {
		return nil, err
	}
	instrument := message.New("%v, calibration %v, %s of grain", meter.Name(), r.Calibration, r.Mass)
	dial := s.Given(r.id()+".dial", message.Words("Dial"), r.Dial, quantity.Unrounded, r.by(instrument))
	temperature := r.writeTemperature(s)
	var weight *worksheet.Step
	if quantity.Recorded(r.TestWeight) {
		weight = s.Given(r.id()+".test-weight", message.Words("Test weight"), r.TestWeight, quantity.Unrounded, r.by(message.New("kettle")))
	}
	moisture, err := chart.Convert(s, r.id(), dial, temperature, weight)
	if err != nil {
		return nil, message.Errorf("%s: %w", r.label(), err)
	}
	return s.Work(r.id(), r.label(), worksheet.Same(moisture), quantity.Unrounded, message.New("chart %v", chart.ID)), nil
}

func (r Reading) refuseChart(c *chart.Chart, m meter.Meter) error {
	switch {
	case c.Crop != r.Crop:
		return message.Invalid.Errorf("%s: chart %s is for %s and the load is %s; choose a chart for %s", r.label(), c.ID, c.Crop, r.Crop, r.Crop)
	case c.Meter != m.Model:
		return message.Invalid.Errorf("%s: chart %s is for the meter %q and %s is a %q; choose a chart for that meter", r.label(), c.ID, c.Meter, m.ID, m.Model)
	case c.Calibration != r.Calibration:
		return message.Invalid.Errorf("%s: chart %s belongs to calibration %s and the meter was set to %q; set the meter or choose the chart for its calibration", r.label(), c.ID, c.Calibration, r.Calibration)
	case !c.InForce(r.Day):
		return message.Invalid.Errorf("%s: chart %s is for use from %s to %s, and the test was on %s; choose the chart in force that day", r.label(), c.ID, c.From, untilWords(c.Until), r.Day)
	}
	return nil
}

func untilWords(d quantity.Date) string {
	if d.IsZero() {
		return "the day it is replaced"
	}
	return d.String()
}

// checkRounding is to the hundredth, as a meter that shows percent is written down.
var checkRounding = quantity.To("0.01", quantity.HalfUp)

// DialCheck returns a check of a dial meter with what its chart makes of the dial: the chart in
// force for the grain and the mass that was put in, read as that of any sample.
func (e Equipment) DialCheck(c meter.Check) (meter.Check, error) {
	m, err := e.Meter(c.Meter)
	if err != nil {
		return c, err
	}
	charts := e.Charts.For(c.Crop, m.Model, c.Calibration, c.Day)
	i := slices.IndexFunc(charts, func(one *chart.Chart) bool { return one.Mass.Equal(c.Mass) })
	if i < 0 {
		return c, message.Invalid.Errorf("there is no chart for %s of %s on meter %s with calibration %s; weigh in what a chart asks for", c.Mass, c.Crop, m.ID, c.Calibration)
	}
	c.Chart = charts[i].ID
	reading := Reading{
		Seq: 1, Method: meter.ByDial, Crop: c.Crop, Day: c.Day, Tester: c.By, Meter: c.Meter, Calibration: c.Calibration,
		Chart: c.Chart, Mass: c.Mass, Sample: c.Sample, TestWeight: c.TestWeight, Dial: c.Dial,
	}
	read, err := reading.Work(&worksheet.Sheet{}, e)
	if err != nil {
		return c, err
	}
	c.Reading = checkRounding.Apply(read.Value())
	return c, nil
}
