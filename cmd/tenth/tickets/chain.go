package tickets

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/rests"
)

// chainFlags are for a ticket that something rests on.
type chainFlags struct {
	Chain   bool `help:"What rests on the ticket follows: sheets that paid for it are made anew, payments go on to them." xor:"chain"`
	Propose bool `help:"Print what would follow, and write nothing." xor:"chain"`
}

// told prints what followed a ticket that ended.
func told(p *terminal.Session, number int64) error {
	all, err := rests.Followed(office.ReadNow(p, p.Desk), number)
	if err != nil || len(all) == 0 {
		return err
	}
	return tellFollowed(p, all)
}

// tellFollowed prints settlement sheets that follow a ticket, with the difference of each owner.
func tellFollowed(p *terminal.Session, all []rests.Remade) error {
	rows := [][]any{}
	for _, r := range all {
		next := message.New("none")
		if r.Is != nil {
			next = message.New("%d", r.Is.Number)
		}
		rows = append(rows, []any{r.Was.Number, next, r.Was.Grower, r.Was.Name, r.Quantity(), r.Payable(), r.Paid, r.Left})
	}
	return p.Columns("Sheet\tIn its place\tGrower\tName\tQuantity more\tPayable more\tPaid\tStill open", rows, "No settlement sheet follows.")
}
