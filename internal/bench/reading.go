package bench

import (
	"errors"
	"fmt"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/working"
)

// Method is how a moisture was found.
type Method string

const (
	// ByDial reads a dial and a thermometer and looks them up in a chart.
	ByDial Method = "dial"
	// Direct reads percent from a meter that does its own correction.
	Direct Method = "direct"
	// ByOven dries a weighed sample; it is the reference the others are held
	// against.
	ByOven Method = "oven"
	// Typed is a figure from elsewhere, with the reason it is believed.
	Typed Method = "typed"
)

// Methods lists the four, the everyday ones first.
func Methods() []Method { return []Method{ByDial, Direct, ByOven, Typed} }

// String is the method for people.
func (m Method) String() string {
	switch m {
	case ByDial:
		return "dial and chart"
	case Direct:
		return "direct-reading meter"
	case ByOven:
		return "oven"
	case Typed:
		return "typed by hand"
	}
	return fmt.Sprintf("unknown method %q", string(m))
}

// UsesMeter reports whether a moisture meter gave the figure.
func (m Method) UsesMeter() bool { return m == ByDial || m == Direct }

// Reading is one test of a sample, as written down at the bench. A figure that
// nobody recorded is the zero Amount.
type Reading struct {
	// Seq numbers the tests of one sample from 1.
	Seq    int           `json:"seq,string"`
	Method Method        `json:"method"`
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
	// Sample and Room are the temperatures of the grain and of the meter where
	// it stands, each in °F or °C.
	Sample quantity.Amount `json:"sample_temperature"`
	Room   quantity.Amount `json:"room_temperature"`
	// TestWeight is needed by charts with a second table.
	TestWeight quantity.Amount `json:"test_weight"`

	// Dial is the dial reading, for ByDial.
	Dial quantity.Amount `json:"dial"`
	// Percent is the moisture read or told, for Direct and Typed.
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
func (r Reading) label() string { return fmt.Sprintf("Test %d", r.Seq) }

// Check lists everything wrong with the reading on its own, each a sentence.
func (r Reading) Check() []error {
	var faults faults
	faults.unless(r.Seq > 0, "the test has no number; tests of a sample are numbered from 1")
	faults.unless(r.Tester != "", "%s: the tester is missing; type the name of the person at the bench", r.label())
	faults.unless(r.Crop != "", "%s: the crop is missing; a moisture belongs to one crop", r.label())
	faults.unless(!r.Day.IsZero(), "%s: the day is missing", r.label())
	r.checkTemperature(&faults, "sample", r.Sample)
	r.checkTemperature(&faults, "room", r.Room)
	faults.unless(!recorded(r.Mass) || r.Mass.Unit() == quantity.Gram && r.Mass.Sign() > 0, "%s: the sample mass is %s; type the grams put into the meter", r.label(), r.Mass)
	switch r.Method {
	case ByDial:
		r.checkDial(&faults)
	case Direct:
		r.checkDirect(&faults)
	case ByOven:
		r.Dish.check(&faults, r.label())
	case Typed:
		r.checkTyped(&faults)
	default:
		faults.unless(false, "%s: %s; it is one of dial, direct, oven, typed", r.label(), r.Method)
	}
	return faults
}

func (r Reading) checkTemperature(faults *faults, of string, t quantity.Amount) {
	faults.unless(!recorded(t) || isTemperature(t), "%s: the %s temperature is %s; type it in °F or °C", r.label(), of, t)
}

// faults gathers sentences.
type faults []error

func (f *faults) unless(ok bool, sentence string, args ...any) {
	if !ok {
		*f = append(*f, fmt.Errorf(sentence, args...))
	}
}

// Work writes the reading on the sheet and answers with its exact moisture:
// the mean is rounded, the tests are not. The error names every fault.
func (r Reading) Work(s *working.Sheet, e Equipment) (*working.Step, error) {
	if faults := r.Check(); len(faults) > 0 {
		return nil, errors.Join(faults...)
	}
	s.Section(fmt.Sprintf("Moisture, test %d: %s", r.Seq, r.Method))
	switch r.Method {
	case ByDial:
		return r.workDial(s, e)
	case Direct:
		return r.workDirect(s, e)
	case ByOven:
		return r.Dish.work(s, r), nil
	}
	return r.workTyped(s), nil
}

// by names person and instrument, as the source of a given figure.
func (r Reading) by(instrument string) string {
	if instrument == "" {
		return r.Tester
	}
	return r.Tester + ", " + instrument
}

// writeTemperature records the sample's temperature when it was taken.
func (r Reading) writeTemperature(s *working.Sheet) *working.Step {
	return s.Given(r.id()+".temperature", "Sample temperature", r.Sample, quantity.Unrounded, r.by("thermometer"))
}
