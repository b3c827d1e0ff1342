package day

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/office"
)

// Account shows a grower's account.
type Account struct {
	terminal.BookFlags
	terminal.DocumentFlags
	Grower string `arg:"" help:"The grower, by code or name; a landlord's own part of others' loads." placeholder:"CODE"`
	From   string `help:"First day of the season." placeholder:"YYYY-MM-DD"`
	To     string `help:"Last day of the season." placeholder:"YYYY-MM-DD"`
}

func (Account) Help() string {
	return `Every figure is the grower's own part. Days are those the tickets count on; without them all tickets are shown.

    tenth account 102
    tenth account 901 --from 2026-08-01 --to 2027-07-31 --out papers --as pdf,csv`
}

func (c Account) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		from, to, err := p.Span(c.From, c.To)
		if err != nil {
			return err
		}
		id, err := p.GrowerID(c.Grower)
		if err != nil {
			return err
		}
		doc, err := office.Statement(p, p.Desk, id, from, to)
		if err != nil {
			return err
		}
		return p.ShowDocument(c.DocumentFlags, doc, "account-"+terminal.FileName(id), true)
	})
}
