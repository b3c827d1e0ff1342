package lab

import (
	"maps"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
)

// readingFlags are readings of one sample, by one method.
type readingFlags struct {
	Dial       []string `sep:"none" help:"Dial reading, with a temperature of its own if it has one; may be repeated." placeholder:"DIVISIONS[@TEMPERATURE]"`
	Percent    []string `sep:"none" help:"Moisture read on a direct-reading meter, likewise; may be repeated." placeholder:"PERCENT[@TEMPERATURE]"`
	Oven       []string `sep:"none" help:"Oven test in g: dish with wet grain, with dried grain, empty; may be repeated." placeholder:"WET/DRIED/EMPTY"`
	Typed      string   `help:"Moisture from elsewhere; needs --why." placeholder:"PERCENT"`
	Why        string   `help:"Why the typed moisture is believed." placeholder:"WHY"`
	Meter      string   `help:"Meter it was read on." placeholder:"METER"`
	Chart      string   `help:"Chart, by id, where several would do." placeholder:"CHART"`
	Mass       string   `help:"Grain weighed into the meter, in g." placeholder:"GRAMS"`
	At         string   `help:"Temperature of the sample, with F or C." placeholder:"TEMPERATURE"`
	Room       string   `help:"Temperature of the room, with F or C." placeholder:"TEMPERATURE"`
	TestWeight string   `help:"Test weight, for charts that go by it too." placeholder:"WEIGHT"`
	FromDryer  bool     `help:"The grain is hot from a dryer."`
}

// readings returns the typed readings, numbered after the existing ones.
func (f readingFlags) readings(p *terminal.Session, l *load.Load, before int) ([]moisture.Reading, error) {
	begun, common := f.common(p, l)
	var out []moisture.Reading
	add := func(r moisture.Reading, err error) error {
		r.Seq = before + len(out) + 1
		out = append(out, r)
		return err
	}
	for _, text := range f.Dial {
		if err := add(f.dial(p, begun, common, text)); err != nil {
			return nil, err
		}
	}
	for _, text := range f.Percent {
		if err := add(f.direct(p, begun, common, text)); err != nil {
			return nil, err
		}
	}
	for _, text := range f.Oven {
		if err := add(ovenReading(begun, text)); err != nil {
			return nil, err
		}
	}
	if f.Typed != "" {
		if err := add(f.typed(begun, common)); err != nil {
			return nil, err
		}
	}
	if len(out) == 0 {
		return nil, terminal.Refusal("Give --dial, --percent, --oven or --typed", "no reading was given")
	}
	return out, nil
}

// common returns the values all the readings share.
func (f readingFlags) common(p *terminal.Session, l *load.Load) (moisture.Reading, terminal.Texts) {
	begun := moisture.Reading{Crop: l.Details.Commodity, Day: p.Today(), Tester: p.Who().Name, FromDryer: f.FromDryer}
	return begun, terminal.Texts{"temperature": f.At, "room": f.Room, "mass": f.Mass, "test-weight": f.TestWeight, "reason": f.Why}
}

// readTest reads one test as typed; the error is the first invalid text.
func readTest(begun moisture.Reading, typed terminal.Texts, needed ...string) (moisture.Reading, error) {
	r, faults := entry.Test{Begun: begun, Needed: needed}.Read(typed)
	if len(faults) > 0 {
		return r, faults[0]
	}
	return r, nil
}

// onMeter sets the meter and its calibration.
func (f readingFlags) onMeter(p *terminal.Session, r *moisture.Reading) (meter.Meter, error) {
	if f.Meter == "" {
		return meter.Meter{}, terminal.Refusal("Give --meter", "it is not said on which meter it was read")
	}
	m, err := office.MeterByID(p, p.Desk, f.Meter)
	r.Meter, r.Calibration = m.ID, m.Calibration
	return m, err
}

// withOwn adds a figure and its own temperature, if it has one.
func withOwn(common terminal.Texts, figure, text string) terminal.Texts {
	typed := maps.Clone(common)
	text, at, own := strings.Cut(text, "@")
	if typed[figure] = text; own {
		typed["temperature"] = at
	}
	return typed
}

func (f readingFlags) dial(p *terminal.Session, begun moisture.Reading, common terminal.Texts, text string) (moisture.Reading, error) {
	begun.Method = meter.ByDial
	m, err := f.onMeter(p, &begun)
	if err != nil {
		return begun, err
	}
	r, err := readTest(begun, withOwn(common, "dial", text), "dial")
	if err != nil {
		return r, err
	}
	if r.Mass.Unit() == quantity.Plain {
		return r, terminal.Refusal("Give --mass with the grams weighed in", "the mass of grain in the meter is not said, and the dial follows it")
	}
	if r.Chart = f.Chart; r.Chart != "" {
		return r, nil
	}
	// A wrong mass has a chart too, of another mass: the bench then flags it.
	w := wanted{crop: r.Crop, meter: m.Model, calibration: r.Calibration, mass: r.Mass, day: r.Day}
	chart, err := chartFor(p.Charts(), w)
	if err != nil {
		w.mass = quantity.Amount{}
		if other, only := chartFor(p.Charts(), w); only == nil {
			chart, err = other, nil
		}
	}
	if err == nil {
		r.Chart = chart.ID
	}
	return r, err
}

func (f readingFlags) direct(p *terminal.Session, begun moisture.Reading, common terminal.Texts, text string) (moisture.Reading, error) {
	begun.Method = meter.Direct
	if _, err := f.onMeter(p, &begun); err != nil {
		return begun, err
	}
	return readTest(begun, withOwn(common, "percent", text), "percent")
}

func ovenReading(begun moisture.Reading, text string) (moisture.Reading, error) {
	begun.Method = meter.ByOven
	weighings := strings.Split(text, "/")
	if len(weighings) != 3 {
		return begun, terminal.Refusal("Write three weighings like 131.4520/128.3020/116.4020", "%q is no oven test", text)
	}
	return readTest(begun, terminal.Texts{"wet": weighings[0], "dry": weighings[1], "tare": weighings[2]}, "wet", "dry", "tare")
}

func (f readingFlags) typed(begun moisture.Reading, common terminal.Texts) (moisture.Reading, error) {
	begun.Method = meter.Typed
	return readTest(begun, terminal.Texts{"percent": f.Typed, "reason": common["reason"]}, "percent")
}
