// Package day holds the commands of the end of a day: its sheet, the position, an
// account, an examiner's papers.
package day

import (
	"cmp"
	"fmt"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
)

// Day is the end of a day.
type Day struct {
	Show  dayShow  `cmd:"" default:"withargs" help:"Show the sheet of a day."`
	Close dayClose `cmd:"" help:"Close a day: what is done later counts in the next."`

	Explain dayExplain `cmd:"" help:"Explain what was entered after a day was closed and counts on it."`
}

type dayExplain struct {
	terminal.BookFlags
	terminal.WhoFlags
	Day    string `arg:"" help:"The closed day." placeholder:"YYYY-MM-DD"`
	Reason string `required:"" help:"Why something entered later counts on that day or before it." placeholder:"WORDS"`
}

func (dayExplain) Help() string {
	return `A manager's act, for books in which an earlier program let something count on a day that was closed, or before it: past loads taken over late, a clock that stood wrong. The sheet stays the one that was closed, names the reason, and the book is sound again. What no later entry accounts for cannot be explained.

    tenth day explain 2026-10-03 --reason "the spring loads were taken over late" --who "Mae Orton"`
}

func (c dayExplain) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		day, err := p.DayOrToday(c.Day)
		if err != nil {
			return err
		}
		if err := scalehouse.ExplainDay(p, p.Desk, day, c.Reason); err != nil {
			return err
		}
		p.Say("What came after %s was closed is explained. Its sheet stands as it was closed.", day)
		return nil
	})
}

type dayShow struct {
	terminal.BookFlags
	terminal.DocumentFlags
	dayFlags
}

// dayFlags are a business day, typed as an argument or as a flag.
type dayFlags struct {
	Date string `arg:"" optional:"" help:"The business day, also today or yesterday. Without it, today." placeholder:"YYYY-MM-DD"`
	Day  string `help:"The same as a flag." placeholder:"YYYY-MM-DD"`
}

// day is the day that was typed, or today.
func (f dayFlags) day(p *terminal.Session) (quantity.Date, error) {
	if f.Date != "" && f.Day != "" {
		return quantity.Date{}, terminal.Refusal("Give it once", "the day is given twice, as %q and as %q", f.Date, f.Day)
	}
	return p.DayOrToday(cmp.Or(f.Date, f.Day))
}

func (dayShow) Help() string {
	return `Every total is the sum of the lines printed above it. The sheet of a closed day is always the same; should the book give other figures by now, the sheet says so.

    tenth day
    tenth day yesterday
    tenth day 2026-10-03 --out papers --as pdf,xlsx`
}

func (c dayShow) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		day, err := c.day(p)
		if err != nil {
			return err
		}
		if p.Today().Before(day) {
			return terminal.Refusal("Give a day up to today", "%s is ahead of today, %s: there is nothing on its sheet yet", day, p.Today())
		}
		doc, err := office.DayPaper(p, p.Desk, day)
		if err != nil {
			return err
		}
		return p.ShowDocument(c.DocumentFlags, doc, "day-"+day.String(), true)
	})
}

type dayClose struct {
	terminal.BookFlags
	terminal.WhoFlags
	dayFlags
	Remark string `help:"What the sheet is to say beside the name." placeholder:"TEXT"`
	JSON   bool   `help:"Print for programs: every figure as text."`
}

func (dayClose) Help() string {
	return `A manager's act. Tickets issued, voided or corrected afterwards count in the next day and name this one.

    tenth day close 2026-10-03 --remark "all well" --who "Mae Orton"`
}

func (c dayClose) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		day, err := c.day(p)
		if err != nil {
			return err
		}
		if err := scalehouse.CloseDay(p, p.Desk, day, c.Remark); err != nil {
			return err
		}
		sheet, err := office.DaySheet(p, p.Desk, day)
		if err != nil {
			return err
		}
		if c.JSON {
			return p.PrintJSON(map[string]string{"day": day.String(), "closed_by": sheet.Closed.By, "at": sheet.Closed.At, "tickets": fmt.Sprint(sheet.Numbers.Issued)})
		}
		if sheet.Numbers.Issued == 0 {
			p.Say("%s is closed by %s. No ticket was issued.", day, sheet.Closed.By)
			return nil
		}
		p.Say("%s is closed by %s. Tickets %s.", day, sheet.Closed.By, sheet.Numbers)
		return nil
	})
}
