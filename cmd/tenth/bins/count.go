package bins

import (
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/bin"
	"tenthpoint/internal/bin/shape"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/quantity"
)

type measured struct {
	moving
	Bin        string `arg:"" help:"Bin that was measured."`
	Depth      string `help:"Level depth at the wall, from the lowest point; ft unless it says m." placeholder:"LENGTH"`
	Peak       string `help:"How high the grain is heaped above it; below zero for a hole. Without it, level." placeholder:"LENGTH"`
	PeakGuess  bool   `name:"peak-unknown" help:"Take the official peak of dry clean grain: 0.4 of the radius for corn, 0.5 for soybeans."`
	TestWeight string `required:"" help:"Test weight of the grain." placeholder:"WEIGHT"`
	Pack       string `help:"Pack, in percent." placeholder:"PERCENT"`
	PackTable  string `help:"The table the pack is from." placeholder:"TEXT"`
	Post       bool   `help:"Make the book say what was measured. A manager's act."`
}

func (measured) Help() string {
	return `By the official measure of the Iowa Grain Warehouse Bureau: diameter x diameter x depth x 0.7854 x 0.80385 bushels, a cone as a third. The result stands against the book; a difference is explained with --reason, or posted by a manager.

    tenth bin measure B1 --depth 18.5 --peak 4 --test-weight 56.5 --pack 4.2 --pack-table "state table, 1998" --reason "month's end"`
}

func (c measured) Run(t *terminal.Terminal) error {
	return c.enter(t, bin.MeasureUp, c.Bin, func(p *terminal.Session, m *bin.Movement) error {
		measure := shape.Measure{PeakGuessed: c.PeakGuess, PackSource: c.PackTable}
		var err error
		if measure.Depth, err = length("Depth", c.Depth); err != nil {
			return err
		}
		if measure.Peak, err = length("Peak", c.Peak); err != nil {
			return err
		}
		if measure.TestWeight, err = figure("Test weight", c.TestWeight, quantity.LbPerBushel, quantity.KgPerHL); err != nil {
			return err
		}
		if measure.Pack, err = figure("Pack", c.Pack, quantity.Percent); err != nil {
			return err
		}
		m.Count = &bin.Count{Bin: c.Bin, Measure: &measure, Posted: c.Post}
		return nil
	})
}

type weighed struct {
	moving
	Bin    string `arg:"" help:"Bin that was weighed over."`
	Weight string `arg:"" help:"What it really holds."`
}

func (weighed) Help() string {
	return `The grain was run over a scale, or a bin stands empty: the book is made to say so. A manager's act, with a reason.

    tenth bin weigh-over B2 0 --reason "swept out" --who "Mae Orton"`
}

func (c weighed) Run(t *terminal.Terminal) error {
	return c.enter(t, bin.WeighOver, c.Bin, func(p *terminal.Session, m *bin.Movement) error {
		w, err := weight(p, "Weight", c.Weight)
		m.Count = &bin.Count{Bin: c.Bin, Counted: w, Posted: true}
		return err
	})
}

type writeOff struct {
	moving
	Bin    string `arg:"" help:"Bin it is written off from."`
	Weight string `arg:"" help:"Weight."`
	As     string `help:"What the adjustment is: shrink, error, count or weighed." enum:"shrink,error,count,weighed," default:""`
}

// adjustments are the words typed for the four kinds of adjustment.
var adjustments = map[string]bin.Adjustment{
	"shrink": bin.ShrinkRecalculation, "error": bin.ErrorCorrection, "count": bin.AccountantsCount, "weighed": bin.WeighedInventory,
}

func (writeOff) Help() string {
	return `    tenth bin write-off B2 1200 --reason "spoiled at the hatch, fed" --who "Mae Orton"`
}

func (c writeOff) Run(t *terminal.Terminal) error {
	return c.enter(t, bin.WriteOff, c.Bin, func(p *terminal.Session, m *bin.Movement) error {
		w, err := weight(p, "Weight", c.Weight)
		m.From, m.Adjusts = one(c.Bin, w), adjustments[c.As]
		return err
	})
}

// temperature reads a temperature with F or C.
func temperature(text string) (quantity.Amount, error) {
	a, err := entry.Temperature("Temperature", strings.TrimSpace(text), quantity.Plain)
	if err == nil && !quantity.IsTemperature(a) {
		err = terminal.Refusal("Write it with F or C, like 52F", "%q has no scale", text)
	}
	return a, err
}
