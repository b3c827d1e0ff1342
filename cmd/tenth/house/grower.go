package house

import (
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// Grower keeps the list of growers.
type Grower struct {
	Add   growerAdd   `cmd:"" help:"Add a grower, or change one."`
	Farm  growerFarm  `cmd:"" help:"Add a farm of a grower and who shares in it, or change one."`
	Farms growerFarms `cmd:"" help:"List the farms of growers and their splits."`
	Merge growerMerge `cmd:"" help:"Let another card take the place of a grower's."`
	List  growerList  `cmd:"" default:"withargs" help:"List growers."`
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
		g, err := c.known(p)
		if err != nil {
			return err
		}
		if len(c.Share) > 0 {
			if g.Shares, err = sharesTyped(p, c.Code, c.Share); err != nil {
				return err
			}
		}
		if err := scalehouse.SetGrower(p, p.Desk, g); err != nil {
			return err
		}
		p.Say("Grower %s, %s, is written down.", g.ID, g.Name)
		return nil
	})
}

// known is the grower as it is on the list, with what is given.
func (c growerAdd) known(p *terminal.Session) (g elevator.Grower, err error) {
	all, err := office.Growers(p, p.Desk)
	if err != nil {
		return g, err
	}
	for _, one := range all {
		if one.ID == c.Code {
			g = one
		}
	}
	g.ID, g.Name = c.Code, c.Name
	for text, cell := range map[string]*string{c.Address: &g.Address, c.Phone: &g.Phone} {
		if text != "" {
			*cell = text
		}
	}
	return g, nil
}

// sharesTyped are shares typed as CODE=2/3; the grower itself need not be on the list yet.
func sharesTyped(p *terminal.Session, self string, typed []string) ([]elevator.Share, error) {
	var out []elevator.Share
	for _, text := range typed {
		one, err := entry.ParseOwnerShare(text)
		if err != nil {
			return nil, err
		}
		if one.Owner != self {
			if _, err := entry.Grower(office.NewEntering(p, p.Desk), one.Owner); err != nil {
				return nil, err
			}
		}
		out = append(out, elevator.Share{GrowerID: one.Owner, Parts: one.Parts, Of: one.Of, Drying: one.Drying})
	}
	return out, nil
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
		for _, g := range elevator.Cards(all) {
			var shares []string
			for _, s := range g.Shares {
				shares = append(shares, s.GrowerID+"="+entry.PartText(s.Parts, s.Of, s.Drying))
			}
			rows = append(rows, []any{g.ID, g.Name, strings.Join(shares, " ")})
		}
		return p.Table(c.ListFlags, "Code\tName\tShares", rows, "No grower is written down yet.")
	})
}
