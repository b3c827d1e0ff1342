package yard

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/office"
)

// Weigh writes weights down.
type Weigh struct {
	terminal.BookFlags
	terminal.WhoFlags
	Load loadName `arg:"" help:"The load, such as L12."`
	terminal.WeightFlags
	terminal.ConfirmFlags
}

func (Weigh) Help() string {
	return `A weight taken again replaces the one before, which stays on the record; the ticket waits for the reason.

    tenth weigh L12 --gross 52300 --manual "read from the indicator"
    tenth weigh L12 --stored-tare`
}

func (c Weigh) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		l, err := office.Load(p, p.Desk, string(c.Load))
		if err != nil {
			return err
		}
		if !c.Weighed() {
			return terminal.Refusal("Give --gross, --tare or --stored-tare", "no weight was given for load %s", l.ID)
		}
		answers, err := c.ConfirmFlags.Texts()
		if err != nil {
			return err
		}
		form, err := p.Entered(p.Form(l, "", c.WeightFlags), c.WeightFlags.Texts(), answers)
		if err != nil {
			return err
		}
		return record(p, l.ID, form)
	})
}
