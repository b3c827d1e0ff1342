package main

import (
	"fmt"

	"tenthpoint/internal/load"
	"tenthpoint/internal/rates"
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
	Trailer     string   `help:"Plate of the trailer." placeholder:"PLATE" group:"whose"`
	Driver      string   `help:"Driver." placeholder:"NAME" group:"whose"`
	Bin         string   `help:"Pit or bin." placeholder:"BIN" group:"whose"`
	Schedule    string   `help:"Schedule of rates, in place of the set-up's." placeholder:"NAME" group:"whose"`
	Contract    string   `help:"Contract the load is delivered on; brings its price." placeholder:"NUMBER" group:"whose"`
	Price       string   `help:"Price per bushel, hundredweight or tonne, as the rates settle; \"later\" for none yet." placeholder:"MONEY" group:"whose"`
	PriceSource string   `help:"Where the price comes from." placeholder:"WORDS" group:"whose"`
	Stored      bool     `help:"The grain is stored for its owner." group:"whose"`
	Consignee   string   `help:"Who takes grain that leaves." placeholder:"NAME" group:"whose"`
	Remark      string   `help:"A remark for the ticket." placeholder:"WORDS" group:"whose"`
}

// changed reports whether any of the flags was given.
func (f detailFlags) changed() bool {
	shares := f.Share
	f.Share = nil
	return len(shares) > 0 || fmt.Sprint(f) != fmt.Sprint(detailFlags{})
}

// apply puts what was typed in place of what a load had.
func (f detailFlags) apply(p *post, d load.Details) (load.Details, error) {
	var err error
	for _, set := range []func(*post, *load.Details) error{f.grain, f.grower, f.truck, f.place, f.terms, f.parts} {
		if err = set(p, &d); err != nil {
			return d, err
		}
	}
	for _, one := range []struct {
		typed string
		cell  *string
	}{{f.Class, &d.Class}, {f.CropYear, &d.CropYear}, {f.Driver, &d.Driver}, {f.Consignee, &d.Consignee}, {f.Remark, &d.Remark}, {f.Schedule, &d.Schedule}} {
		if one.typed != "" {
			*one.cell = one.typed
		}
	}
	return d, nil
}

func (f detailFlags) grain(p *post, d *load.Details) error {
	if f.Day != "" {
		day, err := dateIn("Day", f.Day)
		if err != nil {
			return err
		}
		d.Day = day
	}
	if f.Commodity == "" {
		return nil
	}
	c, err := commodityIn(f.Commodity)
	d.Commodity = c.ID
	return err
}

func (f detailFlags) grower(p *post, d *load.Details) error {
	if f.Grower == "" {
		return nil
	}
	g, err := p.grower(f.Grower)
	if err != nil {
		return err
	}
	d.Grower = load.Party{ID: g.ID, Name: g.Name}
	d.Shares, err = p.usualShares(g)
	return err
}

func (f detailFlags) parts(p *post, d *load.Details) error {
	if f.NoShares {
		d.Shares = nil
	}
	if len(f.Share) == 0 {
		return nil
	}
	d.Shares = nil
	for _, text := range f.Share {
		one, err := partIn(text)
		if err != nil {
			return err
		}
		g, err := p.grower(one.owner)
		if err != nil {
			return err
		}
		d.Shares = append(d.Shares, load.Owner{Party: load.Party{ID: g.ID, Name: g.Name}, Parts: one.parts, Of: one.of})
	}
	return nil
}

func (f detailFlags) truck(p *post, d *load.Details) error {
	if f.Truck != "" {
		t, known, err := p.truck(f.Truck)
		if err != nil {
			return err
		}
		d.Truck = load.Truck{ID: t.ID, Plate: t.Plate, Trailer: t.Trailer}
		if !known {
			d.Truck = load.Truck{ID: f.Truck}
		}
	}
	if f.Trailer != "" {
		d.Truck.Trailer = f.Trailer
	}
	return nil
}

func (f detailFlags) place(p *post, d *load.Details) error {
	if f.Bin == "" {
		return nil
	}
	bin, err := p.bin(f.Bin)
	d.Bin = bin
	return err
}

// terms are what becomes of the grain, and its price.
func (f detailFlags) terms(p *post, d *load.Details) error {
	if f.Contract != "" {
		c, err := p.contract(f.Contract)
		if err != nil {
			return err
		}
		d.Disposition, d.ContractNo, d.Price, d.PriceSource = load.Contract, c.Number, &c.Price, "contract "+c.Number
	}
	switch {
	case f.Price == "later":
		d.Price, d.PriceSource = nil, ""
	case f.Price != "":
		e, err := p.edition(*d)
		if err != nil {
			return err
		}
		price, err := priceIn(f.Price, e.Units.Settle)
		if err != nil {
			return err
		}
		d.Price, d.PriceSource = &price, "typed"
		if d.Disposition != load.Contract {
			d.Disposition = load.Sold
		}
	}
	if f.PriceSource != "" {
		d.PriceSource = f.PriceSource
	}
	if f.Stored {
		d.Disposition = load.Stored
	}
	return nil
}

// edition are the rates a load of these details will be settled under.
func (p *post) edition(d load.Details) (*rates.Edition, error) {
	schedule := d.Schedule
	if schedule == "" {
		var taken bool
		if schedule, taken = p.Profile().Schedule(d.Commodity); !taken {
			return nil, refusal("Add it in the set-up with its schedule of rates", "%q is not taken here", d.Commodity)
		}
	}
	day := d.Day
	if day.IsZero() {
		day = p.Today()
	}
	return p.Rates().On(schedule, d.Commodity, day)
}
