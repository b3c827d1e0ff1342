package day

import (
	"slices"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/duelist"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/ratefiles"
)

// Due lists what falls due.
type Due struct {
	terminal.BookFlags
	terminal.ListFlags
	Day    string `arg:"" optional:"" help:"Day it is told of. Without it, today." placeholder:"YYYY-MM-DD"`
	Days   int    `default:"14" help:"How many days ahead." placeholder:"N"`
	Grower string `help:"Only this grower's, by code or name." placeholder:"GROWER"`
}

func (Due) Help() string {
	return `Grain to be decided, contracts to be signed or delivered, sold grain and settlement sheets to be paid, free storage that ends, samples kept long enough, disputes: one list by day, what has passed first, each with what becomes of it then. Days of the law are those of the elevator's place, where that was read; the program is no legal advice.

    tenth due
    tenth due 2026-12-24 --days 30 --grower 103
    tenth setup --place illinois --who "Mae Orton"`
}

func (c Due) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		day, err := p.DayOrToday(c.Day)
		if err != nil {
			return err
		}
		if c.Days < 0 || c.Days > mostDays {
			return terminal.Refusal("Write a number of days from 0 to 3660", "--days is %d", c.Days)
		}
		grower, err := p.OnlyGrower(c.Grower)
		if err != nil {
			return err
		}
		tariffs, err := ratefiles.ReadTariffs(c.RatesFolder())
		if err != nil {
			return err
		}
		all, err := duelist.Until(office.ReadNow(p, p.Desk), office.DueHouse(p.Desk, tariffs), day, day.AddDays(c.Days))
		if err != nil {
			return err
		}
		return c.list(p, all, grower, day)
	})
}

// mostDays is ten years, more than anything here waits.
const mostDays = 3660

func (c Due) list(p *terminal.Session, all []duelist.Due, grower string, day quantity.Date) error {
	all = slices.DeleteFunc(all, func(one duelist.Due) bool { return grower != "" && one.Grower != grower })
	head, rows := "Day\tDays left\tGrower\tWhat", [][]any{}
	for _, one := range all {
		row := []any{one.Day, quantity.Int(int64(day.DaysUntil(one.Day)), quantity.Plain), one.Grower, one.What}
		if c.JSON {
			row = append(row, string(one.Kind), one.IfPassed)
		}
		rows = append(rows, row)
	}
	if c.JSON {
		head += "\tKind\tIf it passes"
	}
	if err := p.Table(c.ListFlags, head, rows, "Nothing falls due in these days."); err != nil || c.JSON || len(all) == 0 {
		return err
	}
	p.Say("")
	p.Say("When the day passes:")
	for _, note := range duelist.Consequences(all) {
		p.Say("%s", note)
	}
	return nil
}
