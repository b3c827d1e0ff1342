package day

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/office"
)

// Position prints the stock.
type Position struct {
	terminal.BookFlags
	terminal.DocumentFlags
	From string `help:"First day to tell of. Without it, the last day." placeholder:"YYYY-MM-DD"`
	To   string `help:"The day whose evening is shown. Without it, today." placeholder:"YYYY-MM-DD"`
}

func (Position) Help() string {
	return `Grain by commodity and bin: what was settled coming in, less what was weighed going out. Each day begins with what the day before ended with.

    tenth position
    tenth position --from 2026-10-01 --to 2026-10-31 --out papers --as xlsx`
}

func (c Position) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		to, err := p.DayOrToday(c.To)
		if err != nil {
			return err
		}
		from, err := entry.ParseDay("From", c.From, p.Today())
		if err != nil {
			return err
		}
		if from.IsZero() {
			from = to
		}
		if p.Today().Before(to) {
			return terminal.Refusal("Give a day up to today", "%s is ahead of today, %s: its position is not known yet", to, p.Today())
		}
		doc, err := office.PositionPaper(p, p.Desk, from, to)
		if err != nil {
			return err
		}
		return p.ShowDocument(c.DocumentFlags, doc, "position-"+to.String(), false)
	})
}
