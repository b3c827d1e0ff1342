package main

import (
	"fmt"

	"tenthpoint/internal/office"
)

// proofCommand shows how a ticket was worked out, for the grower to follow.
type proofCommand struct {
	bookFlags
	documentFlags
	Ticket   ticketNumber `arg:"" help:"Number of the ticket."`
	Moisture string       `help:"Show also what this moisture would have made." placeholder:"PERCENT"`
	Edition  string       `help:"Set this edition beside the ticket's own. Without it, the one before." placeholder:"ID"`
}

func (proofCommand) Help() string {
	return `Every step in words and in figures with the row of the rates it used, what another tenth, another edition and the bare water formula would have made, and a page that tells how to check it by hand.

    tenth proof 1042
    tenth proof 1042 --moisture 17.0 --out papers`
}

func (c proofCommand) Run(t *terminal) error {
	return c.at(t, reading, "", func(p *post) error {
		o := office.ProofOptions{Edition: c.Edition}
		if c.Moisture != "" {
			m, err := percentIn("Moisture", c.Moisture)
			if err != nil {
				return err
			}
			o.Moisture = &m
		}
		doc, err := office.Proof(p, p.Desk, int64(c.Ticket), o)
		if err != nil {
			return err
		}
		return p.document(c.documentFlags, doc, fmt.Sprintf("proof-%d", c.Ticket), false)
	})
}

// differenceCommand sets two tickets side by side.
type differenceCommand struct {
	bookFlags
	listFlags
	Old ticketNumber `arg:"" help:"The earlier ticket."`
	New ticketNumber `arg:"" help:"The later one, such as the one that corrects it."`
}

func (differenceCommand) Help() string {
	return `    tenth difference 1042 1055`
}

func (c differenceCommand) Run(t *terminal) error {
	return c.at(t, reading, "", func(p *post) error {
		d, err := office.Compare(p, p.Desk, int64(c.Old), int64(c.New))
		if err != nil {
			return err
		}
		table := d.Table()
		var heads []string
		for _, column := range table.Columns {
			heads = append(heads, column.Title)
		}
		rows := [][]string{}
		for _, r := range table.Rows {
			rows = append(rows, r.Cells)
		}
		return p.table(c.listFlags, heads, rows, table.Empty)
	})
}
