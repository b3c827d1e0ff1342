package lab

import (
	"cmp"
	"errors"
	"slices"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse/instruments"
)

// benchMeter enters a moisture meter.
type benchMeter struct {
	terminal.BookFlags
	terminal.WhoFlags
	ID          string   `arg:"" help:"The house's own short name for it." placeholder:"METER"`
	Model       string   `help:"What its plate says; charts go by it." placeholder:"WORDS"`
	Serial      string   `help:"Serial number." placeholder:"WORDS"`
	Method      string   `help:"dial, or direct for one that shows percent." placeholder:"dial|direct"`
	Calibration string   `help:"Calibration in force on it." placeholder:"EDITION"`
	Tolerance   string   `help:"How far off it may be to either side, in points, by the maker." placeholder:"POINTS"`
	Room        string   `help:"Where it may stand." placeholder:"50F..90F"`
	Apart       string   `help:"The most that grain may differ from it, in degrees." placeholder:"20F"`
	Posted      []string `sep:"none" help:"What it answers for with a grain; may be repeated." placeholder:"corn:mass=250,moisture=8..20,sample=40F..100F"`
}

func (benchMeter) Help() string {
	return `What is not given stays as it was. A new calibration is a new instrument: the meter must be checked again.

    tenth bench meter bench-1 --model "Example dial meter A" --method dial --calibration A-2025 --tolerance 0.5
    tenth bench meter bench-2 --model "Example direct meter" --method direct --calibration 7 --tolerance 0.4 \
        --room 50F..90F --apart 20F --posted "corn:moisture=8..25,sample=40F..100F"
    tenth bench meter bench-1 --calibration A-2026`
}

func (c benchMeter) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		m, err := c.before(p)
		if err != nil {
			return err
		}
		if err := c.apply(&m); err != nil {
			return err
		}
		if err := instruments.SetMeter(p, p.Desk, m); err != nil {
			return err
		}
		p.Say("%s is written down, calibration %s.", capital(m.Name()), m.Calibration)
		return nil
	})
}

// before is the meter as it was entered, or a new one.
func (c benchMeter) before(p *terminal.Session) (meter.Meter, error) {
	all, err := office.Meters(p, p.Desk)
	if i := slices.IndexFunc(all, func(m meter.Meter) bool { return m.ID == c.ID }); i >= 0 {
		return all[i], err
	}
	return meter.Meter{ID: c.ID}, err
}

func (c benchMeter) apply(m *meter.Meter) error {
	m.Model, m.Serial = cmp.Or(c.Model, m.Model), cmp.Or(c.Serial, m.Serial)
	m.Calibration, m.Method = cmp.Or(c.Calibration, m.Calibration), meter.Method(cmp.Or(c.Method, string(m.Method)))
	var faults []error
	set := func(into *quantity.Amount, a quantity.Amount, err error) {
		if faults = append(faults, err); err == nil && a.Unit() != quantity.Plain {
			*into = a
		}
	}
	tolerance, err := pointsIn("Tolerance", c.Tolerance)
	set(&m.Tolerance, tolerance, err)
	apart, err := temperatureIn("Apart", c.Apart)
	set(&m.MaxDifference, apart, err)
	room, err := spanIn("Room", c.Room, temperatureIn)
	if faults = append(faults, err); err == nil && room.Given() {
		m.Ambient = room
	}
	for _, text := range c.Posted {
		limits, err := postedIn(text)
		if faults = append(faults, err); err == nil {
			m.Crops = append(slices.DeleteFunc(slices.Clone(m.Crops), func(l meter.CropLimits) bool { return l.Crop == limits.Crop }), limits)
		}
	}
	return errors.Join(faults...)
}

// postedIn reads a meter's posted limits for a grain.
func postedIn(text string) (meter.CropLimits, error) {
	name, rest, _ := strings.Cut(text, ":")
	crop, err := entry.Commodity(name)
	if err != nil {
		return meter.CropLimits{}, err
	}
	l := meter.CropLimits{Crop: crop.ID}
	said, err := words(rest, "mass", "moisture", "sample")
	if err != nil {
		return l, err
	}
	if l.Mass, err = optional(moisture.MassField, said["mass"]); err != nil {
		return l, err
	}
	if l.Moisture, err = spanIn("Moisture", said["moisture"], limitIn); err != nil {
		return l, err
	}
	l.Sample, err = spanIn("Sample temperature", said["sample"], temperatureIn)
	return l, err
}

// benchMeters lists the meters.
type benchMeters struct {
	terminal.BookFlags
	JSON bool `help:"Print for programs: every figure as text."`
}

// meterJSON is a meter for programs.
type meterJSON struct {
	Meter       string         `json:"meter"`
	Model       string         `json:"model"`
	Serial      string         `json:"serial,omitempty"`
	Method      string         `json:"method"`
	Calibration string         `json:"calibration"`
	Tolerance   string         `json:"tolerance,omitempty"`
	State       string         `json:"state"`
	Last        string         `json:"last_check,omitempty"`
	NextDue     string         `json:"next_due,omitempty"`
	Sentence    message.Text   `json:"sentence"`
	Failures    []message.Text `json:"failures,omitempty"`
	Ignored     []message.Text `json:"ignored,omitempty"`
}

func meterForJSON(m meter.Meter, s meter.Status) meterJSON {
	return meterJSON{
		Meter: m.ID, Model: m.Model, Serial: m.Serial, Method: string(m.Method), Calibration: m.Calibration,
		Tolerance: amountOrNone(m.Tolerance.Unit() != quantity.Plain, m.Tolerance), State: string(s.State),
		Last: s.Last.String(), NextDue: s.NextDue.String(), Sentence: s.Sentence, Failures: s.Failures, Ignored: s.Ignored,
	}
}

func (c benchMeters) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		meters, err := office.Meters(p, p.Desk)
		if err != nil {
			return err
		}
		all := []office.DueMeter{}
		for _, m := range meters {
			s, err := office.MeterStatus(p, p.Desk, m)
			if err != nil {
				return err
			}
			all = append(all, office.DueMeter{Meter: m, Standing: s})
		}
		return listMeters(p, all, c.JSON, "No meter is entered. A manager enters one with \"tenth bench meter\".")
	})
}

func listMeters(p *terminal.Session, all []office.DueMeter, asJSON bool, empty string) error {
	if asJSON {
		out := []meterJSON{}
		for _, one := range all {
			out = append(out, meterForJSON(one.Meter, one.Standing))
		}
		return p.PrintJSON(out)
	}
	var rows [][]any
	for _, one := range all {
		m, s := one.Meter, one.Standing
		tolerance := terminal.Or(amountOrNone(m.Tolerance.Unit() != quantity.Plain, m.Tolerance), message.New("not entered"))
		rows = append(rows, []any{m.ID, m.Model, message.Words(m.Method.String()), m.Calibration, tolerance, message.Words(string(s.State)), terminal.Or(s.Last.String(), message.New("never")), terminal.Or(s.NextDue.String(), message.New("no date"))})
	}
	if err := p.Columns("Meter\tModel\tRead by\tCalibration\tMay be off\tStands\tLast check\tNext due", rows, empty); err != nil {
		return err
	}
	for _, one := range all {
		for _, s := range append(append([]message.Text{one.Standing.Sentence}, one.Standing.Ignored...), one.Standing.Hints...) {
			p.Say("%s", s)
		}
	}
	return nil
}
