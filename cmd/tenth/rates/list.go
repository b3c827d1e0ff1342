package rates

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
)

// ratesList lists editions.
type ratesList struct {
	terminal.BookFlags
	On        string `help:"The day to list for. Without it, today." placeholder:"YYYY-MM-DD"`
	Commodity string `help:"Only this grain, by id or name." placeholder:"GRAIN"`
	Schedule  string `help:"Only this schedule." placeholder:"NAME"`
	All       bool   `help:"Also editions that are over, not yet in force, or corrected."`
	JSON      bool   `help:"Print for programs: every figure as text."`
}

func (ratesList) Help() string {
	return `    tenth rates list
    tenth rates list --on 2025-11-03 --commodity corn
    tenth rates list --all --json`
}

func (c ratesList) Run(t *terminal.Terminal) error {
	set, err := editionsOf(t, c.BookFlags)
	if err != nil {
		return err
	}
	day, err := dayOrToday(t, c.On)
	if err != nil {
		return err
	}
	grain, err := terminal.OnlyGrain(c.Commodity)
	if err != nil {
		return err
	}
	all, rows := []editionJSON{}, [][]any{}
	for _, e := range set.All() {
		state, used := stateOn(set, e, day)
		if grain != "" && e.Commodity.ID != grain || c.Schedule != "" && e.Schedule != c.Schedule || !c.All && !used {
			continue
		}
		one := editionForJSON(e)
		one.State = state.String()
		all = append(all, one)
		rows = append(rows, []any{e.Commodity.ID, e.Schedule, e.ID, e.From, terminal.Or(e.Until.String(), message.New("no end")), state, e.Hash[:12], exampleMark(e)})
	}
	if c.JSON {
		return t.PrintJSON(all)
	}
	return (&terminal.Session{Terminal: t}).Columns("Grain\tSchedule\tEdition\tFrom\tUntil\tOn "+day.String()+"\tSHA-256\t", rows, "No edition is in force for that.")
}

// inForce is the state of an edition that loads of the day are settled under.
var inForce = message.New("in force")

// stateOn returns the state of an edition on a day, and whether loads of that day are settled under it.
func stateOn(set *rates.Set, e *rates.Edition, day quantity.Date) (state message.Text, used bool) {
	instead, err := set.On(e.Schedule, e.Commodity.ID, day)
	switch {
	case day.Before(e.From):
		return message.New("not yet"), false
	case !day.Between(e.From, e.Until):
		return message.New("over"), false
	case err == nil && instead != e && set.IsOffices(instead):
		return message.New("the head office's %v instead", instead.ID), false
	case err == nil && instead != e:
		return message.New("corrected by %v", instead.ID), false
	}
	return inForce, true
}

func exampleMark(e *rates.Edition) message.Text {
	if e.Status == rates.Example {
		return message.New(rates.ExampleMark)
	}
	return message.Text{}
}

// dayOrToday reads the day of --on; without one it is today.
func dayOrToday(t *terminal.Terminal, on string) (quantity.Date, error) {
	day, err := entry.ParseDay("On", on, t.LocalDate())
	if err == nil && day.IsZero() {
		day = t.LocalDate()
	}
	return day, err
}
