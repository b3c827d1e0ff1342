package tickets

import (
	"cmp"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/cmd/tenth/yard"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// Reissue issues another ticket for the grain of a void one.
type Reissue struct {
	terminal.BookFlags
	terminal.WhoFlags
	Ticket terminal.TicketNumber `arg:"" help:"Number of the void ticket."`
	Reason string                `help:"Why; it stands on the new ticket. Without it, the reason of the void." placeholder:"WHY"`
	Yard   bool                  `help:"Only open the load on the yard, to be looked at and issued later."`
	inPlaceFlags
	terminal.PaperFlags
	terminal.AnswerFlags
}

func (Reissue) Help() string {
	return `A manager's act. The new ticket has everything the void one had, weights and sample with their own hours; flags say what is otherwise. It takes the next number and names the void ticket, which stays void on its day. A void ticket is reissued once.

    tenth reissue 1042
    tenth reissue 1042 --reason "printed afresh" --out slips
    tenth reissue 1042 --grower 107
    tenth reissue 1042 --yard`
}

func (c Reissue) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		old, err := office.Ticket(p, p.Desk, int64(c.Ticket))
		if err != nil {
			return err
		}
		id, number, err := c.reissue(p, old)
		if err != nil {
			return err
		}
		if c.Yard {
			p.Say("Load %s is open for the grain of ticket %d, void.", id, c.Ticket)
			return yard.SayStanding(p, id)
		}
		return handAfter(p, old, number, c.PaperFlags, c.AnswerFlags)
	})
}

// reissue opens the load, applies the typed changes and, unless it is to stay on the yard, issues
// its ticket, in one act.
func (c Reissue) reissue(p *terminal.Session, old *load.Load) (id string, number int64, err error) {
	change, err := c.read(p, old)
	if err != nil {
		return "", 0, err
	}
	err = p.Batch(p, func(w *scalehouse.Batch) error {
		if id, err = scalehouse.Reissue(p, w, int64(c.Ticket), cmp.Or(c.Reason, old.Ended.Reason)); err != nil {
			return err
		}
		if _, err := scalehouse.Enter(p, w, id, change); err != nil || c.Yard {
			return err
		}
		number, err = scalehouse.Issue(p, w, id)
		return err
	})
	return id, number, err
}
