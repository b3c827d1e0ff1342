package day

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/binlog"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// Position prints the stock.
type Position struct {
	terminal.BookFlags
	terminal.DocumentFlags
	Day  string `arg:"" optional:"" help:"Print the daily position record of this day: what lies in each bin, and whose it is."`
	From string `help:"First day to tell of. Without it, the last day." placeholder:"YYYY-MM-DD"`
	To   string `help:"The day whose evening is shown. Without it, today." placeholder:"YYYY-MM-DD"`
}

func (Position) Help() string {
	return `Grain by commodity and bin: what was settled coming in, less what was weighed going out. Each day begins with what the day before ended with.

    tenth position
    tenth position --from 2026-10-01 --to 2026-10-31 --out papers --as xlsx

With a day, the daily position record: what was received, loaded out and adjusted, as weighed; whose it is, as settled; and what lies between, water, dockage and handling that were settled and are not lost yet. It says by how much the two do not agree, and when depositors' grain is gone.

    tenth position today
    tenth position 2026-10-31 --out papers --as csv`
}

func (c Position) Run(t *terminal.Terminal) error {
	how := terminal.ReadOnly
	if c.Day != "" {
		how = terminal.ReadBins
	}
	return c.WithBook(t, how, "", func(p *terminal.Session) error {
		if c.Day != "" {
			return c.record(p)
		}
		from, to, err := p.SpanTo(c.From, c.To, 0)
		if err != nil {
			return err
		}
		if err := notAhead(p, to); err != nil {
			return err
		}
		doc, err := office.PositionPaper(p, p.Desk, from, to)
		if err != nil {
			return err
		}
		return c.shown(p, doc, "position-"+to.String())
	})
}

// record prints the daily position record.
func (c Position) record(p *terminal.Session) error {
	if c.From != "" || c.To != "" {
		return terminal.Refusal("Give a day, or --from and --to", "the daily position record is of one day")
	}
	day, err := p.DayOrToday(c.Day)
	if err != nil {
		return err
	}
	if err := notAhead(p, day); err != nil {
		return err
	}
	records, err := binlog.Position(p, p.Desk, day)
	if err != nil {
		return err
	}
	return c.shown(p, binlog.PositionPaper(p.Profile(), day, records), "position-record-"+day.String())
}

func (c Position) shown(p *terminal.Session, doc report.Document, name string) error {
	return p.ShowDocument(c.DocumentFlags, doc, name, false)
}

func notAhead(p *terminal.Session, day quantity.Date) error {
	if p.Today().Before(day) {
		return terminal.Refusal("Give a day up to today", "%s is ahead of today, %s: its position is not known yet", day, p.Today())
	}
	return nil
}
