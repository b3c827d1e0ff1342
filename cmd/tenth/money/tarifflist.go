package money

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/ratefiles"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/tariff"
)

type tariffList struct {
	terminal.BookFlags
	terminal.ListFlags
	On  string `help:"The day to list for. Without it, today." placeholder:"YYYY-MM-DD"`
	All bool   `help:"Also tariffs that are over, not yet in force, or corrected."`
}

func (tariffList) Help() string {
	return `    tenth tariff list
    tenth tariff list --on 2026-11-03 --all`
}

func (c tariffList) Run(t *terminal.Terminal) error {
	set, err := ratefiles.ReadTariffs(c.RatesFolder())
	if err != nil {
		return err
	}
	day, err := entry.ParseDay("On", c.On, t.LocalDate())
	if err != nil {
		return err
	}
	if day.IsZero() {
		day = t.LocalDate()
	}
	rows := [][]any{}
	for _, e := range set.All() {
		used, inForce := set.On(e.Dated().Line, day)
		if !c.All && (!inForce || used != e) {
			continue
		}
		mark := message.Text{}
		if e.Status == tariff.Example {
			mark = message.New(rates.ExampleMark)
		}
		rows = append(rows, []any{e.Commodity.ID, e.Schedule, e.ID, e.From, terminal.Or(e.Until.String(), message.New("no end")), stateOn(e, used, inForce, day), e.Hash[:12], mark})
	}
	return (&terminal.Session{Terminal: t}).Table(c.ListFlags, "Grain\tSchedule\tTariff\tFrom\tUntil\tStanding\tSHA-256\tMark", rows, "No tariff is in force for that.")
}

// stateOn tells whether a tariff is in force on a day.
func stateOn(e, used *tariff.Edition, inForce bool, day quantity.Date) message.Text {
	switch {
	case day.Before(e.From):
		return message.New("not yet")
	case !day.Between(e.From, e.Until):
		return message.New("ended")
	case inForce && used != e:
		return message.New("its correction counts: %v", used.ID)
	}
	return message.New("in force")
}
