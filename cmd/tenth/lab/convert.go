package lab

import (
	"fmt"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// benchConvert looks one reading up in a chart.
type benchConvert struct {
	terminal.RatesFlags
	terminal.LanguageFlag
	Commodity   string         `aliases:"crop" required:"" help:"The grain, by id or name." placeholder:"GRAIN"`
	Dial        string         `required:"" help:"Dial reading." placeholder:"DIVISIONS"`
	At          string         `required:"" help:"Temperature of the sample, with F or C." placeholder:"TEMPERATURE"`
	Mass        string         `help:"Grain weighed into the meter, in g." placeholder:"GRAMS"`
	Room        string         `help:"Temperature of the room, with F or C." placeholder:"TEMPERATURE"`
	TestWeight  string         `help:"Test weight, for charts that go by it too; lb/bu unless it says kg/hL." placeholder:"WEIGHT"`
	Chart       string         `help:"The chart, by id, where several would do." placeholder:"CHART"`
	Model       string         `help:"Model of the meter." placeholder:"WORDS"`
	Calibration string         `help:"Calibration of the meter." placeholder:"EDITION"`
	Round       string         `help:"How the moisture is rounded." default:"0.1 half-up"`
	Width       terminal.Width `help:"Width of the printed working, in letters." default:"76"`
	JSON        bool           `help:"Print for programs: every figure as text."`
}

func (benchConvert) Help() string {
	return `The four cells of the chart around the reading are shown, the part of the way between them, and one rounding at the end. The temperature is in the chart: it is never corrected for twice.

    tenth bench convert --commodity corn --dial 70 --at 65F --mass 250
    tenth bench convert --commodity barley --dial 62.5 --at 18C --test-weight 46.5`
}

func (c benchConvert) Run(t *terminal.Terminal) error {
	chart, err := c.chart(t)
	if err != nil {
		return err
	}
	reading, err := c.reading(t, chart)
	if err != nil {
		return err
	}
	round, err := quantity.ParseRounding(c.Round)
	if err != nil {
		return err
	}
	// The meter may be anyone's: its checks are unknown and not reported.
	equipment := moisture.Equipment{
		Charts:   mustSet(chart),
		Meters:   []meter.Meter{{ID: reading.Meter, Model: chart.Meter, Method: meter.ByDial, Calibration: chart.Calibration}},
		Statuses: map[string]meter.Status{reading.Meter: {State: meter.Good}},
	}
	sheet := &worksheet.Sheet{}
	house := moisture.Procedure{Policy: moisture.DefaultPolicy(), Trust: moisture.DefaultTrust(), Rounding: round}
	result, err := moisture.Tests{Readings: []moisture.Reading{reading}}.Determine(sheet, equipment, house)
	if err != nil {
		return err
	}
	return c.tell(t, chart, sheet, result)
}

func mustSet(c *chart.Chart) *chart.Set {
	set, err := chart.NewSet(c)
	if err != nil {
		panic(err) // one chart clashes with none
	}
	return set
}

func (c benchConvert) chart(t *terminal.Terminal) (*chart.Chart, error) {
	set, err := c.ReadCharts("")
	if err != nil {
		return nil, err
	}
	if c.Chart != "" {
		return set.ByID(c.Chart)
	}
	crop, err := entry.Commodity(c.Commodity)
	if err != nil {
		return nil, err
	}
	mass, err := optional(moisture.MassField, c.Mass)
	if err != nil {
		return nil, err
	}
	return chartFor(set, wanted{crop: crop.ID, meter: c.Model, calibration: c.Calibration, mass: mass, day: t.LocalDate()})
}

func (c benchConvert) reading(t *terminal.Terminal, chart *chart.Chart) (moisture.Reading, error) {
	crop, err := entry.Commodity(c.Commodity)
	if err != nil {
		return moisture.Reading{}, err
	}
	r := moisture.Reading{
		Seq: 1, Method: meter.ByDial, Crop: crop.ID, Day: t.LocalDate(), Tester: "typed at the terminal",
		Meter: "at hand", Calibration: chart.Calibration, Chart: chart.ID, Mass: chart.Mass,
	}
	typed := terminal.Texts{"mass": c.Mass, "dial": c.Dial, "temperature": c.At, "room": c.Room, "test-weight": c.TestWeight}
	return readTest(r, typed, "dial")
}

func (c benchConvert) tell(t *terminal.Terminal, chart *chart.Chart, sheet *worksheet.Sheet, result moisture.Result) error {
	flags := []moisture.Flag{}
	for _, f := range result.Flags {
		if f.Code != moisture.NoRoom { // not asked for here
			flags = append(flags, f)
		}
	}
	if c.JSON {
		return t.PrintJSON(map[string]any{
			"moisture": result.Moisture.Printed(), "chart": chart.ID, "example": chart.Example, "mass": chart.Mass.String(),
			"flags": flagsJSON(flags), "working": sheet,
		})
	}
	t.Say("Moisture %s, by chart %s.", result.Moisture.Printed(), chart.ID)
	tellFlags(t, flags)
	t.Say("")
	fmt.Fprint(t.Stdout, sheet.TextIn(int(c.Width), t.Printer))
	return nil
}

// flagJSON is one warning for programs.
type flagJSON struct {
	Code     string `json:"code"`
	Test     string `json:"test,omitempty"`
	Stops    bool   `json:"stops"`
	Sentence string `json:"sentence"`
}

func flagsJSON(flags []moisture.Flag) []flagJSON {
	out := []flagJSON{}
	for _, f := range flags {
		one := flagJSON{Code: string(f.Code), Stops: f.Stops(), Sentence: f.Sentence()}
		if f.Test > 0 {
			one.Test = fmt.Sprint(f.Test)
		}
		out = append(out, one)
	}
	return out
}

// tellFlags prints each flag with its name, and whether it stops the ticket.
func tellFlags(t *terminal.Terminal, flags []moisture.Flag) {
	for _, f := range flags {
		mark := message.New("Flag")
		if f.Stops() {
			mark = message.New("STOPS THE TICKET")
		}
		t.Say("%s (%s): %s", mark, f.Code, f.Sentence())
	}
}
