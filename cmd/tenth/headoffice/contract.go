package headoffice

import (
	"errors"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/headoffice/across"
	"tenthpoint/internal/headoffice/copies"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
)

// contractOf shows a contract that several sites fill.
type contractOf struct {
	copiesFlags
	terminal.ListFlags
	Number string `arg:"" help:"Number of the contract." placeholder:"NUMBER"`
}

func (contractOf) Help() string {
	return `What each site delivered is the site's own working. No site sees that all of them together have filled a contract: the last line does, with what is left of it or has come beyond it.

    tenth office contract C-1`
}

func (c contractOf) Run(t *terminal.Terminal) error {
	var all across.Contract
	err := c.eachBook(t, func(site copies.Copy, p *terminal.Session) error {
		terms, err := office.ContractNumbered(p, p.Desk, c.Number)
		if errors.Is(err, message.NotFound) {
			return nil
		}
		if err != nil {
			return err
		}
		filled, err := office.ContractFill(p, p.Desk, terms)
		if err == nil {
			all.Add(site.Name(), filled)
		}
		return err
	})
	if err != nil {
		return err
	}
	var rows [][]any
	for _, part := range all.Parts {
		rows = append(rows, []any{part.Site, part.Grower, message.Words(part.Commodity), part.Quantity, part.Delivered, part.Left, ""})
	}
	total, same := all.Total()
	if same {
		first := all.Parts[0]
		rows = append(rows, []any{message.Words("All sites"), first.Grower, message.Words(first.Commodity), total.Quantity, total.Delivered, total.Left, total.Over})
	}
	if err := (&terminal.Session{Terminal: t}).Table(c.ListFlags, "Site\tGrower\tGrain\tQuantity\tDelivered\tStill to come\tOver", rows, "No site has a contract of this number."); err != nil {
		return err
	}
	if !same && len(all.Parts) > 0 {
		terminal.Warn(t, terminal.Problem(message.New("The sites have contract %v with other growers, grains or quantities: it is not added up.", c.Number)))
	}
	return nil
}
