package tickets

import (
	"fmt"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/office/emergency"
	acts "tenthpoint/internal/scalehouse/emergency"
)

// Emergency is about the pads of tickets that are written on while the power is out.
type Emergency struct {
	List  emergencyList  `cmd:"" default:"withargs" help:"Account for every emergency ticket: entered, spoiled, skipped."`
	Pad   emergencyPad   `cmd:"" help:"Write a pad down. A manager's act."`
	Print emergencyPrint `cmd:"" help:"Blank emergency tickets as a paper, a page each."`
	Spoil emergencySpoil `cmd:"" help:"Declare a ticket of a pad spoiled."`
}

func (Emergency) Help() string {
	return `A pad lies at the scale before the power goes out. Each truck is written on the next ticket of it and entered afterwards like any load, with the number and the hour on it; the ticket of the book names both. Numbers run in a series of their own, none is entered twice, and what was skipped is said until it is entered or declared spoiled.

    tenth emergency print 1201 1250 --out papers --as pdf
    tenth emergency pad 1201 1250 --where "scale house" --who "Mae Orton"
    tenth receive --pad 1201 --pad-hour 14:20 --day 2026-10-14 --grower 103 --commodity corn --truck 7 --gross 52300 --tare 24300 --moisture 15.0 --manual "power out"
    tenth emergency`
}

type emergencyList struct {
	terminal.BookFlags
	terminal.ListFlags
}

func (c emergencyList) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		a, err := emergency.Read(p, p.Desk)
		if err != nil {
			return err
		}
		rows := [][]any{}
		for _, e := range a.Used {
			ticket := any(e.Ticket)
			if e.Ticket == 0 {
				ticket = message.Words("spoiled")
			}
			rows = append(rows, []any{e.Number, ticket, e.Day, e.Why})
		}
		if err := p.Table(c.ListFlags, "Emergency ticket\tTicket\tDay\tWhy", rows, "No emergency ticket was entered."); err != nil || c.JSON {
			return err
		}
		for _, pad := range a.Pads {
			p.Say("Pad: %d to %d, %s", pad.First, pad.Last, terminal.Or(pad.Where, message.New("nobody said where")))
		}
		for _, n := range a.Skipped {
			p.Say("Emergency ticket %d was skipped: enter it, or declare it spoiled.", n)
		}
		return nil
	})
}

type emergencyPad struct {
	terminal.BookFlags
	terminal.WhoFlags
	First int64  `arg:"" help:"First number on the pad." placeholder:"NUMBER"`
	Last  int64  `arg:"" help:"Last number on the pad." placeholder:"NUMBER"`
	Where string `help:"Where it lies." placeholder:"WORDS"`
}

func (emergencyPad) Help() string {
	return `    tenth emergency pad 1201 1250 --where "scale house" --who "Mae Orton"`
}

func (c emergencyPad) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		if err := acts.AddPad(p, p.Desk, numbering.Pad{First: c.First, Last: c.Last, Where: c.Where}); err != nil {
			return err
		}
		p.Say("The pad of emergency tickets %d to %d is written down.", c.First, c.Last)
		return nil
	})
}

type emergencyPrint struct {
	terminal.BookFlags
	terminal.DocumentFlags
	First int64 `arg:"" help:"First number." placeholder:"NUMBER"`
	Last  int64 `arg:"" help:"Last number." placeholder:"NUMBER"`
}

func (emergencyPrint) Help() string {
	return `    tenth emergency print 1201 1250 --out papers --as pdf`
}

func (c emergencyPrint) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		doc, err := emergency.Slips(p.Profile(), c.First, c.Last, p.Today())
		if err != nil {
			return err
		}
		return p.ShowDocument(c.DocumentFlags, doc, fmt.Sprintf("emergency-%d-%d", c.First, c.Last), false)
	})
}

type emergencySpoil struct {
	terminal.BookFlags
	terminal.WhoFlags
	Number int64  `arg:"" help:"The number." placeholder:"NUMBER"`
	Why    string `required:"" help:"What became of it." placeholder:"WORDS"`
}

func (emergencySpoil) Help() string { return `    tenth emergency spoil 1204 --why "torn"` }

func (c emergencySpoil) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		if err := acts.Spoil(p, p.Desk, c.Number, c.Why); err != nil {
			return err
		}
		p.Say("Emergency ticket %d is declared spoiled.", c.Number)
		return nil
	})
}
