package restoring

import (
	"context"
	"slices"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/slipcode"
	"tenthpoint/internal/title"
)

// Paper is the slip of a ticket that a lost book issued.
type Paper struct {
	Number int64
	load.Slip
	// Square is the content of its QR code; zero where nobody read it.
	Square scaleticket.Square
	// Net and Payable are figures typed from it; nil for those not typed.
	Net, Payable *quantity.Amount
}

// Texts are the facts of the square as texts of the fields of a load's form. Names are not in it, and
// nothing is where it had no room for all facts or is of the first format.
func (p Paper) Texts() map[string]string {
	c := p.Square.Code
	if c == nil || !c.Left.IsWhole() {
		return nil
	}
	texts := map[string]string{"commodity": c.Grain, "day": c.Day.String(), "moisture": c.Moisture.Written()}
	for _, d := range c.Drafts {
		texts[entry.WeightID(load.Gross, d.Name)] = d.Gross.Written()
		texts[entry.WeightID(load.Tare, d.Name)] = d.Tare.Written()
	}
	for _, r := range c.Sample {
		texts[string(r.Factor)] = resultText(r)
	}
	if len(c.Owners) == 0 {
		texts["terms"] = title.Terms{Under: c.Under}.Text()
		if c.Price != nil {
			texts["price"] = c.Price.Written()
		}
	}
	return texts
}

func resultText(r slipcode.Result) string {
	switch {
	case !r.IsSeen:
		return r.Amount.Written()
	case r.Present:
		return "y"
	}
	return "n"
}

// Enter enters a ticket again under its own number, from its slip and the facts of the load. What is
// worked out has to be what the paper says, line by line of its square or the figures typed; else
// nothing is written, unless a manager says why it differs.
func Enter(ctx context.Context, d *scalehouse.Desk, p Paper, facts entry.Facts) error {
	if err := scalehouse.MayAct(d, elevator.TicketActs, "enter a ticket from its slip"); err != nil {
		return err
	}
	if p.Unlike != "" {
		if err := d.MayManage("A ticket that differs from its slip"); err != nil {
			return err
		}
	}
	if err := p.check(); err != nil {
		return err
	}
	return d.Batch(ctx, func(w *scalehouse.Batch) error {
		missing, gone, err := scalehouse.AbsentIn(w)
		if err != nil {
			return err
		}
		if !slices.Contains(missing, p.Number) && !slices.Contains(gone, p.Number) {
			return notMissing(p.Number, missing)
		}
		id, err := scalehouse.Enter(ctx, w, "", facts)
		if err != nil {
			return err
		}
		return scalehouse.IssueAgain(w, id, p.Number, p.Slip, p.agrees)
	})
}

func (p Paper) check() error {
	switch {
	case p.Code == "":
		return message.Incomplete.Errorf("the code of ticket %d is not given. It is at the foot of the slip", p.Number)
	case p.At == "":
		return message.Incomplete.Errorf("the hour of ticket %d is not given. It is on the slip", p.Number)
	case p.Square.Ticket != 0 && p.Square.Ticket != p.Number:
		return message.Refused.Errorf("the square is of ticket %d, and the number given is %d. Is it the right slip?", p.Square.Ticket, p.Number)
	case p.Square.Ticket == 0 && p.Net == nil:
		return message.Incomplete.Errorf("ticket %d has no figure to be held against its slip. Type the net weight from it, and what was payable, or read its square", p.Number)
	}
	return nil
}

// agrees returns what of a settlement differs from the paper.
func (p Paper) agrees(s *settle.Settlement) error {
	if p.Unlike != "" {
		return nil
	}
	differs, err := p.differences(s)
	if err != nil || len(differs) == 0 {
		return err
	}
	return message.Errs(message.Refused, append(differs, message.New("Look at what was typed; where the paper is right all the same, a manager says why it differs")))
}

func (p Paper) differences(s *settle.Settlement) ([]message.Text, error) {
	sum, err := s.Summary()
	if err != nil {
		return nil, err
	}
	var out []message.Text
	compare := func(what message.Text, paper *quantity.Amount, worked quantity.Amount) {
		if paper != nil && !paper.Equal(worked) {
			out = append(out, message.New("%s: the slip says %s, and it works out as %s", what, *paper, worked))
		}
	}
	compare(message.New("Net"), p.Net, sum.ScaleNet)
	compare(message.New("Payable"), p.Payable, sum.Payable)
	switch {
	case p.Square.Code != nil:
		for _, line := range p.Square.Code.Compare(s) {
			if line.Step == nil {
				out = append(out, message.New("%s: the slip says %s, and there is no such line", line.Label(), line.Said))
			} else if !line.IsSame() {
				compare(line.Label(), &line.Said, line.Step.Value())
			}
		}
	case p.Square.Ticket != 0:
		dry, _ := sum.DryQuantity()
		compare(message.New("Net"), &p.Square.Net, sum.ScaleNet)
		compare(message.New("Dry quantity"), &p.Square.Dry, dry)
	}
	return out, nil
}
