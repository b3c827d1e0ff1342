package tickets

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// Void cancels a ticket.
type Void struct {
	terminal.BookFlags
	terminal.WhoFlags
	Ticket terminal.TicketNumber `arg:"" help:"Number of the ticket."`
	Reason string                `required:"" help:"Why; it stands on every later copy." placeholder:"WHY"`
	JSON   bool                  `help:"Print for programs: every figure as text."`
	chainFlags
}

func (Void) Help() string {
	return `A manager's act. The number and all copies stay; the void counts in today's sheet.

    tenth void 1042 --reason "weighed with the driver on" --who "Mae Orton"

A ticket that something rests on, such as a settlement sheet that paid for it, is not voided alone. --propose prints what would follow, the difference of each owner in quantity and money, and writes nothing; --chain does it, as one act. What was paid stands: what is too much then is taken on the grower's next sheet.

    tenth void 1042 --reason "weighed twice" --propose
    tenth void 1042 --reason "weighed twice" --chain`
}

func (c Void) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		if c.Propose {
			follows, err := scalehouse.ProposeVoid(p, p.Desk, int64(c.Ticket), c.Reason)
			if err != nil {
				return err
			}
			return tellFollowed(p, follows)
		}
		void := scalehouse.Void
		if c.Chain {
			void = scalehouse.VoidWithChain
		}
		if err := void(p, p.Desk, int64(c.Ticket), c.Reason); err != nil {
			return err
		}
		if c.JSON {
			l, err := office.Ticket(p, p.Desk, int64(c.Ticket))
			if err != nil {
				return err
			}
			out, err := p.TicketJSON(l)
			if err != nil {
				return err
			}
			return p.PrintJSON(out)
		}
		p.Say("Ticket %d is void. Its number and copies are kept.", c.Ticket)
		p.Say("\"tenth reissue %d\" issues another for the same grain.", c.Ticket)
		return told(p, int64(c.Ticket))
	})
}
