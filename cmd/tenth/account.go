package main

import (
	"tenthpoint/internal/entry"
	"tenthpoint/internal/office"
)

// accountCommand shows a grower's account.
type accountCommand struct {
	bookFlags
	documentFlags
	Grower string `arg:"" help:"The grower, by code; a landlord's own part of others' loads." placeholder:"CODE"`
	From   string `help:"First day of the season." placeholder:"YYYY-MM-DD"`
	To     string `help:"Last day of the season." placeholder:"YYYY-MM-DD"`
}

func (accountCommand) Help() string {
	return `Every figure is the grower's own part. Days are those the tickets count on; without them all tickets are shown.

    tenth account 102
    tenth account 901 --from 2026-08-01 --to 2027-07-31 --out papers --as pdf,csv`
}

func (c accountCommand) Run(t *terminal) error {
	return c.at(t, reading, "", func(p *post) error {
		from, err := entry.ParseDay("From", c.From)
		if err != nil {
			return err
		}
		to, err := entry.ParseDay("To", c.To)
		if err != nil {
			return err
		}
		doc, err := office.Statement(p, p.Desk, c.Grower, from, to)
		if err != nil {
			return err
		}
		return p.document(c.documentFlags, doc, "account-"+fileName(c.Grower), true)
	})
}
