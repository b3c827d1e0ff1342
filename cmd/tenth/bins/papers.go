package bins

import (
	"fmt"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/office/binlog"
)

type dryingLog struct {
	terminal.BookFlags
	terminal.DocumentFlags
	From string `help:"First day to tell of. Without it, 30 days back." placeholder:"YYYY-MM-DD"`
	To   string `help:"Last day to tell of. Without it, today." placeholder:"YYYY-MM-DD"`
}

func (dryingLog) Help() string {
	return `    tenth bin drying-log --from 2026-10-01 --to 2026-10-31 --out papers`
}

func (c dryingLog) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadBins, "", func(p *terminal.Session) error {
		from, to, err := p.SpanTo(c.From, c.To, cardDays)
		if err != nil {
			return err
		}
		doc, err := binlog.DryingLog(p, p.Desk, from, to)
		if err != nil {
			return err
		}
		return p.ShowDocument(c.DocumentFlags, doc, "drying-log-"+to.String(), true)
	})
}

type measureSheet struct {
	terminal.BookFlags
	terminal.DocumentFlags
	Number int64 `arg:"" help:"Number of the movement, as on the card of the bin."`
}

func (measureSheet) Help() string { return `    tenth bin measure-sheet 17 --out papers` }

func (c measureSheet) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadBins, "", func(p *terminal.Session) error {
		doc, err := binlog.MeasureSheet(p, p.Desk, c.Number)
		if err != nil {
			return err
		}
		return p.ShowDocument(c.DocumentFlags, doc, fmt.Sprintf("measure-up-%d", c.Number), false)
	})
}
