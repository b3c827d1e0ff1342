package day

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/office/growing"
)

// Production shows what farms have delivered.
type Production struct {
	terminal.BookFlags
	terminal.DocumentFlags
	Grower string `arg:"" optional:"" help:"Only this grower's, by code or name." placeholder:"GROWER"`
	From   string `help:"First day of delivery." placeholder:"YYYY-MM-DD"`
	To     string `help:"Last day of delivery." placeholder:"YYYY-MM-DD"`
}

func (Production) Help() string {
	return `Loads, net weight and settled quantity by grower, farm, field, grain and crop year, with each owner's part.

    tenth production 102 --from 2026-08-01
    tenth production --out papers --as pdf,csv`
}

func (c Production) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		from, to, err := p.Span(c.From, c.To)
		if err != nil {
			return err
		}
		id, err := p.OnlyGrower(c.Grower)
		if err != nil {
			return err
		}
		name := "production"
		if id != "" {
			name += "-" + terminal.FileName(id)
		}
		farms, err := growing.Production(p, p.Desk, id, from, to)
		if err != nil {
			return err
		}
		return p.ShowDocument(c.DocumentFlags, growing.Paper(p.Profile(), from, to, p.Today(), farms), name, true)
	})
}
