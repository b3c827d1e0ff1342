package tickets

import (
	"fmt"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/office"
)

// Proof prints how a ticket was calculated, for the grower to follow.
type Proof struct {
	terminal.BookFlags
	terminal.DocumentFlags
	Ticket   terminal.TicketNumber `arg:"" help:"Number of the ticket."`
	Moisture string                `help:"Show also what this moisture would have made." placeholder:"PERCENT"`
	Edition  string                `help:"Set this edition beside the ticket's own. Without it, the one before." placeholder:"ID"`
}

func (Proof) Help() string {
	return `Every step in words and in figures with the row of the rates it used, what another tenth, another edition and the pure water formula would have made, and a page that tells how to check it by hand.

    tenth proof 1042
    tenth proof 1042 --moisture 17.0 --out papers`
}

func (c Proof) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		o := office.ProofOptions{Edition: c.Edition}
		if c.Moisture != "" {
			m, err := terminal.ParsePercent("Moisture", c.Moisture)
			if err != nil {
				return err
			}
			o.Moisture = &m
		}
		doc, err := office.Proof(p, p.Desk, int64(c.Ticket), o)
		if err != nil {
			return err
		}
		return p.ShowDocument(c.DocumentFlags, doc, fmt.Sprintf("proof-%d", c.Ticket), false)
	})
}

// Difference sets two tickets side by side.
type Difference struct {
	terminal.BookFlags
	terminal.ListFlags
	Old terminal.TicketNumber `arg:"" help:"The earlier ticket."`
	New terminal.TicketNumber `arg:"" help:"The later one, such as the one that corrects it."`
}

func (Difference) Help() string {
	return `    tenth difference 1042 1055`
}

func (c Difference) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		d, err := office.Compare(p, p.Desk, int64(c.Old), int64(c.New))
		if err != nil {
			return err
		}
		table, say := d.Table(), p.Printer
		if c.JSON {
			say = nil // programs read English
		}
		var heads []string
		for _, column := range table.Columns {
			heads = append(heads, say.Text(column.Title))
		}
		rows := [][]any{}
		for _, r := range table.Rows {
			cells := make([]any, len(r.Cells))
			for i, cell := range r.Cells {
				cells[i] = cell
			}
			rows = append(rows, cells)
		}
		return p.Table(c.ListFlags, strings.Join(heads, "\t"), rows, table.Empty.String())
	})
}
