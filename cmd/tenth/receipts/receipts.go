// Package receipts has the commands of warehouse receipts.
package receipts

import (
	"fmt"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/office/receipts"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	acts "tenthpoint/internal/scalehouse/receipts"
)

// Receipt are the warehouse receipts.
type Receipt struct {
	List      list      `cmd:"" default:"withargs" help:"List the receipts."`
	Issue     issue     `cmd:"" help:"Issue a receipt for grain in open storage."`
	Surrender surrender `cmd:"" help:"Take a receipt in; its grain is in open storage again."`
	Cancel    cancel    `cmd:"" help:"End a receipt that was an error."`
	Replace   replace   `cmd:"" help:"Issue another in the place of a lost one; it bears the old number and day."`
	Blank     blank     `cmd:"" help:"Leave the next number blank on purpose."`
	Show      show      `cmd:"" help:"A receipt as a paper."`
	Register  register  `cmd:"" help:"The register: every number of the series."`
}

func (Receipt) Help() string {
	return `Receipts are of one series, each number accounted for. Grain on a receipt is not sold before the receipt is surrendered.

    tenth receipt issue 103 --ticket 12 --ticket 14=500 --negotiable --grade "US No. 2" --who "Mae Orton"
    tenth receipt surrender 1 --who "Mae Orton"
    tenth receipt register --out papers`
}

type list struct {
	terminal.BookFlags
	terminal.ListFlags
	Grower string `help:"Only this grower's, by code or name." placeholder:"GROWER"`
}

func (list) Help() string { return `    tenth receipt list --grower 103` }

func (c list) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		all, err := receipts.All(p, p.Desk)
		if err != nil {
			return err
		}
		grower, err := p.OnlyGrower(c.Grower)
		if err != nil {
			return err
		}
		rows := [][]any{}
		for _, r := range all {
			switch {
			case grower != "" && r.Grower != grower:
			case r.Blank != "":
				rows = append(rows, []any{r.Number, r.Day, "", "", "", "", "", r.Standing()})
			default:
				rows = append(rows, []any{r.Number, r.Day, r.Grower, r.Name, p.GrainName(r.Commodity), r.Class().Name(), r.Quantity(), r.Standing()})
			}
		}
		return p.Table(c.ListFlags, "Receipt\tDay\tGrower\tName\tGrain\tClass\tQuantity\tStanding", rows, "No receipt is issued yet.")
	})
}

type issue struct {
	terminal.BookFlags
	terminal.WhoFlags
	Grower     string   `arg:"" help:"The grower, by code or name." placeholder:"GROWER"`
	Ticket     []string `sep:"none" required:"" help:"A ticket, or a part of it; may be repeated." placeholder:"NUMBER or NUMBER=QUANTITY"`
	Negotiable bool     `help:"The grain is owed to whoever holds the paper."`
	Grade      string   `help:"The grade, as it was agreed." placeholder:"WORDS"`
}

func (issue) Help() string {
	return `A manager's act. A receipt is issued for grain in open storage, or of which nobody has said what becomes of it, and of one grain.

    tenth receipt issue 103 --ticket 12 --ticket 14=500 --negotiable --grade "US No. 2" --who "Mae Orton"`
}

func (c issue) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		order := receipts.Order{Negotiable: c.Negotiable, Grade: strings.TrimSpace(c.Grade)}
		var err error
		if order.Grower, err = p.GrowerID(c.Grower); err != nil {
			return err
		}
		unit := func(ticket int64) (quantity.Unit, error) { return receipts.UnitOf(p, p.Desk, ticket) }
		for _, text := range c.Ticket {
			number, part, err := terminal.TicketPart(text, unit)
			if err != nil {
				return err
			}
			order.Tickets = append(order.Tickets, receipts.Chosen{Number: number, Quantity: part})
		}
		r, err := acts.Issue(p, p.Desk, order)
		if err != nil {
			return err
		}
		if r.Negotiable {
			p.Say("Warehouse receipt %d for %v: %s, negotiable.", r.Number, r.Name, r.Quantity())
			return nil
		}
		p.Say("Warehouse receipt %d for %v: %s, not negotiable.", r.Number, r.Name, r.Quantity())
		return nil
	})
}

// ending are the flags of a receipt's end.
type ending struct {
	terminal.BookFlags
	terminal.WhoFlags
	Number int64 `arg:"" help:"Number of the receipt." placeholder:"NUMBER"`
}

// act does an act on a receipt.
func (c ending) act(t *terminal.Terminal, act func(*terminal.Session, *scalehouse.Desk) error) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error { return act(p, p.Desk) })
}

type surrender struct {
	ending
	Why string `help:"What becomes of the grain." placeholder:"WORDS"`
}

func (surrender) Help() string { return `    tenth receipt surrender 1 --who "Mae Orton"` }

func (c surrender) Run(t *terminal.Terminal) error {
	return c.act(t, func(p *terminal.Session, d *scalehouse.Desk) error {
		r, err := acts.Surrender(p, d, c.Number, c.Why)
		if err != nil {
			return err
		}
		p.Say("Warehouse receipt %d is surrendered: %s is in open storage again.", r.Number, r.Quantity())
		return nil
	})
}

type cancel struct {
	ending
	Why string `required:"" help:"Why." placeholder:"WORDS"`
}

func (cancel) Help() string {
	return `    tenth receipt cancel 1 --why "wrong grade" --who "Mae Orton"`
}

func (c cancel) Run(t *terminal.Terminal) error {
	return c.act(t, func(p *terminal.Session, d *scalehouse.Desk) error {
		r, err := acts.Cancel(p, d, c.Number, c.Why)
		if err != nil {
			return err
		}
		p.Say("Warehouse receipt %d is cancelled. Its number stays with it.", r.Number)
		return nil
	})
}

type replace struct {
	ending
	Why string `required:"" help:"Why." placeholder:"WORDS"`
}

func (replace) Help() string {
	return `    tenth receipt replace 1 --why "lost in the mail" --who "Mae Orton"`
}

func (c replace) Run(t *terminal.Terminal) error {
	return c.act(t, func(p *terminal.Session, d *scalehouse.Desk) error {
		r, err := acts.Replace(p, d, c.Number, c.Why)
		if err != nil {
			return err
		}
		p.Say("Warehouse receipt %d is in the place of receipt %d, of %s.", r.Number, r.Replaces, r.OldDay)
		return nil
	})
}

type blank struct {
	terminal.BookFlags
	terminal.WhoFlags
	Why string `required:"" help:"Why." placeholder:"WORDS"`
}

func (blank) Help() string {
	return `    tenth receipt blank --why "form spoiled in the printer" --who "Mae Orton"`
}

func (c blank) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		r, err := acts.Blank(p, p.Desk, c.Why)
		if err != nil {
			return err
		}
		p.Say("Number %d is left blank on purpose.", r.Number)
		return nil
	})
}

type show struct {
	terminal.BookFlags
	terminal.DocumentFlags
	Number int64 `arg:"" help:"Number of the receipt." placeholder:"NUMBER"`
}

func (show) Help() string { return `    tenth receipt show 1 --out papers` }

func (c show) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		r, err := receipts.Numbered(p, p.Desk, c.Number)
		if err != nil {
			return err
		}
		return p.ShowDocument(c.DocumentFlags, receipts.Paper(r, p.Profile()), fmt.Sprintf("receipt-%d", r.Number), false)
	})
}

type register struct {
	terminal.BookFlags
	terminal.DocumentFlags
}

func (register) Help() string { return `    tenth receipt register --out papers` }

func (c register) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		all, err := receipts.All(p, p.Desk)
		if err != nil {
			return err
		}
		return p.ShowDocument(c.DocumentFlags, receipts.Register(all, p.Profile(), p.Today()), "receipts", true)
	})
}
