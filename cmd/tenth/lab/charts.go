package lab

import (
	"fmt"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/ratefiles"
	"tenthpoint/schedules"
)

// benchCharts shows the moisture charts.
type benchCharts struct {
	List  chartsList  `cmd:"" default:"withargs" help:"List the charts in use."`
	Show  chartsShow  `cmd:"" help:"Show a chart."`
	Check chartsCheck `cmd:"" help:"Check chart files before they are used."`
}

type chartsList struct {
	terminal.BookFlags
	JSON bool `help:"Print for programs: every figure as text."`
}

func (chartsList) Help() string {
	return `Charts are files, TOML or CSV, in the subfolder "charts" of the folder of rates; the examples inside the program are listed too.

    tenth bench charts list`
}

// chartJSON is a chart for programs.
type chartJSON struct {
	ID          string     `json:"id"`
	Title       string     `json:"title"`
	Crop        string     `json:"crop"`
	Meter       string     `json:"meter"`
	Calibration string     `json:"calibration"`
	Mass        string     `json:"mass"`
	Moisture    string     `json:"moisture"`
	Ambient     string     `json:"ambient"`
	Apart       string     `json:"max_meter_to_grain"`
	From        string     `json:"from"`
	Until       string     `json:"until,omitempty"`
	Example     bool       `json:"example"`
	Document    string     `json:"document"`
	Hash        string     `json:"sha256"`
	Cells       [][]string `json:"cells,omitempty"`
}

func chartForJSON(c *chart.Chart) chartJSON {
	return chartJSON{
		ID: c.ID, Title: c.Title, Crop: c.Crop, Meter: c.Meter, Calibration: c.Calibration, Mass: c.Mass.String(), Moisture: c.Moisture.String(),
		Ambient: c.Ambient.String(), Apart: c.MaxDifference.String(), From: c.From.String(), Until: c.Until.String(), Example: c.Example,
		Document: c.Origin.Document, Hash: c.Hash,
	}
}

// chartsOf is the charts beside the book, if there is a book.
func chartsOf(f terminal.BookFlags) (*chart.Set, error) {
	path, err := f.BookPath()
	if err != nil {
		path = ""
	}
	return f.ReadCharts(path)
}

func (c chartsList) Run(t *terminal.Terminal) error {
	set, err := chartsOf(c.BookFlags)
	if err != nil {
		return err
	}
	all, rows := []chartJSON{}, [][]any{}
	for _, chart := range set.All() {
		all = append(all, chartForJSON(chart))
		rows = append(rows, []any{chart.ID, chart.Crop, chart.Mass, chart.Meter, chart.Calibration, chart.Moisture, chart.From, terminal.Or(chart.Until.String(), message.New("no end")), exampleWords(chart)})
	}
	if c.JSON {
		return t.PrintJSON(all)
	}
	return (&terminal.Session{Terminal: t}).Columns("Chart\tGrain\tMass\tMeter\tCalibration\tAnswers for\tFrom\tUntil\t", rows, "No chart is in use.")
}

func exampleWords(c *chart.Chart) message.Text {
	if c.Example {
		return message.New("example - not for trade")
	}
	return message.Text{}
}

type chartsShow struct {
	terminal.BookFlags
	ID   string `arg:"" help:"The chart." placeholder:"CHART"`
	CSV  bool   `help:"Print it as lines for a spreadsheet; the file can be used as a chart."`
	JSON bool   `help:"Print for programs: every figure as text."`
}

func (chartsShow) Help() string {
	return `As the printed chart has it: dial readings down, sample temperatures across.

    tenth bench charts show example-corn-250g
    tenth bench charts show example-corn-250g --csv > corn.csv`
}

func (c chartsShow) Run(t *terminal.Terminal) error {
	set, err := chartsOf(c.BookFlags)
	if err != nil {
		return err
	}
	chart, err := set.ByID(c.ID)
	if err != nil {
		return err
	}
	switch {
	case c.CSV:
		fmt.Fprint(t.Stdout, string(chart.Lines()))
		return nil
	case c.JSON:
		out := chartForJSON(chart)
		for i := range chart.Dials() {
			var row []string
			for j := range chart.Temperatures() {
				row = append(row, chart.Cell(i, j).String())
			}
			out.Cells = append(out.Cells, row)
		}
		return t.PrintJSON(out)
	}
	t.Say("%s: %s. %s", chart.ID, chart.Name(), exampleWords(chart))
	t.Say("Answers for %s. Meter at %s, grain no more than %s from it.", chart.Moisture, chart.Ambient, chart.MaxDifference)
	t.Say("In use from %s, %s. From %s: %s.", chart.From, terminal.Or(chart.Until.String(), message.New("without an end")), chart.Origin.By, chart.Origin.Document)
	if unit, needs := chart.NeedsTestWeight(); needs {
		t.Say("Goes by test weight too, in %s.", unit)
	}
	return c.cells(t, chart)
}

func (c chartsShow) cells(t *terminal.Terminal, chart *chart.Chart) error {
	head := "dial"
	for _, at := range chart.Temperatures() {
		head += "\t" + at.String()
	}
	var rows [][]any
	for i, dial := range chart.Dials() {
		row := []any{dial.Figure()}
		for j := range chart.Temperatures() {
			row = append(row, chart.Cell(i, j).In(quantity.Plain).Written())
		}
		rows = append(rows, row)
	}
	return (&terminal.Session{Terminal: t}).Columns(head, rows, "")
}

type chartsCheck struct {
	File []string `arg:"" help:"Files, TOML or CSV." placeholder:"FILE"`
}

func (chartsCheck) Help() string {
	return `Every mistake in every file is told with its line and what to do. The files are also held against each other.

    tenth bench charts check schedules/charts/corn.csv

A chart as CSV has a line of table, key and value for everything said about it, then the printed table as it stands; "tenth bench charts show CHART --csv" writes one out:

    chart,id,our-corn-250g
    chart,title,"Corn under 20 %, 250 g"
    chart,mass,250 g
    moisture,low,8 %
    origin,by,who issued it
    dial,40 °F,50 °F,60 °F
    20,8.28,8.04,7.80
    25,9.21,8.96,8.71
    test weight lb/bu,add pt
    44,0.2`
}

func (c chartsCheck) Run(t *terminal.Terminal) error {
	set, err := schedules.ChartsFrom(c.File, func(name string) ([]byte, error) {
		text, err := ratefiles.ReadText(name)
		if err != nil {
			return nil, terminal.Refusal("Check the name of the file", "%v", err)
		}
		return text, nil
	})
	if err != nil {
		return err
	}
	for _, chart := range set.All() {
		t.Say("%s: chart %s is in order: %s, %d rows of %d cells.", chart.File, chart.ID, chart.Name(), len(chart.Dials()), len(chart.Temperatures()))
	}
	return nil
}
