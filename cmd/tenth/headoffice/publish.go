package headoffice

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/headoffice/central"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/published"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse/publishing"
)

// publish has the commands by which an office lays down what holds at all sites.
type publish struct {
	Grower   publishGrower   `cmd:"" help:"Publish the cards of growers as this book has them."`
	Rates    publishRates    `cmd:"" help:"Publish editions of the house."`
	Withdraw publishWithdraw `cmd:"" help:"End a publication: sites have their own back."`
	List     publishList     `cmd:"" default:"withargs" help:"List what is published."`
}

// publishFlags are what each of them is told.
type publishFlags struct {
	terminal.BookFlags
	terminal.WhoFlags
	From string `help:"The first day it holds at the sites. Without it, today; of an edition that begins later, its own first day." placeholder:"YYYY-MM-DD"`
}

// act publishes, and says what.
func (f publishFlags) act(t *terminal.Terminal, act func(p *terminal.Session, from quantity.Date) ([]published.Publication, error)) error {
	return f.WithBook(t, terminal.ReadWrite, f.Who, func(p *terminal.Session) error {
		var from quantity.Date
		var err error
		if f.From != "" {
			if from, err = p.DayOrToday(f.From); err != nil {
				return err
			}
		}
		all, err := act(p, from)
		for _, one := range all {
			if one.Withdrawn != "" {
				p.Say("%s is withdrawn from %s on.", one.Of(), one.From)
			} else {
				p.Say("%s holds at all sites from %s on.", one.Of(), one.From)
			}
		}
		return err
	})
}

type publishGrower struct {
	publishFlags
	Codes []string `arg:"" optional:"" name:"code" help:"The growers. Without any, all of them."`
}

func (publishGrower) Help() string {
	return `Sites take the card over with the next "tenth office fetch", and nobody there can change it. Publish again after a change. Sites see of this book what is published and who signed, nothing else.

    tenth office publish grower 102 --from 2026-12-01
    tenth office publish grower`
}

func (c publishGrower) Run(t *terminal.Terminal) error {
	return c.act(t, func(p *terminal.Session, from quantity.Date) (out []published.Publication, err error) {
		growers, err := office.Growers(p, p.Desk)
		if err != nil {
			return nil, err
		}
		chosen := growers
		if len(c.Codes) > 0 {
			if chosen, err = withCodes(growers, c.Codes); err != nil {
				return nil, err
			}
		}
		for _, g := range chosen {
			one, err := publishing.Grower(p, p.Desk, g, from)
			if err != nil {
				return out, err
			}
			out = append(out, one)
		}
		return out, nil
	})
}

// withCodes are the growers of some codes.
func withCodes(all []elevator.Grower, codes []string) (out []elevator.Grower, err error) {
	byCode := map[string]elevator.Grower{}
	for _, g := range all {
		byCode[g.ID] = g
	}
	for _, code := range codes {
		g, known := byCode[code]
		if !known {
			return nil, terminal.Refusal("Look with \"tenth grower list\"", "there is no grower %s", code)
		}
		out = append(out, g)
	}
	return out, nil
}

type publishRates struct {
	publishFlags
	IDs []string `arg:"" name:"id" help:"The ids of the editions."`
}

func (publishRates) Help() string {
	return `On the days of the edition it is in force at every site for its commodity and schedule, whatever the site's own files say. It must be one of the house, no example.

    tenth office publish rates corn-2026-12`
}

func (c publishRates) Run(t *terminal.Terminal) error {
	return c.act(t, func(p *terminal.Session, from quantity.Date) (out []published.Publication, err error) {
		for _, id := range c.IDs {
			e, known := p.Rates().ByID(id)
			if !known {
				return out, terminal.Refusal("Look with \"tenth rates list\"", "there is no edition %s", id)
			}
			one, err := publishing.Edition(p, p.Desk, e, from)
			if err != nil {
				return out, err
			}
			out = append(out, one)
		}
		return out, nil
	})
}

type publishWithdraw struct {
	publishFlags
	What   string `arg:"" enum:"grower,edition" help:"grower or edition."`
	Name   string `arg:"" help:"The code of the grower, or the id of the edition."`
	Reason string `required:"" help:"Why; it is kept in the book." placeholder:"WORDS"`
}

func (publishWithdraw) Help() string {
	return `    tenth office publish withdraw grower 102 --reason "he delivers at Kenthill alone"`
}

func (c publishWithdraw) Run(t *terminal.Terminal) error {
	return c.act(t, func(p *terminal.Session, from quantity.Date) ([]published.Publication, error) {
		one, err := publishing.Withdraw(p, p.Desk, c.What+" "+c.Name, from, c.Reason)
		if err != nil {
			return nil, err
		}
		return []published.Publication{one}, nil
	})
}

type publishList struct {
	terminal.BookFlags
	terminal.ListFlags
}

func (publishList) Help() string { return `    tenth office publish` }

func (c publishList) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		all, err := publishing.List(p, p.Desk)
		if err != nil {
			return err
		}
		rows := make([][]any, len(all))
		for i, one := range all {
			rows[i] = publishedRow(one)
		}
		return p.Table(c.ListFlags, publishedColumns, rows, "Nothing is published.")
	})
}

// publishedColumns are the columns of what is published, and publishedRow the cells.
const publishedColumns = "What\tName\tFrom\tWithdrawn"

func publishedRow(one published.Publication) []any {
	if one.Grower != nil {
		return []any{message.Words("grower"), message.Name(one.Grower.ID + " " + one.Grower.Name), one.From, one.Withdrawn}
	}
	return []any{message.Words("edition"), one.Edition.ID, one.From, one.Withdrawn}
}

// publisher says whose chain publishes.
type publisher struct {
	officeFlags
	Letters string `arg:"" help:"The letters under which the office sends its own book."`
}

func (publisher) Help() string {
	return `The office keeps a book of its own, is added like a site, and sends that book like one. Every site may read what it publishes, signed; it should have keys: "tenth key".

    tenth office add HQ "Head office"
    tenth office publisher HQ`
}

func (c publisher) Run(t *terminal.Terminal) error {
	return c.with(t, func(o *central.Office) error {
		if err := o.LaysDown(t, c.Letters); err != nil {
			return err
		}
		t.Say("What %v publishes holds at all sites that follow it.", c.Letters)
		return nil
	})
}
