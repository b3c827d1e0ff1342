package main

import (
	"tenthpoint/internal/entry"
	"tenthpoint/internal/office"
)

// positionCommand shows what is in the house.
type positionCommand struct {
	bookFlags
	documentFlags
	From string `help:"First day to tell of. Without it, the last day." placeholder:"YYYY-MM-DD"`
	To   string `help:"The day whose evening is shown. Without it, today." placeholder:"YYYY-MM-DD"`
}

func (positionCommand) Help() string {
	return `Grain by commodity and bin: what was settled coming in, less what was weighed going out. Each day begins with what the day before ended with.

    tenth position
    tenth position --from 2026-10-01 --to 2026-10-31 --out papers --as xlsx`
}

func (c positionCommand) Run(t *terminal) error {
	return c.at(t, reading, "", func(p *post) error {
		to, err := p.dayOrToday(c.To)
		if err != nil {
			return err
		}
		from, err := entry.ParseDay("From", c.From)
		if err != nil {
			return err
		}
		if from.IsZero() {
			from = to
		}
		doc, err := office.PositionPaper(p, p.Desk, from, to)
		if err != nil {
			return err
		}
		return p.document(c.documentFlags, doc, "position-"+to.String(), false)
	})
}
