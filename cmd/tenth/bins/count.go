package bins

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/bin"
)

type measured struct {
	moved
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
	return c.enter(t, bin.MeasureUp, map[string]string{
		"from": c.Bin, "depth": c.Depth, "peak": c.Peak, "peak-unknown": ticked(c.PeakGuess), "test-weight": c.TestWeight,
		"pack": c.Pack, "pack-table": c.PackTable, "post": ticked(c.Post),
	})
}

// ticked is the text of a field that is yes or left alone.
func ticked(yes bool) string {
	if yes {
		return "yes"
	}
	return ""
}

type weighed struct {
	moved
	Bin    string `arg:"" help:"Bin that was weighed over."`
	Weight string `arg:"" help:"What it really holds."`
}

func (weighed) Help() string {
	return `The grain was run over a scale, or a bin stands empty: the book is made to say so. A manager's act, with a reason.

    tenth bin weigh-over B2 0 --reason "swept out" --who "Mae Orton"`
}

func (c weighed) Run(t *terminal.Terminal) error {
	return c.enter(t, bin.WeighOver, map[string]string{"from": c.Bin, "counted": c.Weight})
}

type writeOff struct {
	moved
	Bin    string `arg:"" help:"Bin it is written off from."`
	Weight string `arg:"" help:"Weight."`
	As     string `help:"What the adjustment is: shrink, error, count or weighed." enum:"shrink,error,count,weighed," default:""`
}

func (writeOff) Help() string {
	return `    tenth bin write-off B2 1200 --reason "spoiled at the hatch, fed" --who "Mae Orton"`
}

func (c writeOff) Run(t *terminal.Terminal) error {
	return c.enter(t, bin.WriteOff, map[string]string{"from": c.Bin, "weight": c.Weight, "as": c.As})
}
