package book

import (
	"fmt"
	"os"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/audit"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse/restoring"
)

// Restore makes the book again from a copy, and takes up the tickets that the copy lacks.
type Restore struct {
	Copy    restoreCopy    `cmd:"" help:"Make the book again from a copy, with the highest numbers seen on paper."`
	Missing restoreMissing `cmd:"" help:"List the tickets that are on paper only."`
	Ticket  restoreTicket  `cmd:"" help:"Enter a ticket again from its slip, under its own number."`
	Lost    restoreLost    `cmd:"" help:"Declare that the paper of tickets is not to be had."`
}

// restoreCopy makes the book from a copy.
type restoreCopy struct {
	terminal.BookFlags
	terminal.WhoFlags
	From    string                `arg:"" help:"The copy." placeholder:"PATH"`
	Ticket  terminal.TicketNumber `required:"" help:"The highest number on any ticket." placeholder:"NUMBER"`
	Sample  terminal.TicketNumber `help:"The highest number on the label of any sample." placeholder:"NUMBER"`
	Sheet   terminal.TicketNumber `help:"The highest number on any settlement sheet." placeholder:"NUMBER"`
	Payment terminal.TicketNumber `help:"The highest number of any payment, by its stub." placeholder:"NUMBER"`
	Receipt terminal.TicketNumber `help:"The highest number of any warehouse receipt." placeholder:"NUMBER"`
	Reason  string                `required:"" help:"What became of the book." placeholder:"WHY"`
}

func (restoreCopy) Help() string {
	return `A manager's act. The copy is checked whole before anything is made, and the book is made beside nothing: a book that is there is not written over; move it away first and keep it.

The highest number is looked for on paper: on the slips in the office and at the growers, in the drawer of labels, on stubs. Numbers after the copy's last are passed over and never given out again. Each ticket among them is then entered from its slip, or declared lost.

    tenth restore copy /mnt/stick/house-2026-10-01.book --ticket 4123 --sample 398 \
        --reason "the disk failed" --who "Mae Orton"
    tenth restore missing`
}

func (c restoreCopy) Run(t *terminal.Terminal) error {
	target, err := c.BookPath()
	if err != nil {
		return err
	}
	if _, err := os.Stat(target); err == nil {
		return terminal.Refusal("Move it to another name and keep it; or name another place with --book", "a book is at %s already, and none is written over", target)
	}
	var last map[string]int64
	from := c.BookFlags
	from.Book = c.From
	err = from.WithBook(t, terminal.ReadOnly, c.Who, func(p *terminal.Session) error {
		if last, err = c.checkCopy(p); err != nil {
			return err
		}
		return p.File.Backup(p, target, p.HeadText)
	})
	if err != nil {
		return err
	}
	c.Book = target
	err = c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error { return c.passOver(p, last) })
	if err != nil {
		_ = os.Remove(target) // a book that would give numbers out twice is not left behind
	}
	return err
}

// checkCopy checks the copy and who acts, and returns the series to be moved on, with the last
// number seen of each.
func (c restoreCopy) checkCopy(p *terminal.Session) (map[string]int64, error) {
	if err := p.MayManage("Restoring the book"); err != nil {
		return nil, err
	}
	found, err := audit.Verify(p, p.Desk, p.File, nil)
	if err != nil {
		return nil, err
	}
	if err := (Verify{}).report(p, found); err != nil {
		return nil, err
	}
	last := map[string]int64{}
	for series, number := range map[string]terminal.TicketNumber{
		numbering.Ticket: c.Ticket, numbering.Sample: c.Sample, numbering.Sheet: c.Sheet, numbering.Payment: c.Payment, numbering.Receipt: c.Receipt,
	} {
		given, err := p.File.LastNumber(p, series)
		if err != nil {
			return nil, err
		}
		if number == 0 || int64(number) == given {
			continue
		}
		last[series] = int64(number)
		if err := (numbering.Passed{Series: series, First: given + 1, Last: int64(number), Reason: c.Reason}).Check(); err != nil {
			return nil, err
		}
	}
	return last, nil
}

func (c restoreCopy) passOver(p *terminal.Session, last map[string]int64) error {
	if len(last) == 0 {
		p.Say("The book is at %s. The copy has every number; nothing is missing.", c.Book)
		return nil
	}
	passed, err := restoring.PassOver(p, p.Desk, last, c.Reason)
	if err != nil {
		return err
	}
	p.Say("The book is at %s.", c.Book)
	for _, one := range passed {
		p.Say("%s. The next number is %d.", one.Message(), one.Last+1)
	}
	if last[numbering.Ticket] > 0 {
		p.Say("Enter each ticket again from its slip: tenth restore ticket NUMBER --help")
	}
	return nil
}

// restoreMissing lists what is on paper only.
type restoreMissing struct {
	terminal.BookFlags
	terminal.ListFlags
}

func (restoreMissing) Help() string {
	return `    tenth restore missing`
}

func (c restoreMissing) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		missing, err := office.MissingTickets(p, p.Desk)
		if err != nil {
			return err
		}
		rows := make([][]any, len(missing))
		for i, number := range missing {
			rows[i] = []any{fmt.Sprint(number)}
		}
		return p.Table(c.ListFlags, "Ticket", rows, "No ticket is missing.")
	})
}

// restoreLost declares tickets lost.
type restoreLost struct {
	terminal.BookFlags
	terminal.WhoFlags
	Numbers []terminal.TicketNumber `arg:"" help:"Numbers of the tickets." placeholder:"NUMBER"`
	Reason  string                  `required:"" help:"What is known of them, and why there is no paper." placeholder:"WHY"`
}

func (restoreLost) Help() string {
	return `A manager's act. The numbers stay used, without a ticket, and every check of the book names them with the reason. A ticket whose paper turns up after all is entered like any other.

    tenth restore lost 4121 4122 --reason "neither slip nor grower found; two loads of corn by the yard list"`
}

func (c restoreLost) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		numbers := make([]int64, len(c.Numbers))
		for i, n := range c.Numbers {
			numbers[i] = int64(n)
		}
		if err := restoring.DeclareLost(p, p.Desk, numbers, c.Reason); err != nil {
			return err
		}
		p.Say("Declared lost: %s.", numbering.Ranges(numbers))
		return nil
	})
}
