package money

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/ratefiles"
)

// Levy are the deductions for others.
type Levy struct {
	List     levyList     `cmd:"" default:"withargs" help:"List the levies known, with the rule each follows."`
	Check    levyCheck    `cmd:"" help:"Check files of levies before they are used."`
	Remit    levyRemit    `cmd:"" help:"What is to be handed on to the funds for a span of days."`
	Owed     levyOwed     `cmd:"" help:"What each fund is owed, after what was handed on."`
	HandOn   levyHandOn   `cmd:"" help:"Write down what was handed on to a fund."`
	TakeBack levyTakeBack `cmd:"" help:"Take back a handover that was stopped or mistyped."`
}

func (Levy) Help() string {
	return `Levies are TOML files in the folder "levies" of the folder of rates; those of the program are published rules as they were read, and nobody has confirmed them.

    tenth levy
    tenth levy check our-levy.toml
    tenth levy remit --from 2026-10-01 --to 2026-12-31`
}

type levyList struct {
	terminal.BookFlags
	terminal.ListFlags
	Commodity string `help:"Only this grain, by id or name." placeholder:"GRAIN"`
}

func (levyList) Help() string { return `    tenth levy list --commodity corn` }

func (c levyList) Run(t *terminal.Terminal) error {
	known, err := ratefiles.ReadLevies(c.RatesFolder())
	if err != nil {
		return err
	}
	grain, err := terminal.OnlyGrain(c.Commodity)
	if err != nil {
		return err
	}
	rows := [][]any{}
	for _, l := range known.All() {
		if grain != "" && l.Commodity != grain {
			continue
		}
		confirmed := message.New("nobody")
		if l.IsConfirmed() {
			confirmed = message.New("%v on %s", l.ConfirmedBy, l.ConfirmedOn)
		}
		rows = append(rows, []any{l.ID, l.Commodity, l.Jurisdiction, l.Title, l.Rate.Amount, string(l.Base), l.Days(), l.Source, confirmed})
	}
	return (&terminal.Session{Terminal: t}).Table(c.ListFlags, "Levy\tGrain\tPlace\tTitle\tRate\tBase\tDays\tRule\tConfirmed by", rows, "No levy is known for that.")
}

type levyCheck struct {
	terminal.BookFlags
	File []string `arg:"" help:"Files to check." placeholder:"FILE"`
}

func (levyCheck) Help() string { return `    tenth levy check our-levy.toml` }

func (c levyCheck) Run(t *terminal.Terminal) error {
	given, err := ratefiles.OpenLevies(c.File)
	if err == nil {
		_, err = ratefiles.WithShippedLevies(given)
	}
	if err != nil {
		return err
	}
	for _, l := range given {
		t.Say("%s: levy %s is in order: %s of %s, %s.", l.File, l.ID, l.Rate.Amount, l.Commodity, l.Days())
	}
	return nil
}
