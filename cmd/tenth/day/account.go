package day

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
)

// Account shows a grower's account.
type Account struct {
	terminal.BookFlags
	terminal.DocumentFlags
	Grower string `arg:"" optional:"" help:"The grower, by code or name; a landlord's own part of others' loads." placeholder:"CODE"`
	From   string `help:"First day of the season." placeholder:"YYYY-MM-DD"`
	To     string `help:"Last day of the season." placeholder:"YYYY-MM-DD"`
	All    bool   `help:"The accounts of all growers with tickets, into the folder of --out."`
}

func (Account) Help() string {
	return `Every figure is the grower's own part. Days are those the tickets count on; without them all tickets are shown.

    tenth account 102
    tenth account 901 --from 2026-08-01 --to 2027-07-31 --out papers --as pdf,csv
    tenth account --all --out statements`
}

func (c Account) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		from, to, err := p.Span(c.From, c.To)
		if err != nil {
			return err
		}
		growers, err := c.growers(p)
		if err != nil {
			return err
		}
		for _, id := range growers {
			if err := c.one(p, id, from, to); err != nil {
				return err
			}
		}
		return nil
	})
}

// growers are the codes of those whose accounts are asked for.
func (c Account) growers(p *terminal.Session) ([]string, error) {
	switch {
	case c.All && c.Grower != "":
		return nil, terminal.Refusal("Name the grower, or type --all", "one grower and all growers are asked for")
	case c.All && c.Out == "":
		return nil, terminal.Refusal("Name a folder with --out", "the accounts of all growers are many papers")
	case c.All:
		cards, err := office.Growers(p, p.Desk)
		if err != nil {
			return nil, err
		}
		codes := make([]string, len(cards))
		for i, card := range cards {
			codes[i] = card.ID
		}
		return codes, nil
	}
	id, err := p.GrowerID(c.Grower)
	return []string{id}, err
}

func (c Account) one(p *terminal.Session, id string, from, to quantity.Date) error {
	account, err := office.Account(p, p.Desk, id, from, to)
	if err != nil || c.All && len(account.Parts) == 0 {
		return err
	}
	return p.ShowDocument(c.DocumentFlags, daysheet.ComposeAccount(account, p.Profile()), "account-"+terminal.FileName(id), true)
}
