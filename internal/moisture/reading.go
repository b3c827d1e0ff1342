package moisture

import (
	"errors"
	"fmt"

	"tenthpoint/internal/fault"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// Reading is one test of a sample, as recorded at the bench. A figure that nobody recorded is the
// zero Amount.
type Reading struct {
	// Seq numbers the tests of one sample from 1.
	Seq    int           `json:"seq,string"`
	Method meter.Method  `json:"method"`
	Crop   string        `json:"crop"`
	Day    quantity.Date `json:"day"`
	Tester string        `json:"tester"`

	// Meter is the meter's id, Calibration the edition it was set to, Chart the
	// id of the chart used.
	Meter       string `json:"meter,omitempty"`
	Calibration string `json:"calibration,omitempty"`
	Chart       string `json:"chart,omitempty"`

	// Mass is the grain put into the meter, in g.
	Mass quantity.Amount `json:"mass"`
	// Sample and Room are the temperatures of the grain and of the meter's surroundings, each in °F
	// or °C.
	Sample quantity.Amount `json:"sample_temperature"`
	Room   quantity.Amount `json:"room_temperature"`
	// TestWeight is needed by charts with a second table.
	TestWeight quantity.Amount `json:"test_weight"`

	// Dial is the dial reading, for ByDial.
	Dial quantity.Amount `json:"dial"`
	// Percent is the moisture read or stated, for Direct and Typed.
	Percent quantity.Amount `json:"percent"`
	// Dish holds the three weighings, for ByOven.
	Dish Dish `json:"dish"`

	// FromDryer marks grain still hot from a dryer.
	FromDryer bool `json:"from_dryer,omitempty"`
	// Reason says where a typed figure is from.
	Reason string `json:"reason,omitempty"`
}

// id is the reading's name on the sheet.
func (r Reading) id() string { return fmt.Sprintf("moisture.test%d", r.Seq) }

// label is the reading's result for people.
func (r Reading) label() message.Text { return message.New("Test %d", r.Seq) }

// Check lists everything wrong with the reading on its own, each a sentence.
func (r Reading) Check() []error {
	var faults fault.List
	faults.Unless(r.Seq > 0, "the test has no number; tests of a sample are numbered from 1")
	faults.Unless(r.Tester != "", "%s: the tester is missing; type the name of the person at the bench", r.label())
	faults.Unless(r.Crop != "", "%s: the crop is missing; a moisture belongs to one crop", r.label())
	faults.Unless(!r.Day.IsZero(), "%s: the day is missing", r.label())
	r.checkTemperature(&faults, "sample", r.Sample)
	r.checkTemperature(&faults, "room", r.Room)
	faults.Unless(!quantity.Recorded(r.Mass) || r.Mass.Unit() == quantity.Gram && r.Mass.Sign() > 0, "%s: the sample mass is %s; type the grams put into the meter", r.label(), r.Mass)
	switch r.Method {
	case meter.ByDial:
		r.checkDial(&faults)
	case meter.Direct:
		r.checkDirect(&faults)
	case meter.ByOven:
		r.Dish.check(&faults, r.label())
	case meter.Typed:
		r.checkTyped(&faults)
	default:
		faults.Add("%s: %s; it is one of dial, direct, oven, typed", r.label(), r.Method)
	}
	return faults
}

func (r Reading) checkTemperature(faults *fault.List, of string, t quantity.Amount) {
	faults.Unless(!quantity.Recorded(t) || quantity.IsTemperature(t), "%s: the %s temperature is %s; type it in °F or °C", r.label(), of, t)
}

// Work writes the reading on the sheet and answers with its exact moisture:
// the mean is rounded, the tests are not. The error names every fault.
func (r Reading) Work(s *worksheet.Sheet, e Equipment) (*worksheet.Step, error) {
	if faults := r.Check(); len(faults) > 0 {
		return nil, errors.Join(faults...)
	}
	s.Section(message.New("Moisture, test %d: %s", r.Seq, r.Method))
	switch r.Method {
	case meter.ByDial:
		return r.workDial(s, e)
	case meter.Direct:
		return r.workDirect(s, e)
	case meter.ByOven:
		return r.Dish.work(s, r), nil
	}
	return r.workTyped(s), nil
}

// by names person and instrument, as the source of a given figure.
func (r Reading) by(instrument message.Text) message.Text {
	return message.List(", ", message.Own(r.Tester), instrument)
}

// writeTemperature records the sample's temperature when it was taken.
func (r Reading) writeTemperature(s *worksheet.Sheet) *worksheet.Step {
	return s.Given(r.id()+".temperature", message.Words("Sample temperature"), r.Sample, quantity.Unrounded, r.by(message.New("thermometer")))
}

// The figures people type at the bench, with how far each may sensibly go.
var (
	// DialField is a dial reading, to a tenth of a division.
	DialField = quantity.Field{Name: "Dial reading", Unit: quantity.Dial, Places: 1, Min: quantity.Zero(quantity.Dial), Max: quantity.Int(1000, quantity.Dial)}
	// MoistureField is a moisture from a meter or a certificate, to 0.01 %.
	MoistureField = quantity.Field{Name: "Moisture", Unit: quantity.Percent, Places: 2, Min: quantity.Of("0.1", quantity.Percent), Max: quantity.Int(60, quantity.Percent)}
	// MassField is the grain weighed into a meter, in g.
	MassField = quantity.Field{Name: "Sample mass", Unit: quantity.Gram, Places: 1, Min: quantity.Int(1, quantity.Gram), Max: quantity.Int(2000, quantity.Gram)}
	// DishField is a weighing of an oven dish, to 0.1 mg.
	DishField = quantity.Field{Name: "Dish weight", Unit: quantity.Gram, Places: 4, Min: quantity.Zero(quantity.Gram), Max: quantity.Int(2000, quantity.Gram)}
	// FahrenheitField and CelsiusField are temperatures of grain and room.
	FahrenheitField = quantity.Field{Name: "Temperature", Unit: quantity.Fahrenheit, Places: 1, Min: quantity.Int(-60, quantity.Fahrenheit), Max: quantity.Int(250, quantity.Fahrenheit)}
	CelsiusField    = quantity.Field{Name: "Temperature", Unit: quantity.Celsius, Places: 1, Min: quantity.Int(-50, quantity.Celsius), Max: quantity.Int(120, quantity.Celsius)}
)
