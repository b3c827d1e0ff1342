package house

import (
	"slices"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

type growerFarm struct {
	terminal.BookFlags
	terminal.WhoFlags
	Grower    string   `arg:"" help:"Grower, by code or name."`
	Name      string   `arg:"" help:"Name of the farm, as it is named on loads."`
	Number    string   `help:"Number by which public offices know it." placeholder:"NUMBER"`
	Field     string   `help:"Only this field." placeholder:"FIELD"`
	Place     string   `help:"County and state." placeholder:"PLACE"`
	Commodity string   `help:"Only this grain." placeholder:"GRAIN"`
	CropYear  string   `help:"Only this crop year." placeholder:"YEAR"`
	Share     []string `sep:"none" help:"An owner's part, and after \"drying\" the part of the drying charge where that is another; may be repeated." placeholder:"CODE=2/3"`
	Remove    bool     `help:"Take the farm off the card."`
}

func (growerFarm) Help() string {
	return `A load that names the farm takes its split, in place of the grower's usual shares. Tickets already issued keep theirs.

    tenth grower farm 102 "Home place" --number 4711 --share 102=2/3 --share 901=1/3
    tenth grower farm 102 "Creek" --commodity soybeans --share "102=1/2 drying 1/1" --share "903=1/2 drying none"
    tenth receive --grower 102 --commodity soybeans --farm creek --truck 7 --gross 52300 --tare 24300 --moisture 13.0 --manual "read from the indicator"`
}

func (c growerFarm) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		g, err := entry.Grower(office.NewEntering(p, p.Desk), c.Grower)
		if err != nil {
			return err
		}
		farm := elevator.Farm{Name: strings.TrimSpace(c.Name), Number: c.Number, Field: c.Field, Place: c.Place, CropYear: c.CropYear}
		if farm.Commodity, err = terminal.OnlyGrain(c.Commodity); err != nil {
			return err
		}
		if farm.Shares, err = sharesTyped(p, g.ID, c.Share); err != nil {
			return err
		}
		g = g.WithFarm(farm)
		if c.Remove {
			g.Farms = slices.Clone(g.Farms[:len(g.Farms)-1])
		}
		if err := scalehouse.SetGrower(p, p.Desk, g); err != nil {
			return err
		}
		p.Say("%s", message.Count(len(g.Farms), "%d farm is on the card of %v.", "%d farms are on the card of %v.", g.Name))
		return nil
	})
}

type growerFarms struct {
	terminal.BookFlags
	terminal.ListFlags
	Grower string `arg:"" optional:"" help:"Only this grower's, by code or name."`
}

func (c growerFarms) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		all, err := office.Growers(p, p.Desk)
		if err != nil {
			return err
		}
		only, err := p.OnlyGrower(c.Grower)
		if err != nil {
			return err
		}
		rows := [][]any{}
		for _, g := range elevator.Cards(all) {
			if only != "" && g.ID != only {
				continue
			}
			for _, f := range g.Farms {
				var shares []string
				for _, s := range f.Shares {
					shares = append(shares, s.GrowerID+"="+entry.PartText(s.Parts, s.Of, s.Drying))
				}
				rows = append(rows, []any{g.ID, f.Name, f.Number, f.Field, f.Place, p.GrainName(f.Commodity), f.CropYear, strings.Join(shares, "; ")})
			}
		}
		return p.Table(c.ListFlags, "Grower\tFarm\tNumber\tField\tPlace\tGrain\tCrop year\tShares", rows, "No farm is written down yet.")
	})
}

type growerMerge struct {
	terminal.BookFlags
	terminal.WhoFlags
	Grower string `arg:"" help:"Card that ends, by code or name."`
	Into   string `arg:"" help:"Card that goes on, by code or name."`
	Estate bool   `help:"An estate or heir takes over; without it, both cards are one grower's."`
	Reason string `required:"" help:"Why." placeholder:"WORDS"`
}

func (growerMerge) Help() string {
	return `A manager's act. Loads from now on go to the card that goes on, and both codes and names find it; its account has the tickets of both. Tickets already issued keep the name they print.

    tenth grower merge 117 102 --reason "written down twice" --who "Mae Orton"
    tenth grower merge 102 901 --estate --reason "letters of administration, 2026-11-02" --who "Mae Orton"`
}

func (c growerMerge) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		lists := office.NewEntering(p, p.Desk)
		from, err := entry.Grower(lists, c.Grower)
		if err != nil {
			return err
		}
		into, err := entry.Grower(lists, c.Into)
		if err != nil {
			return err
		}
		kind := elevator.Merged
		if c.Estate {
			kind = elevator.Estate
		}
		if err := scalehouse.TakeOver(p, p.Desk, from.ID, elevator.Takeover{Grower: into.ID, Kind: kind, Reason: c.Reason}); err != nil {
			return err
		}
		p.Say("%v, %v, has taken the place of %v, %v.", into.ID, into.Name, from.ID, from.Name)
		return nil
	})
}
