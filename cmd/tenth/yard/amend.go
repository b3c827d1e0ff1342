package yard

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/office"
)

// Amend changes the details of a load.
type Amend struct {
	terminal.BookFlags
	terminal.WhoFlags
	Load loadName `arg:"" help:"The load, such as L12."`
	terminal.DetailFlags
}

func (Amend) Help() string {
	return `    tenth amend L12 --grower 107 --bin P2`
}

func (c Amend) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		l, err := office.Load(p, p.Desk, string(c.Load))
		if err != nil {
			return err
		}
		if !c.Changed() {
			return terminal.Refusal("Say by flags what is to be changed, such as --bin P2", "nothing is changed of load %s", l.ID)
		}
		form, err := p.Entered(p.Form(l, "", terminal.WeightFlags{}), c.DetailFlags.Texts())
		if err != nil {
			return err
		}
		return record(p, l.ID, form)
	})
}
