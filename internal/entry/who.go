package entry

import (
	"slices"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
)

// whoFields are the fields of owner, grain and truck. The fields that decide the edition are read
// first, and a truck before its plates.
func whoFields(outbound bool) []Field {
	grower := growerField()
	consignee := word("consignee", "Consignee", WhoPart, func(d *load.Details) *string { return &d.Consignee })
	if outbound {
		grower.Label = "Owner"
	} else {
		consignee.Seldom = true
	}
	return slices.Concat([]Field{
		seldom(dayField()), seldom(word("schedule", "Rates", WhoPart, func(d *load.Details) *string { return &d.Schedule })),
		grower, consignee, commodityField(), truckField(),
		seldom(word("crop", "Crop year", WhoPart, func(d *load.Details) *string { return &d.CropYear })),
		seldom(word("field", "Field or bin of origin", WhoPart, func(d *load.Details) *string { return &d.Grown.Field })), farmField(),
		seldom(sharesField()),
		seldom(word("driver", "Driver", WhoPart, func(d *load.Details) *string { return &d.Driver })),
		seldom(word("plate", "Plate", WhoPart, func(d *load.Details) *string { return &d.Truck.Plate })),
		seldom(word("trailer", "Trailer", WhoPart, func(d *load.Details) *string { return &d.Truck.Trailer })),
		seldom(word("class", "Class", WhoPart, func(d *load.Details) *string { return &d.Class })),
		seldom(word("agent", "Agent", WhoPart, func(d *load.Details) *string { return &d.Agent })),
	}, grownFields())
}

func dayField() Field {
	f := Field{ID: "day", Label: "Day", Kind: Day, Part: WhoPart, shown: func(l *load.Load) string { return l.Details.Day.String() }}
	return detail(f, func(d *draft, text string) error {
		day, err := ParseDay("Day", text, d.house.Today())
		if err == nil {
			d.details.Day = day
		}
		return err
	})
}

func growerField() Field {
	f := Field{ID: "grower", Label: "Grower", Kind: Find, Part: WhoPart, shown: func(l *load.Load) string { return codeOf(l.Details.Grower) }}
	return detail(f, func(d *draft, text string) error {
		if text == "" {
			d.details.Grower, d.details.Shares = load.Party{}, nil
			return nil
		}
		g, err := Grower(d.house, text)
		if err != nil {
			return err
		}
		d.details.Grower = load.Party{ID: g.ID, Name: g.Name}
		d.details.Shares, err = UsualShares(d.house, g)
		return err
	})
}

// codeOf is a party as its field holds it: by code, or by name alone.
func codeOf(p load.Party) string {
	if p.ID != "" {
		return p.ID
	}
	return p.Name
}

// UsualShares are a grower's usual shares as a load keeps them, each owner by the
// name on the list.
func UsualShares(in Lists, g elevator.Grower) ([]load.Owner, error) { return ownersOf(in, g.Shares) }

// ownersOf are shares of a card as a load keeps them. An owner whose card was taken over is the one
// who has it now.
func ownersOf(in Lists, shares []elevator.Share) ([]load.Owner, error) {
	all, err := in.Growers()
	if err != nil {
		return nil, err
	}
	var out []load.Owner
	for _, s := range shares {
		party := load.Party{ID: s.GrowerID, Name: s.GrowerID}
		if card, known := elevator.CardOf(all, s.GrowerID); known {
			party = load.Party{ID: card.ID, Name: card.Name}
		}
		out = append(out, load.Owner{Party: party, Parts: s.Parts, Of: s.Of, Drying: s.Drying})
	}
	return out, nil
}

// farmField takes the farm. One on the grower's card brings its split, and its county and state.
func farmField() Field {
	f := Field{ID: "farm", Label: "Farm", Kind: Open, Part: WhoPart, Seldom: true, shown: func(l *load.Load) string { return l.Details.Grown.Farm }}
	return detail(f, func(d *draft, text string) error {
		d.details.Grown.Farm = text
		g, err := Grower(d.house, codeOf(d.details.Grower))
		if err != nil || text == "" {
			return nil // the farm of a grower on no list is a word
		}
		farm, known := g.FarmFor(text, d.details.Grown.Field, d.details.Commodity, d.details.CropYear)
		if !known {
			return nil
		}
		d.details.Grown.Farm, d.details.Grown.Number = farm.Name, farm.Number
		if farm.Place != "" {
			d.details.Grown.Place = farm.Place
		}
		if d.details.Grown.Field == "" {
			d.details.Grown.Field = farm.Field
		}
		if len(farm.Shares) > 0 {
			d.details.Shares, err = ownersOf(d.house, farm.Shares)
		}
		return err
	})
}

func commodityField() Field {
	f := Field{ID: "commodity", Label: "Commodity", Kind: Find, Part: WhoPart, shown: func(l *load.Load) string { return l.Details.Commodity }}
	return detail(f, func(d *draft, text string) error {
		if text == "" {
			d.details.Commodity = ""
			return nil
		}
		c, err := CommodityHere(d.house.Profile(), text)
		if _, several := err.(Ambiguous); several {
			return err
		}
		_, taken := d.house.Profile().Schedule(c.ID)
		if err != nil || !taken && d.details.Schedule == "" {
			none, _ := err.(NoCommodity)
			return Unknown{List: CommodityList, Text: text, Known: none.Known, Near: none.Near}
		}
		d.details.Commodity = c.ID
		if d.details.CropYear == "" && d.details.Direction == load.Inbound {
			d.details.CropYear = d.house.Profile().CropYear(c.ID, d.day())
		}
		return nil
	})
}

func truckField() Field {
	f := Field{ID: "truck", Label: "Truck", Kind: Open, Part: WhoPart, shown: func(l *load.Load) string { return truckCode(l.Details.Truck) }}
	return detail(f, func(d *draft, text string) error {
		if text == "" {
			d.details.Truck = load.Truck{}
			return nil
		}
		t, known, err := Truck(d.house, text)
		switch {
		case err != nil:
			return err
		case known:
			d.details.Truck = load.Truck{ID: t.ID, Plate: t.Plate, Trailer: t.Trailer}
		default:
			d.details.Truck = load.Truck{ID: text}
		}
		return nil
	})
}

func truckCode(t load.Truck) string {
	if t.ID != "" {
		return t.ID
	}
	return t.Plate
}

// noShares means that the grower owns all of the load.
const noShares = "none"

// sharesField takes "102=2/3; 901=1/3", in place of the grower's usual shares;
// nothing or none is that the grower owns it all.
func sharesField() Field {
	f := Field{ID: "shares", Label: "Shares", Kind: Words, Part: WhoPart, shown: sharesText}
	return detail(f, func(d *draft, text string) error {
		if text == "" || strings.EqualFold(text, noShares) {
			d.details.Shares = nil
			return nil
		}
		parts, err := ParseShares(text)
		if err != nil {
			return err
		}
		var owners []load.Owner
		for _, one := range parts {
			g, err := Grower(d.house, one.Owner)
			if err != nil {
				return err
			}
			owners = append(owners, load.Owner{Party: load.Party{ID: g.ID, Name: g.Name}, Parts: one.Parts, Of: one.Of, Drying: one.Drying, Own: ownDeal(d.details.Shares, g.ID)})
		}
		d.details.Shares = owners
		return nil
	})
}

// ownDeal returns an owner's existing deal; it stays when the shares change.
func ownDeal(owners []load.Owner, id string) *load.Deal {
	for _, o := range owners {
		if o.ID == id {
			return o.Own
		}
	}
	return nil
}

func sharesText(l *load.Load) string {
	var out []string
	for _, o := range l.Details.Shares {
		out = append(out, o.ID+"="+PartText(o.Parts, o.Of, o.Drying))
	}
	return strings.Join(out, "; ")
}
