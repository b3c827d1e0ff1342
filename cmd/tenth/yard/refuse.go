package yard

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/scalehouse"
)

// Refuse turns a load away.
type Refuse struct {
	terminal.BookFlags
	terminal.WhoFlags
	Load   loadName `arg:"" help:"The load, such as L12."`
	Reason string   `required:"" help:"Why." placeholder:"WHY"`
}

func (Refuse) Help() string {
	return `    tenth refuse L12 --reason "hot and musty at the probe"`
}

func (c Refuse) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		if err := scalehouse.Refuse(p, p.Desk, string(c.Load), c.Reason); err != nil {
			return err
		}
		p.Say("Load %s is rejected.", c.Load)
		return nil
	})
}
