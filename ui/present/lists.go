package present

import (
	"context"
	"slices"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/house"
	"tenthpoint/internal/load"
	"tenthpoint/internal/rates"
	"tenthpoint/ui/model"
)

// lists are the standing things of the book, read once until something
// changes, with the options they make.
type lists struct {
	growers   []house.Grower
	trucks    []house.Truck
	bins      []house.Bin
	contracts []house.ContractTerms

	growerOptions, truckOptions, binOptions, commodityOptions []model.Option
}

// known gives the lists, reading them when need be. What cannot be read is
// said on the status line and stays empty.
func (f *Frame) known() *lists {
	if f.lists != nil {
		return f.lists
	}
	ctx := context.Background()
	l := &lists{}
	var errs [4]error
	l.growers, errs[0] = f.Desk.Growers(ctx)
	l.trucks, errs[1] = f.Desk.Trucks(ctx)
	l.bins, errs[2] = f.Desk.Bins(ctx)
	l.contracts, errs[3] = f.Desk.Contracts(ctx)
	for _, err := range errs {
		if err != nil {
			f.Fail(err)
		}
	}
	l.growerOptions = l.makeGrowers()
	l.truckOptions = l.makeTrucks()
	l.binOptions = l.makeBins()
	l.commodityOptions = f.makeCommodities()
	f.lists = l
	return l
}

func (l *lists) makeGrowers() []model.Option {
	var out []model.Option
	for _, g := range l.growers {
		o := model.Option{Code: g.ID, Name: g.Name}
		if n := len(g.Shares); n > 1 {
			o.Detail = Say("%d shares", n)
		}
		out = append(out, o)
	}
	return out
}

func (l *lists) makeTrucks() []model.Option {
	var out []model.Option
	for _, t := range l.trucks {
		o := model.Option{Code: t.ID, Name: t.Plate}
		if g, ok := l.grower(t.Grower); ok {
			o.Detail = g.Name
		}
		if t.Tare != nil {
			o.Detail = join(", ", o.Detail, Say("tare %s", t.Tare))
		}
		out = append(out, o)
	}
	return out
}

func (l *lists) makeBins() []model.Option {
	var out []model.Option
	for _, b := range l.bins {
		out = append(out, model.Option{Code: b.ID, Name: b.Name, Detail: grainName(b.Commodity)})
	}
	return out
}

// makeCommodities lists what the elevator takes, with the rates each is
// settled under today.
func (f *Frame) makeCommodities() []model.Option {
	var out []model.Option
	for _, g := range f.Desk.Profile().Grains {
		o := model.Option{Code: g.Commodity, Name: grainName(g.Commodity)}
		e, err := f.Desk.Rates().On(g.Schedule, g.Commodity, f.Desk.Today())
		switch {
		case err != nil:
			o.Detail = Say("no rates in force today")
		case e.Status == rates.Example:
			o.Detail = Say("%s, example - not for trade", e.ID)
		default:
			o.Detail = e.ID
		}
		out = append(out, o)
	}
	return out
}

func (l *lists) grower(id string) (house.Grower, bool) {
	return find(l.growers, func(g house.Grower) bool { return g.ID == id && id != "" })
}

func (l *lists) truck(id string) (house.Truck, bool) {
	return find(l.trucks, func(t house.Truck) bool { return t.ID == id && id != "" })
}

func (l *lists) contract(number string) (house.ContractTerms, bool) {
	return find(l.contracts, func(c house.ContractTerms) bool { return c.Number == number && number != "" })
}

func find[T any](all []T, is func(T) bool) (T, bool) {
	if i := slices.IndexFunc(all, is); i >= 0 {
		return all[i], true
	}
	var none T
	return none, false
}

// grainName is what a commodity is called, or its id when it is not known.
func grainName(id string) string {
	if id == "" {
		return ""
	}
	c, err := grain.ByID(id)
	if err != nil {
		return id
	}
	return Say(c.Name)
}

// join sets the parts that are not empty side by side.
func join(between string, parts ...string) string {
	out := ""
	for _, p := range parts {
		switch {
		case p == "":
		case out == "":
			out = p
		default:
			out += between + p
		}
	}
	return out
}

// owners are a grower's usual shares as a ticket keeps them.
func (l *lists) owners(g house.Grower) []load.Owner {
	var out []load.Owner
	for _, s := range g.Shares {
		party := load.Party{ID: s.GrowerID, Name: s.GrowerID}
		if other, ok := l.grower(s.GrowerID); ok {
			party.Name = other.Name
		}
		out = append(out, load.Owner{Party: party, Parts: s.Parts, Of: s.Of})
	}
	return out
}
