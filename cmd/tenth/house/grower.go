package house

import (
	"fmt"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// Grower keeps the list of growers.
type Grower struct {
	Add  growerAdd  `cmd:"" help:"Add a grower, or change one."`
	List growerList `cmd:"" default:"withargs" help:"List growers."`
}

type growerAdd struct {
	terminal.BookFlags
	terminal.WhoFlags
	Code    string   `arg:"" help:"Short code, as clerks type it."`
	Name    string   `arg:"" help:"Full name."`
	Address string   `help:"Address." placeholder:"WORDS"`
	Phone   string   `help:"Telephone." placeholder:"NUMBER"`
	Share   []string `sep:"none" help:"How the grower's loads are parted; may be repeated." placeholder:"CODE=2/3"`
}

func (growerAdd) Help() string {
	return `    tenth grower add 102 "Beatrix Holloway" --share 102=2/3 --share 901=1/3
    tenth grower add 901 "Estate of R. Pomfret"`
}

func (c growerAdd) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		g := elevator.Grower{ID: c.Code, Name: c.Name, Address: c.Address, Phone: c.Phone}
		for _, text := range c.Share {
			one, err := entry.ParseOwnerShare(text)
			if err != nil {
				return err
			}
			if one.Owner != c.Code {
				if _, err := entry.Grower(office.NewEntering(p, p.Desk), one.Owner); err != nil {
					return err
				}
			}
			g.Shares = append(g.Shares, elevator.Share{GrowerID: one.Owner, Parts: one.Parts, Of: one.Of})
		}
		if err := scalehouse.SetGrower(p, p.Desk, g); err != nil {
			return err
		}
		p.Say("Grower %s, %s, is written down.", g.ID, g.Name)
		return nil
	})
}

type growerList struct {
	terminal.BookFlags
	terminal.ListFlags
}

func (c growerList) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		all, err := office.Growers(p, p.Desk)
		if err != nil {
			return err
		}
		rows := [][]any{}
		for _, g := range all {
			var shares []string
			for _, s := range g.Shares {
				shares = append(shares, fmt.Sprintf("%s=%s/%s", s.GrowerID, s.Parts, s.Of))
			}
			rows = append(rows, []any{g.ID, g.Name, strings.Join(shares, " ")})
		}
		return p.Table(c.ListFlags, "Code\tName\tShares", rows, "No grower is written down yet.")
	})
}
