package lab

import (
	"errors"
	"fmt"
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

// benchCheck records a check of a meter.
type benchCheck struct {
	terminal.BookFlags
	terminal.WhoFlags
	Meter     string `arg:"" optional:"" help:"The meter; without it, the only one there is." placeholder:"METER"`
	Commodity string `aliases:"crop" required:"" help:"The grain of the reference, by id or name." placeholder:"GRAIN"`
	Reference string `required:"" help:"Moisture of the reference by oven." placeholder:"PERCENT"`
	Reading   string `help:"What the meter made of it; for one with a dial give that instead." placeholder:"PERCENT" xor:"read" required:""`
	Dial      string `help:"What the dial showed; its chart makes the percent." placeholder:"DIAL" xor:"read" required:""`
	Mass      string `help:"With a dial, the grain put in, in g." placeholder:"GRAMS"`
	Weight    string `help:"With a dial, the test weight where the chart goes by it." placeholder:"LB/BU"`
	At        string `help:"Temperature of the reference, with F or C." placeholder:"TEMPERATURE"`
	Name      string `help:"The reference's own number." placeholder:"NUMBER"`
	Day       string `help:"Day it was read. Without it, today." placeholder:"YYYY-MM-DD"`
}

func (benchCheck) Help() string {
	return `A reference is grain whose moisture an oven has told. Day, person and calibration are today's, whoever acts and the meter's.

    tenth bench check bench-1 --commodity corn --reference 16.02 --reading 16.1 --at 70F --name R7
    tenth bench check bench-1 --commodity corn --reference 17.7 --dial 68 --mass 250 --at 65F
    tenth bench withdraw bench-1 --reason "typed wrong"`
}

func (c benchCheck) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		check, err := c.check(p)
		if err != nil {
			return err
		}
		if err := instruments.CheckMeter(p, p.Desk, check); err != nil {
			return err
		}
		m, err := office.MeterByID(p, p.Desk, c.Meter)
		if err != nil {
			return err
		}
		s, err := office.MeterStatus(p, p.Desk, m)
		if err != nil {
			return err
		}
		all, err := office.MeterChecks(p, p.Desk, check.Meter)
		if err != nil {
			return err
		}
		p.Say("Written down: off by %s.", signed(all[len(all)-1].Error()))
		p.Say("%s", s.Sentence)
		for _, why := range s.Ignored {
			p.Say("%s", why)
		}
		return nil
	})
}

func (c benchCheck) check(p *terminal.Session) (meter.Check, error) {
	crop, wrongCrop := entry.Commodity(c.Commodity)
	reference, wrongReference := moistureNamed("Reference", c.Reference)
	at, wrongAt := temperatureIn("Sample temperature", c.At)
	day, wrongDay := entry.ParseDay("Day", c.Day, p.Today())
	check := meter.Check{Day: day, Meter: c.Meter, Crop: crop.ID, Name: c.Name, Reference: reference, Sample: at}
	return check, errors.Join(wrongCrop, wrongReference, c.readMeter(&check), wrongAt, wrongDay)
}

// readMeter reads what the meter showed: percent, or a dial with what its chart goes by.
func (c benchCheck) readMeter(check *meter.Check) (err error) {
	if c.Dial == "" {
		check.Reading, err = moistureNamed("Reading", c.Reading)
		return err
	}
	var wrong [3]error
	check.Dial, wrong[0] = moisture.DialField.Parse(c.Dial)
	check.Mass, wrong[1] = optional(moisture.MassField, c.Mass)
	if c.Weight != "" {
		check.TestWeight, wrong[2] = entry.ParseChartWeight(c.Weight)
	}
	return errors.Join(wrong[:]...)
}

// benchWithdraw takes a check of a meter back.
type benchWithdraw struct {
	terminal.BookFlags
	terminal.WhoFlags
	Meter  string `arg:"" optional:"" help:"The meter; without it, the only one there is." placeholder:"METER"`
	Check  int    `help:"Number of the check. Without it, the last one that stands." placeholder:"NUMBER"`
	Reason string `required:"" help:"What was wrong with it." placeholder:"WORDS"`
}

func (benchWithdraw) Help() string {
	return `A manager's act, for a figure that was typed wrong. The check stays in the book and counts nowhere.

    tenth bench withdraw bench-1 --check 4 --reason "typed 51 for 15" --who "Mae Orton"`
}

func (c benchWithdraw) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		id, err := onlyMeter(p, c.Meter)
		if err != nil || id == "" {
			return err
		}
		if c.Check == 0 {
			standing, err := office.MeterChecks(p, p.Desk, id)
			if err != nil {
				return err
			}
			if len(standing) > 0 {
				c.Check = standing[len(standing)-1].Seq
			}
		}
		if err := instruments.WithdrawCheck(p, p.Desk, id, c.Check, c.Reason); err != nil {
			return err
		}
		m, err := office.MeterByID(p, p.Desk, id)
		if err != nil {
			return err
		}
		s, err := office.MeterStatus(p, p.Desk, m)
		if err != nil {
			return err
		}
		p.Say("Check %d is withdrawn.", c.Check)
		p.Say("%s", s.Sentence)
		return nil
	})
}

// moistureNamed reads a moisture to the hundredth; name is for errors.
func moistureNamed(name, text string) (quantity.Amount, error) {
	f := moisture.MoistureField
	f.Name = name
	return f.Parse(text)
}

// meterLogFlags choose the checks of one meter.
type meterLogFlags struct {
	terminal.BookFlags
	Meter     string `arg:"" optional:"" help:"The meter; without it, the only one there is." placeholder:"METER"`
	Commodity string `aliases:"crop" help:"Only checks with this grain." placeholder:"GRAIN"`
	Last      int    `help:"Only the last so many checks." placeholder:"N"`
}

// withLog passes on the log of the meter. Where none is named and there is not exactly one, it
// lists the meters instead.
func (f meterLogFlags) withLog(t *terminal.Terminal, do func(*terminal.Session, office.MeterLog) error) error {
	return f.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		crop, err := cropNamed(f.Commodity)
		if err != nil {
			return err
		}
		meter, err := onlyMeter(p, f.Meter)
		if err != nil || meter == "" {
			return err
		}
		log, err := office.ReadMeterLog(p, p.Desk, meter, crop, f.Last)
		if err != nil {
			return err
		}
		return do(p, log)
	})
}

// benchBias prints the bias of a meter.
type benchBias struct {
	meterLogFlags
	Working bool           `help:"Print the whole working."`
	Width   terminal.Width `help:"Width of the printed working, in letters." default:"76"`
	JSON    bool           `help:"Print for programs: every figure as text."`
}

func (benchBias) Help() string {
	return `The mean error of the checks grain by grain, since a calibration belongs to one grain, and the interval that holds the true bias 95 times in 100. It is shown and argued with: no reading is changed for it.

    tenth bench bias bench-1 --last 10
    tenth bench bias bench-1 --commodity corn --working`
}

func (c benchBias) Run(t *terminal.Terminal) error {
	return c.withLog(t, func(p *terminal.Session, log office.MeterLog) error {
		if len(log.Biases) == 0 {
			return terminal.Refusal("Read a reference sample on it with \"tenth bench check\"", "meter %s has no such check under calibration %s", log.Meter.ID, log.Meter.Calibration)
		}
		if c.JSON {
			return p.PrintJSON(biasJSON(log))
		}
		for _, b := range log.Biases {
			p.Say("%s: %s", b.Grain, b.Sentence)
		}
		p.Say("")
		tellChart(p, log)
		for _, b := range log.Biases {
			if c.Working {
				p.Say("")
				p.Say("%s", b.Grain)
				fmt.Fprint(p.Stdout, b.Sheet.TextIn(int(c.Width), p.HousePrinter()))
			}
		}
		return nil
	})
}

// chartColumns is the width of the chart of errors.
const chartColumns = 41

// tellChart draws every check on a line, zero in the middle, the bars at the limit.
func tellChart(p *terminal.Session, log office.MeterLog) {
	edge := log.Chart.Edge
	p.Say("%-10s  %-12s %8s  %-*s%s", "Day", "Grain", "Error", chartColumns-len(edge.String()), edge.Neg(), edge)
	for _, point := range log.Chart.Points {
		row := make([]byte, chartColumns)
		for i := range row {
			row[i] = ' '
		}
		column := func(error quantity.Amount) int {
			at := 500 + quantity.Permille(log.Chart.Share(error).Div(quantity.Int(2, quantity.Plain)), quantity.HalfUp)
			return (at*(chartColumns-1) + 500) / 1000
		}
		row[chartColumns/2] = ':'
		if point.Limited {
			row[column(point.Limit.Neg())], row[column(point.Limit)] = '|', '|'
		}
		row[column(point.Check.Error())] = 'o'
		var outside message.Text
		if point.Outside {
			outside = message.New("  outside %s", point.Limit)
		}
		line := fmt.Sprintf("%-10s  %-12s %8s  %s%s", point.Check.Day, point.Check.Crop, signed(point.Check.Error()), row, p.Printer.Text(outside))
		p.Say("%s", strings.TrimRight(line, " "))
	}
}

func biasJSON(log office.MeterLog) map[string]any {
	checks := []map[string]any{}
	for _, p := range log.Chart.Points {
		checks = append(checks, map[string]any{
			"day": p.Check.Day.String(), "crop": p.Check.Crop, "name": p.Check.Name, "reference": p.Check.Reference.String(), "reading": p.Check.Reading.String(),
			"error": p.Check.Error().String(), "allowed": amountOrNone(p.Limited, p.Limit), "outside": p.Outside, "by": p.Check.By,
		})
	}
	biases := []map[string]any{}
	for _, b := range log.Biases {
		one := map[string]any{"crop": b.Crop, "references": fmt.Sprint(b.N), "mean": b.Mean.Value().String(), "shown": b.Shown, "sentence": b.Sentence, "working": b.Sheet}
		if b.SE != nil {
			one["standard_error"], one["low"], one["high"] = b.SE.Value().String(), b.Low.Value().String(), b.High.Value().String()
		}
		biases = append(biases, one)
	}
	return map[string]any{"meter": log.Meter.ID, "checks": checks, "biases": biases}
}

// benchLog writes a meter's log as a paper.
type benchLog struct {
	meterLogFlags
	terminal.LogFlags
}

func (benchLog) Help() string {
	return `For whoever examines the meter: its standing, every check against what is allowed, the bias with its working, and lines to sign on.

    tenth bench log bench-1
    tenth bench log bench-1 --out papers`
}

func (c benchLog) Run(t *terminal.Terminal) error {
	return c.withLog(t, func(p *terminal.Session, log office.MeterLog) error {
		return p.ShowLog(c.LogFlags, log.Paper(p.Profile(), p.Today()), "meter-"+log.Meter.ID)
	})
}

// cropNamed is the id of a grain by id or name; nothing where none is named.
func cropNamed(text string) (string, error) {
	if text == "" {
		return "", nil
	}
	known, err := entry.Commodity(text)
	return known.ID, err
}

// onlyMeter returns the meter named, or the only one of the elevator. Where there are several, or
// none, it lists them instead.
func onlyMeter(p *terminal.Session, named string) (string, error) {
	if named != "" {
		return named, nil
	}
	all, err := office.Meters(p, p.Desk)
	if err != nil {
		return "", err
	}
	if len(all) == 1 {
		return all[0].ID, nil
	}
	var rows [][]any
	for _, m := range all {
		rows = append(rows, []any{m.ID, m.Model, m.Calibration})
	}
	return "", p.Columns("Meter\tModel\tCalibration", rows, "No meter is entered. A manager enters one with \"tenth bench meter\".")
}
