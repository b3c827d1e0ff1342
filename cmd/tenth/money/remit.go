package money

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/office/money"
)

// levyRemit is what is to be handed on to funds.
type levyRemit struct {
	terminal.BookFlags
	terminal.DocumentFlags
	Levy string `arg:"" optional:"" help:"Only this levy." placeholder:"LEVY"`
	From string `help:"First day." placeholder:"YYYY-MM-DD"`
	To   string `help:"Last day." placeholder:"YYYY-MM-DD"`
}

func (levyRemit) Help() string {
	return `What settlement sheets have taken of each levy, to be handed on to its fund. A sheet that was void later is taken back on the day it was void.

    tenth levy remit indiana-corn --from 2026-10-01 --to 2026-12-31 --out papers --as pdf,csv`
}

func (c levyRemit) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		from, to, err := p.Span(c.From, c.To)
		if err != nil {
			return err
		}
		all, err := money.Remittance(p, p.Desk, c.Levy, from, to)
		if err != nil {
			return err
		}
		handed, err := money.Handovers(p, p.Desk)
		if err != nil {
			return err
		}
		name := "levies"
		if c.Levy != "" {
			name = terminal.FileName(c.Levy)
		}
		return p.ShowDocument(c.DocumentFlags, money.RemittancePaper(all, handed, p.Profile(), from, to, p.Today()), name, true)
	})
}
