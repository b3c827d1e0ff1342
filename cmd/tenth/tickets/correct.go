package tickets

import (
	"fmt"
	"text/tabwriter"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
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
}

func (Correct) Help() string {
	return `A manager's act. The new ticket starts with everything the old one had; flags say what was wrong. It takes the next number and refers to the old one; both are kept, and what changed is printed line by line.

    tenth correct 1042 --reason "tare read one line too high" --tare 24280 --manual "read from the indicator"
    tenth correct 1042 --reason "delivered for another grower" --grower 107
    tenth correct 1042 --reason "sample mixed up" --moisture 17.4 --factor bcfm=2.1`
}

func (c Correct) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		old, err := office.Ticket(p, p.Desk, int64(c.Ticket))
		if err != nil {
			return err
		}
		number, err := c.correct(p, old)
		if err != nil {
			return err
		}
		return handAfter(p, old, number, c.PaperFlags, c.AnswerFlags)
	})
}

// correct opens the correction, applies the typed changes and issues its ticket, in one act.
func (c Correct) correct(p *terminal.Session, old *load.Load) (number int64, err error) {
	if c.nothing() {
		return 0, terminal.Refusal("Say by flags what was wrong, such as --tare 24280", "nothing is changed by this correction of ticket %d", c.Ticket)
	}
	change, err := c.read(p, old)
	if err != nil {
		return 0, err
	}
	err = p.Batch(p, func(w *scalehouse.Batch) error {
		id, err := scalehouse.Correct(p, w, int64(c.Ticket), c.Reason)
		if err != nil {
			return err
		}
		if _, err := scalehouse.Enter(p, w, id, change); err != nil {
			return err
		}
		number, err = scalehouse.Issue(p, w, id)
		return err
	})
	return number, err
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
