package yard

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/scalehouse"
)

// Withdraw takes back a load that was never weighed.
type Withdraw struct {
	terminal.BookFlags
	terminal.WhoFlags
	Load loadName `arg:"" help:"The load, such as L12."`
}

func (Withdraw) Help() string {
	return `For a load written down by mistake. It is not counted as rejected; its number stays used. A load that was weighed is refused, with the reason.

    tenth withdraw L12`
}

func (c Withdraw) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		if err := scalehouse.Withdraw(p, p.Desk, string(c.Load)); err != nil {
			return err
		}
		p.Say("Load %s is withdrawn: it never came.", c.Load)
		return nil
	})
}
