package tickets

import (
	"context"
	"fmt"
	"text/tabwriter"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/rests"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/worksheet"
)

// Correct issues a ticket in place of a wrong one.
type Correct struct {
	terminal.BookFlags
	terminal.WhoFlags
	Ticket terminal.TicketNumber `arg:"" help:"Number of the wrong ticket."`
	Reason string                `required:"" help:"Why; it stands on both tickets." placeholder:"WHY"`
	inPlaceFlags
	terminal.PaperFlags
	terminal.AnswerFlags
	chainFlags
}

func (Correct) Help() string {
	return `A manager's act. The new ticket starts with everything the old one had; flags say what was wrong. It takes the next number and refers to the old one; both are kept, and what changed is printed line by line.

    tenth correct 1042 --reason "tare read one line too high" --tare 24280 --manual "read from the indicator"
    tenth correct 1042 --reason "delivered for another grower" --grower 107
    tenth correct 1042 --reason "sample mixed up" --moisture 17.4 --factor bcfm=2.1

A ticket that something rests on, such as a settlement sheet that paid for it, is not corrected alone. --propose prints what would follow, the difference of each owner in quantity and money, and writes nothing; --chain does it, as one act.

    tenth correct 1042 --reason "tare read one line too high" --tare 24280 --manual "read from the indicator" --propose`
}

func (c Correct) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		old, err := office.Ticket(p, p.Desk, int64(c.Ticket))
		if err != nil {
			return err
		}
		if c.Propose {
			return c.propose(p, old)
		}
		number, err := c.correct(p, old)
		if err != nil {
			return err
		}
		if err := handAfter(p, old, number, c.PaperFlags, c.AnswerFlags); err != nil || c.AnswerFlags.JSON {
			return err
		}
		return told(p, old.Number)
	})
}

// propose prints what would follow the correction.
func (c Correct) propose(p *terminal.Session, old *load.Load) error {
	change, err := c.change(p, old)
	if err != nil {
		return err
	}
	var follows []rests.Remade
	err = scalehouse.Try(p, p.Desk, func(w *scalehouse.Batch) error {
		if _, err := c.issue(p, w, change, scalehouse.CorrectWithChain); err != nil {
			return err
		}
		follows, err = scalehouse.FollowedIn(w, old.Number)
		return err
	})
	if err != nil {
		return err
	}
	return tellFollowed(p, follows)
}

// correct opens the correction, applies the typed changes and issues its ticket, in one act.
func (c Correct) correct(p *terminal.Session, old *load.Load) (number int64, err error) {
	change, err := c.change(p, old)
	if err != nil {
		return 0, err
	}
	open := scalehouse.Correct
	if c.Chain {
		open = scalehouse.CorrectWithChain
	}
	err = p.Batch(p, func(w *scalehouse.Batch) error {
		number, err = c.issue(p, w, change, open)
		return err
	})
	return number, err
}

// change is what was typed; a correction that changes nothing is none.
func (c Correct) change(p *terminal.Session, old *load.Load) (entry.Facts, error) {
	if c.nothing() {
		return entry.Facts{}, terminal.Refusal("Say by flags what was wrong, such as --tare 24280", "nothing is changed by this correction of ticket %d", c.Ticket)
	}
	return c.read(p, old)
}

// issue does it all within an act.
func (c Correct) issue(p *terminal.Session, w *scalehouse.Batch, change entry.Facts, open func(context.Context, scalehouse.Actor, int64, string) (string, error)) (int64, error) {
	id, err := open(p, w, int64(c.Ticket), c.Reason)
	if err != nil {
		return 0, err
	}
	if _, err := scalehouse.Enter(p, w, id, change); err != nil {
		return 0, err
	}
	return scalehouse.Issue(p, w, id)
}

// handAfter prints a ticket that replaced another, with its changes if a person reads it.
func handAfter(p *terminal.Session, old *load.Load, number int64, f terminal.PaperFlags, how terminal.AnswerFlags) error {
	l, err := office.Ticket(p, p.Desk, number)
	if err != nil {
		return err
	}
	if !how.JSON {
		if err := differences(p, old, l); err != nil {
			return err
		}
	}
	return p.HandOut(l, f, how)
}

// differences prints the changes of a ticket from the one it replaces, line by line.
func differences(p *terminal.Session, old, now *load.Load) error {
	before, err := office.Resettle(p, p.Desk, old)
	if err != nil {
		return err
	}
	after, err := office.Resettle(p, p.Desk, now)
	if err != nil {
		return err
	}
	if now.Reissues > 0 {
		p.Say("Ticket %d was issued in place of ticket %d, void: %s.", now.Number, old.Number, now.Why)
	} else {
		p.Say("Ticket %d corrects ticket %d: %s.", now.Number, old.Number, now.Why)
	}
	lines := worksheet.Compare(before.Sheet, after.Sheet)
	if len(lines) == 0 {
		p.Say("No figure of the settlement changed.")
	}
	w := tabwriter.NewWriter(p.Stdout, 0, 0, 2, ' ', 0)
	for _, d := range lines {
		sign := ""
		if d.Change.Sign() > 0 {
			sign = "+"
		}
		fmt.Fprintf(w, "  %s\t%s ->\t%s\t%s%s\n", d.Label, printed(before.Sheet, d), printed(after.Sheet, d), sign, d.Change)
	}
	fmt.Fprintln(w)
	return w.Flush()
}

// printed is a line's figure on one of two sheets; "none" on the one without
// it.
func printed(s *worksheet.Sheet, d worksheet.Difference) string {
	if step, ok := s.Step(d.ID); ok {
		return step.Printed()
	}
	return "none"
}
