package main

import (
	"strings"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
)

// detailFlags say whose grain it is and where it goes.
type detailFlags struct {
	Grower      string   `help:"Whose grain, by code or name." placeholder:"GROWER" group:"whose"`
	Share       []string `sep:"none" help:"An owner's part, in place of the grower's usual shares; may be repeated." placeholder:"OWNER=2/3" group:"whose"`
	NoShares    bool     `help:"The grower owns all of this load." group:"whose"`
	Commodity   string   `help:"The grain, by id or name." placeholder:"GRAIN" group:"whose"`
	Class       string   `help:"Class of the grain." placeholder:"CLASS" group:"whose"`
	CropYear    string   `help:"Crop year." placeholder:"YEAR" group:"whose"`
	Day         string   `help:"Business day of delivery. Without it, today." placeholder:"YYYY-MM-DD" group:"whose"`
	Truck       string   `help:"Truck, by number or plate." placeholder:"TRUCK" group:"whose"`
	Plate       string   `help:"Plate of the truck." placeholder:"PLATE" group:"whose"`
	Trailer     string   `help:"Plate of the trailer." placeholder:"PLATE" group:"whose"`
	Driver      string   `help:"Driver." placeholder:"NAME" group:"whose"`
	Bin         string   `help:"Pit or bin." placeholder:"BIN" group:"whose"`
	Schedule    string   `help:"Schedule of rates, in place of the set-up's." placeholder:"NAME" group:"whose"`
	Contract    string   `help:"Contract the load is delivered on; brings its price." placeholder:"NUMBER" group:"whose"`
	Price       string   `help:"Price per bushel, hundredweight or tonne, as the rates settle; \"later\" for none yet." placeholder:"MONEY" group:"whose"`
	PriceSource string   `help:"Where the price comes from." placeholder:"WORDS" group:"whose"`
	Sold        bool     `help:"The grain is sold." group:"whose"`
	Stored      bool     `help:"The grain is stored for its owner." group:"whose"`
	Consignee   string   `help:"Who takes grain that leaves." placeholder:"NAME" group:"whose"`
	Agent       string   `help:"Who acts for the owner or the buyer." placeholder:"NAME" group:"whose"`
	Remark      string   `help:"A remark for the ticket." placeholder:"WORDS" group:"whose"`
}

// changed reports whether any of the flags was given.
func (f detailFlags) changed() bool { return len(f.texts()) > 0 }

func (f detailFlags) texts() texts {
	t := texts{}
	for field, text := range map[string]string{
		"grower": f.Grower, "shares": strings.Join(f.Share, "; "), "commodity": f.Commodity, "class": f.Class, "crop": f.CropYear,
		"day": f.Day, "truck": f.Truck, "plate": f.Plate, "trailer": f.Trailer, "agent": f.Agent, "driver": f.Driver, "bin": f.Bin, "schedule": f.Schedule,
		"terms": f.terms(), "price": f.Price, "price-source": f.PriceSource, "consignee": f.Consignee, "remark": f.Remark,
	} {
		t.put(field, text)
	}
	if f.NoShares && len(f.Share) == 0 {
		t.put("shares", "none")
	}
	return t
}

// terms are what becomes of the grain.
func (f detailFlags) terms() string {
	switch {
	case f.Stored:
		return string(load.Stored)
	case f.Sold:
		return string(load.Sold)
	}
	return f.Contract
}

// atTheTerminal are the words that stand in the book beside what was typed here.
var atTheTerminal = entry.Origin{Moisture: "typed at the terminal", Price: "typed"}

// form is a load as it is entered by flags; nil is one that is not in the book.
func (p *post) form(l *load.Load, way load.Direction, weights weightFlags) *entry.Form {
	return entry.New(office.NewEntering(p, p.Desk), entry.Start{
		Book: l, Direction: way, Origin: atTheTerminal,
		DriverOn: weights.driverOn(), Reason: func(string) string { return weights.Manual },
	})
}
