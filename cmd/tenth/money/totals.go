package money

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/office/money"
)

// paymentTotals are what growers sold and were paid in a span.
type paymentTotals struct {
	terminal.BookFlags
	terminal.DocumentFlags
	From string `help:"First day." placeholder:"YYYY-MM-DD"`
	To   string `help:"Last day." placeholder:"YYYY-MM-DD"`
}

func (paymentTotals) Help() string {
	return `By grower and grain: sheets, quantity, net market value, what was deducted, payable, and what was paid in these days, also on older sheets. For year's totals and patronage; no tax advice.

    tenth payment totals --from 2026-01-01 --to 2026-12-31 --out papers --as pdf,xlsx`
}

func (c paymentTotals) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		from, to, err := p.Span(c.From, c.To)
		if err != nil {
			return err
		}
		all, err := money.PayeeTotals(p, p.Desk, from, to)
		if err != nil {
			return err
		}
		return p.ShowDocument(c.DocumentFlags, money.PayeePaper(all, p.Profile(), p.GrainName, from, to, p.Today()), "totals", true)
	})
}
