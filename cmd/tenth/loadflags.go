package main

import (
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
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

// weightFlags are weights read at the scale.
type weightFlags struct {
	Gross      []string `sep:"none" help:"Weight of the loaded truck; for two drafts truck=WEIGHT and trailer=WEIGHT." placeholder:"WEIGHT" group:"weights"`
	Tare       []string `sep:"none" help:"Weight of the empty truck, likewise." placeholder:"WEIGHT" group:"weights"`
	StoredTare bool     `help:"Use the truck's stored tare." group:"weights"`
	Scale      string   `help:"Scale they were weighed on, where there are several." placeholder:"SCALE" group:"weights"`
	Manual     string   `help:"Why the weights are typed by hand; the ticket marks them MANUAL WT." default:"read from the indicator" placeholder:"WHY" group:"weights"`
	DriverOn   string   `help:"Whether the driver was on the truck." enum:"on,off,unsaid" default:"unsaid" group:"weights"`
}

// weighings are the weights typed.
func (f weightFlags) weighings(p *post, truck load.Truck) ([]load.Weighing, error) {
	var out []load.Weighing
	for _, side := range []struct {
		which load.Which
		typed []string
	}{{load.Gross, f.Gross}, {load.Tare, f.Tare}} {
		for _, text := range side.typed {
			w, err := f.weighing(p, side.which, text)
			if err != nil {
				return nil, err
			}
			out = append(out, w)
		}
	}
	if !f.StoredTare {
		return out, nil
	}
	stored, err := p.storedTare(truck)
	return append(out, stored), err
}

func (f weightFlags) weighing(p *post, which load.Which, text string) (load.Weighing, error) {
	draft, weight, several := strings.Cut(text, "=")
	if !several {
		draft, weight = "", text
	}
	name := strings.ToUpper(string(which[:1])) + string(which[1:])
	a, err := weightIn(name, weight, p.Profile().WeightUnit())
	w := load.Weighing{Which: which, Draft: draft, Weight: a, Source: load.ByHand, Scale: f.Scale, Reason: f.Manual, DriverOn: f.DriverOn}
	if f.DriverOn == "unsaid" {
		w.DriverOn = ""
	}
	return w, err
}

// storedTare is a truck's tare from an earlier weighing.
func (p *post) storedTare(truck load.Truck) (load.Weighing, error) {
	t, known, err := p.truck(truck.ID)
	if err != nil {
		return load.Weighing{}, err
	}
	if !known || t.Tare == nil {
		return load.Weighing{}, refusal("Weigh it empty and give --tare", "truck %q has no stored tare", truck.ID)
	}
	return load.Weighing{Which: load.Tare, Weight: *t.Tare, Source: load.StoredTare, Taken: t.Taken}, nil
}

// sampleFlags are what the bench found.
type sampleFlags struct {
	Moisture string   `help:"Moisture, percent wet basis." placeholder:"PERCENT" group:"sample"`
	Meter    string   `help:"Meter it was read on." placeholder:"METER" group:"sample"`
	Why      string   `help:"Why the moisture is typed." placeholder:"WHY" group:"sample"`
	Factor   []string `sep:"none" help:"Another result; may be repeated." placeholder:"FACTOR=RESULT" group:"sample"`
	Sample   string   `help:"Number of the sample." placeholder:"NUMBER" group:"sample"`
	Tester   string   `help:"Who tested; without it, who acts." placeholder:"NAME" group:"sample"`
	Kept     string   `help:"Where the retained sample is." placeholder:"PLACE" group:"sample"`
	Accept   []string `sep:"none" help:"Settle beyond a limit (a manager's act); may be repeated." placeholder:"LIMIT=REASON" group:"sample"`
}

func (f sampleFlags) tested() bool { return f.Moisture != "" || len(f.Factor) > 0 }

// apply puts what was typed in place of what the bench had found before.
func (f sampleFlags) apply(p *post, d load.Details, s load.Sample) (load.Sample, error) {
	c, err := grain.ByID(d.Commodity)
	if err != nil {
		return s, err
	}
	if f.Moisture != "" {
		m, err := moistureIn(f.Moisture)
		if err != nil {
			return s, err
		}
		s.Moisture = &load.Moisture{Percent: m, Method: "typed at the terminal", Meter: f.Meter, Reason: f.Why}
		s.Flags = nil
	}
	for _, text := range f.Factor {
		found, err := finding(c, text)
		if err != nil {
			return s, err
		}
		s.Findings = append(slices.DeleteFunc(slices.Clone(s.Findings), func(old load.Finding) bool { return old.Factor == found.Factor }), found)
	}
	s.Tester = orElse(f.Tester, p.Who().Name)
	s.Number, s.Kept = orElse(f.Sample, s.Number), orElse(f.Kept, s.Kept)
	if s.Kept != "" && s.Until.IsZero() {
		s.Until = p.keepUntil(d)
	}
	return s, nil
}

// keepUntil is the last day a sample must be kept, by the house's rule.
func (p *post) keepUntil(d load.Details) quantity.Date {
	day := d.Day
	if day.IsZero() {
		day = p.Today()
	}
	days := p.Profile().RetainDays
	if keep, err := p.Retention(p); err == nil {
		days = keep.Days
	}
	return day.AddDays(days)
}

func orElse(text, other string) string {
	if text == "" {
		return other
	}
	return text
}

// accepted are the limits to settle beyond, with their reasons.
func (f sampleFlags) accepted() ([]load.Accepted, error) {
	var out []load.Accepted
	for _, text := range f.Accept {
		limit, reason, ok := strings.Cut(text, "=")
		if !ok {
			return nil, refusal("Write it like bcfm=\"fed at once\"", "%q is no limit and its reason", text)
		}
		out = append(out, load.Accepted{Limit: strings.TrimSpace(limit), Reason: reason})
	}
	return out, nil
}
