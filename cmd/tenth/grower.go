package main

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"tenthpoint/internal/house"
)

// columns prints rows of words under their headings.
func (p *post) columns(head string, rows [][]any, empty string) error {
	if len(rows) == 0 {
		p.say("%s", empty)
		return nil
	}
	w := tabwriter.NewWriter(p.out, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, head)
	for _, row := range rows {
		for i, cell := range row {
			if i > 0 {
				fmt.Fprint(w, "\t")
			}
			fmt.Fprint(w, cell)
		}
		fmt.Fprintln(w)
	}
	return w.Flush()
}

// growerCommand keeps the list of growers.
type growerCommand struct {
	Add  growerAdd  `cmd:"" help:"Add a grower, or change one."`
	List growerList `cmd:"" help:"List growers."`
}

type growerAdd struct {
	bookFlags
	whoFlags
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

func (c growerAdd) Run(t *terminal) error {
	return c.at(t, writing, c.Who, func(p *post) error {
		g := house.Grower{ID: c.Code, Name: c.Name, Address: c.Address, Phone: c.Phone}
		for _, text := range c.Share {
			one, err := partIn(text)
			if err != nil {
				return err
			}
			if one.owner != c.Code {
				if _, err := p.grower(one.owner); err != nil {
					return err
				}
			}
			g.Shares = append(g.Shares, house.Share{GrowerID: one.owner, Parts: one.parts, Of: one.of})
		}
		if err := p.SetGrower(p, g); err != nil {
			return err
		}
		p.say("Grower %s, %s, is written down.", g.ID, g.Name)
		return nil
	})
}

type growerList struct{ bookFlags }

func (c growerList) Run(t *terminal) error {
	return c.at(t, reading, "", func(p *post) error {
		all, err := p.Growers(p)
		if err != nil {
			return err
		}
		var rows [][]any
		for _, g := range all {
			var shares []string
			for _, s := range g.Shares {
				shares = append(shares, fmt.Sprintf("%s=%s/%s", s.GrowerID, s.Parts, s.Of))
			}
			rows = append(rows, []any{g.ID, g.Name, strings.Join(shares, " ")})
		}
		return p.columns("Code\tName\tShares", rows, "No grower is written down yet.")
	})
}
