package bins

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/bin"
	"tenthpoint/internal/office/binlog"
)

type keeps struct {
	terminal.BookFlags
	terminal.ListFlags
	Bin string `arg:"" help:"Short name of the bin."`
	Day string `help:"The day it is told of. Without it, today." placeholder:"YYYY-MM-DD"`
}

func (keeps) Help() string {
	return `Each layer by the first published table of its grain: the days it has lain, at the temperatures that were read in the bin, use up its time; what is left is at the last of them. Days before the first reading count at its temperature, and of several places the warmest counts. The signs for turning are common practice: half of its time used, or a reading warmer than the one before by 5 degrees Fahrenheit.

    tenth bin temperatures B1 --reading 51F --reading 58F
    tenth bin keeps B1`
}

func (c keeps) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadBins, "", func(p *terminal.Session) error {
		day, err := p.DayOrToday(c.Day)
		if err != nil {
			return err
		}
		k, err := binlog.KeepsIn(p, p.Desk, c.Bin, day)
		if err != nil {
			return err
		}
		rows := make([][]any, len(k.Layers))
		for i, l := range k.Layers {
			rows[i] = []any{p.GrainName(l.Commodity), l.Filled, l.Grain.Oldest, l.Grain.Weight, "", "", "", l.Why}
			if l.Why.IsZero() {
				rows[i] = []any{p.GrainName(l.Commodity), l.Filled, l.Grain.Oldest, l.Grain.Weight, l.Moisture, l.Used, l.Left, l.Table}
			}
		}
		if err := p.Table(c.ListFlags, "Grain\tFilled\tOldest\tWeight\tMoisture\tTime used\tLeft\tBy", rows, "The bin is empty."); err != nil || c.JSON {
			return err
		}
		for _, look := range k.Looks {
			p.Say("%s", look)
		}
		p.Say("This is advice, not a promise: look at the grain, and measure its temperature and moisture again.")
		p.Say("%s", bin.HotGrain.Said())
		return nil
	})
}
