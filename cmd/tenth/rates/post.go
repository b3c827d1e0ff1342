package rates

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/office/posting"
)

// ratesPost makes the paper of an edition.
type ratesPost struct {
	terminal.BookFlags
	terminal.DocumentFlags
	Edition string `arg:"" help:"The edition, by id or file." placeholder:"EDITION"`
}

func (ratesPost) Help() string {
	return `All that the edition says, for the door and the window of the scale house, with the fingerprint of the key that signs slips.

    tenth rates post corn-main-2026
    tenth rates post our-corn.toml --out papers`
}

func (c ratesPost) Run(t *terminal.Terminal) error {
	e, err := editionNamed(t, c.BookFlags, c.Edition)
	if err != nil {
		return err
	}
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		notice, err := posting.Rates(p, p.Desk, e)
		if err != nil {
			return err
		}
		return p.ShowDocument(c.DocumentFlags, notice, "rates-"+terminal.FileName(e.ID), false)
	})
}
