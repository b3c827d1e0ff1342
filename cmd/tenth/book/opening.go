package book

import (
	"fmt"
	"path/filepath"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/imports"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/office/openings"
	"tenthpoint/internal/opening"
	"tenthpoint/internal/scalehouse/intake"
	acts "tenthpoint/internal/scalehouse/openings"
)

// Opening is how the books of a house begin here in mid-season.
type Opening struct {
	Show     openingShow     `cmd:"" default:"withargs" help:"The opening as a paper."`
	Enter    openingEnter    `cmd:"" help:"Open the books with the balances of a list. A manager's act."`
	TakeBack openingTakeBack `cmd:"" name:"take-back" help:"Take the opening back as a whole. A manager's act."`
	Numbers  openingNumbers  `cmd:"" help:"Let series begin at stated numbers. A manager's act."`
}

func (Opening) Help() string {
	return `A house that comes from other books says once what lies in its bins and whose it is. It balances, or it is refused with the difference. What a depositor is owed gets a number from 900000001 on; settlement sheets and receipts name it by that number, as they would name a ticket.

    tenth opening enter --example > opening.csv
    tenth opening enter opening.csv --preview
    tenth opening enter opening.csv --why "from the books of 2026" --who "Mae Orton"
    tenth opening numbers --ticket 5001 --why "the books of 2026 end with 5000" --who "Mae Orton"
    tenth sheet make 101 --ticket 900000001 --sale --price 4.05 --who "Mae Orton"`
}

type openingShow struct {
	terminal.BookFlags
	terminal.DocumentFlags
}

func (openingShow) Help() string { return `    tenth opening show --out papers` }

func (c openingShow) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		all, err := openings.All(p, p.Desk)
		if err != nil {
			return err
		}
		o, open := opening.InForce(all)
		switch {
		case open:
		case len(all) > 0:
			o = all[len(all)-1]
		default:
			p.Say("The books were opened without balances.")
			return nil
		}
		return p.ShowDocument(c.DocumentFlags, openings.Paper(o, p.Profile()), "opening", true)
	})
}

type openingEnter struct {
	terminal.BookFlags
	terminal.WhoFlags
	terminal.DocumentFlags
	File    string `arg:"" optional:"" help:"Comma-separated values with a heading row." placeholder:"FILE"`
	Day     string `help:"The evening whose balances these are. Without it, today." placeholder:"YYYY-MM-DD"`
	Why     string `help:"Why the books are opened with balances." placeholder:"WORDS"`
	Example bool   `help:"Print a list to begin from, and do nothing else."`
	Preview bool   `help:"Show the opening as a paper, and do nothing."`
}

func (openingEnter) Help() string {
	return `A row of the list is a layer in a bin (bin), what a depositor is owed (stored, bank, sold, contract C-12, delayed D-7), water that was settled and is not dried out yet (water), what the house owns (company), money that was advanced to a depositor (advance), or a notice of lien (lien). What the house owns may be written as rest: whatever the other rows leave of the bins. A receipt that is out stands beside its grain as 812 or 812 negotiable; the series of receipts goes on behind the highest. Growers, bins and contracts of the list are in the book first.

    tenth opening enter --example > opening.csv
    tenth opening enter opening.csv --preview
    tenth opening enter opening.csv --day 2026-10-31 --why "from the books of 2026" --who "Mae Orton"`
}

func (c openingEnter) Run(t *terminal.Terminal) error {
	if c.Example {
		fmt.Fprint(t.Stdout, imports.Example(imports.Openings))
		return nil
	}
	if c.File == "" {
		return terminal.Refusal("Name one, or ask for an example with --example", "no file is named")
	}
	text, err := intake.ReadFile(c.File)
	if err != nil {
		return err
	}
	how := terminal.ReadWrite
	if c.Preview {
		how = terminal.ReadOnly
		if c.Why == "" {
			c.Why = "preview"
		}
	}
	return c.WithBook(t, how, c.Who, func(p *terminal.Session) error {
		day, err := p.DayOrToday(c.Day)
		if err != nil {
			return err
		}
		o, problems, err := openings.Draft(p, p.Desk, openings.Order{Name: filepath.Base(c.File), Text: text, Day: day, Reason: c.Why})
		switch {
		case len(problems) > 0:
			return listProblems{c.File, problems}
		case c.Preview && o.Day == day && len(o.Lying) > 0:
			if shown := p.ShowDocument(c.DocumentFlags, openings.Paper(o, p.Profile()), "opening", true); shown != nil {
				return shown
			}
			return err
		case err != nil:
			return err
		}
		if o, err = acts.Enter(p, p.Desk, o); err != nil {
			return err
		}
		p.Say("The books are opened with the balances of %s: %d layers in the bins, %d opening balances of depositors.", o.Day, len(o.Lying), len(o.Lots))
		if len(o.Lots) > 0 {
			p.Say("Their numbers are %d to %d.", o.Lots[0].Number, o.Lots[len(o.Lots)-1].Number)
		}
		return nil
	})
}

type openingTakeBack struct {
	terminal.BookFlags
	terminal.WhoFlags
	Why string `required:"" help:"Why." placeholder:"WORDS"`
}

func (openingTakeBack) Help() string {
	return `Nothing may rest on its balances but the receipts it came with, which are cancelled. The grain leaves the bins again, so it has to be there. Then another opening may be entered.

    tenth opening take-back --why "bin 3 was left out" --who "Mae Orton"`
}

func (c openingTakeBack) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		o, err := acts.TakeBack(p, p.Desk, c.Why)
		if err != nil {
			return err
		}
		p.Say("The opening of %s is taken back.", o.Day)
		return nil
	})
}

type openingNumbers struct {
	terminal.BookFlags
	terminal.WhoFlags
	Why     string                `required:"" help:"Why; it stands in the book." placeholder:"WORDS"`
	Ticket  terminal.TicketNumber `help:"First number of tickets." placeholder:"NUMBER"`
	Sample  terminal.TicketNumber `help:"First number of samples." placeholder:"NUMBER"`
	Sheet   terminal.TicketNumber `help:"First number of settlement sheets." placeholder:"NUMBER"`
	Payment terminal.TicketNumber `help:"First number of payments." placeholder:"NUMBER"`
	Receipt terminal.TicketNumber `help:"First number of warehouse receipts." placeholder:"NUMBER"`
}

func (openingNumbers) Help() string {
	return `Numbers below are those of the books before; none of their papers is missing here. A series begins so before it has given out such a number, and runs on without a gap.

    tenth opening numbers --ticket 5001 --receipt 820 --why "the books of 2026 end there" --who "Mae Orton"`
}

func (c openingNumbers) Run(t *terminal.Terminal) error {
	first := map[string]int64{}
	for series, number := range map[string]terminal.TicketNumber{
		numbering.Ticket: c.Ticket, numbering.Sample: c.Sample, numbering.Sheet: c.Sheet, numbering.Payment: c.Payment, numbering.Receipt: c.Receipt,
	} {
		if number > 0 {
			first[series] = int64(number)
		}
	}
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		passed, err := acts.StartAt(p, p.Desk, first, c.Why)
		if err != nil {
			return err
		}
		for _, one := range passed {
			p.Say("%s. The next number is %d.", one.Message(), one.Last+1)
		}
		return nil
	})
}
