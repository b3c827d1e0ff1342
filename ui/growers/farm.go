package growers

import (
	"context"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/office/growing"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/ask"
)

// cardFarms are the farms of a grower and who shares in them.
func cardFarms(c *session.Card, one elevator.Grower) {
	if len(one.Farms) == 0 {
		return
	}
	c.Part(c.Session.Say("FARMS AND FIELDS"))
	for _, f := range one.Farms {
		var shares []string
		for _, s := range f.Shares {
			shares = append(shares, s.GrowerID+" "+entry.PartText(s.Parts, s.Of, s.Drying))
		}
		grain := ""
		if f.Commodity != "" {
			grain = c.Session.GrainName(f.Commodity)
		}
		c.Noted(model.CardPair, session.Join(", ", f.Name, f.Field), session.Join(", ", shares...), session.Join(", ", f.Number, f.Place, grain, f.CropYear))
	}
}

// cardProduction is this season's production of the farms that loads have named.
func cardProduction(c *session.Card, farms []growing.Farm) {
	first := true
	for _, f := range farms {
		if f.Farm == "" {
			continue
		}
		if first {
			c.Part(c.Session.Say("DELIVERED BY FARM"))
			first = false
		}
		c.Noted(model.CardPair, session.Join(", ", f.Farm, f.Field, c.Session.GrainName(f.Commodity), f.Year), f.Quantity.FixedString(2), c.Session.Say("%d loads, net %s", f.Loads, f.Net))
	}
}

// farmSheet asks for a farm of a grower and who shares in it.
type farmSheet struct {
	growers *Growers
	of      elevator.Grower
}

// askFarm asks for a farm of the chosen grower.
func askFarm(g *Growers) {
	if one, ok := g.grower(); ok {
		farmSheet{g, one}.ask()
	}
}

func (s farmSheet) ask() {
	f := s.growers.session
	fields := []model.AskField{
		{ID: "farm", Label: f.Say("Farm"), Chars: 20, Required: true},
		{ID: "number", Label: f.Say("Number"), Chars: 12, Hint: f.Say("by which public offices know it")},
		{ID: "field", Label: f.Say("Field"), Chars: 14, Hint: f.Say("empty: all")},
		{ID: "place", Label: f.Say("Grown in"), Chars: 24, Hint: f.Say("county and state")},
		{ID: "grain", Label: f.Say("Grain"), Options: f.Known().CommodityOptions, Chars: 20, Hint: f.Say("empty: any")},
		{ID: "year", Label: f.Say("Crop year"), Chars: 8, Hint: f.Say("empty: any")},
	}
	f.Put(model.Ask{
		Draft: "farm", Of: "grower " + s.of.ID,
		Title: f.Say("A farm of %s", s.of.Name), Yes: f.Say("Write down"),
		Text:   f.Say("A load that names it takes this split. A farm written down again takes the place of the one before."),
		Fields: append(fields, ask.ShareFields(f, nil)...),
		Check: func(values map[string]string) map[string]string {
			_, faults := ask.ReadShares(f, values)
			return faults
		},
		Then: s.write,
	})
}

func (s farmSheet) write(values map[string]string) {
	f := s.growers.session
	owners, _ := ask.ReadShares(f, values)
	farm := elevator.Farm{
		Name: strings.TrimSpace(values["farm"]), Number: values["number"], Field: values["field"], Place: values["place"],
		Commodity: values["grain"], CropYear: values["year"], Shares: sharesOf(owners),
	}
	s.growers.write(s.of.WithFarm(farm), f.Say("the farm %s is written down.", farm.Name))
}

// askTakeover asks for the card that takes the place of the chosen one, in a manager's name.
func askTakeover(g *Growers) {
	one, ok := g.grower()
	if !ok {
		return
	}
	f := g.session
	f.Put(model.Ask{
		Title: f.Say("Who takes the place of %s?", one.Name), Yes: f.Say("Take over"),
		Text: f.Say("Loads from now on go to the other card, and both codes and names find it. Tickets already issued keep the name they print."),
		Fields: []model.AskField{
			{ID: "into", Label: f.Say("Card that goes on"), Options: f.Known().GrowerOptions, Chars: 24, Required: true},
			{ID: "kind", Label: f.Say("Because"), Chars: 24, Required: true, Options: []model.Option{
				{Code: string(elevator.Merged), Name: f.Say("both are one grower")}, {Code: string(elevator.Estate), Name: f.Say("an estate or heir takes over")},
			}},
			{ID: "reason", Label: f.Say("Reason"), Chars: 30, Required: true},
			{ID: "who", Label: f.Say("Manager"), Options: f.Managers(), Value: f.ManagerHere(), Chars: 24, Required: true},
		},
		Then: func(values map[string]string) {
			by := elevator.Takeover{Grower: values["into"], Kind: elevator.TakeoverKind(values["kind"]), Reason: values["reason"]}
			err := f.As(values["who"], func() error { return scalehouse.TakeOver(context.Background(), f.Desk, one.ID, by) })
			if err != nil {
				f.Fail(err)
				return
			}
			g.took(by.Grower, f.Say("the card of %s has ended.", one.Name))
		},
	})
}
