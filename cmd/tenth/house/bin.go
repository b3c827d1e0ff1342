package house

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// Bin keeps the list of pits and bins.
type Bin struct {
	Add  binAdd  `cmd:"" help:"Add a pit or bin, or change one."`
	List binList `cmd:"" default:"withargs" help:"List pits and bins."`
}

type binAdd struct {
	terminal.BookFlags
	terminal.WhoFlags
	Short     string `arg:"" help:"Short name, as clerks type it."`
	Name      string `arg:"" help:"Name."`
	Commodity string `help:"Grain it is kept for." placeholder:"GRAIN"`
}

func (binAdd) Help() string {
	return `    tenth bin add P1 "Pit 1"
    tenth bin add B3 "Bin 3, wet corn" --commodity corn`
}

func (c binAdd) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		b := elevator.Bin{ID: c.Short, Name: c.Name}
		if c.Commodity != "" {
			grain, err := entry.Commodity(c.Commodity)
			if err != nil {
				return err
			}
			b.Commodity = grain.ID
		}
		if err := scalehouse.SetBin(p, p.Desk, b); err != nil {
			return err
		}
		p.Say("%s, %s, is written down.", b.ID, b.Name)
		return nil
	})
}

type binList struct {
	terminal.BookFlags
	terminal.ListFlags
}

func (c binList) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		all, err := office.Bins(p, p.Desk)
		if err != nil {
			return err
		}
		rows := [][]any{}
		for _, b := range all {
			rows = append(rows, []any{b.ID, b.Name, b.Commodity})
		}
		return p.Table(c.ListFlags, "Short\tName\tGrain", rows, "No pit or bin is written down yet.")
	})
}
