package main

import (
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// voidCommand cancels a ticket.
type voidCommand struct {
	bookFlags
	whoFlags
	Ticket ticketNumber `arg:"" help:"Number of the ticket."`
	Reason string       `required:"" help:"Why; it stands on every later copy." placeholder:"WHY"`
	JSON   bool         `help:"Print for programs: every figure as text."`
}

func (voidCommand) Help() string {
	return `A manager's act. The number and all copies stay; the void counts in today's sheet.

    tenth void 1042 --reason "weighed with the driver on" --who "Mae Orton"`
}

func (c voidCommand) Run(t *terminal) error {
	return c.at(t, writing, c.Who, func(p *post) error {
		if err := scalehouse.Void(p, p.Desk, int64(c.Ticket), c.Reason); err != nil {
			return err
		}
		if c.JSON {
			l, err := office.Ticket(p, p.Desk, int64(c.Ticket))
			if err != nil {
				return err
			}
			out, err := p.ticketJSON(l)
			if err != nil {
				return err
			}
			return p.asJSON(out)
		}
		p.say("Ticket %d is void. Its number and copies are kept.", c.Ticket)
		p.say("\"tenth reissue %d\" issues another for the same grain.", c.Ticket)
		return nil
	})
}
