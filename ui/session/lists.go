package session

import (
	"context"
	"slices"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/office"
	"tenthpoint/internal/rates"
	"tenthpoint/ui/model"
)

// Lists is a cache of the book's master records, with the options they make.
type Lists struct {
	Growers   []elevator.Grower
	Trucks    []elevator.Truck
	Bins      []elevator.Bin
	Contracts []elevator.ContractTerms

	GrowerOptions, TruckOptions, BinOptions, CommodityOptions []model.Option

	language Language // of the options
}

// Known returns the lists, read on first use. A list that cannot be read is reported on the status
// line and stays empty.
func (f *Session) Known() *Lists {
	if f.Lists != nil {
		return f.Lists
	}
	ctx := context.Background()
	l := &Lists{language: f.Language}
	var errs [4]error
	l.Growers, errs[0] = office.Growers(ctx, f.Desk)
	l.Trucks, errs[1] = office.Trucks(ctx, f.Desk)
	l.Bins, errs[2] = office.Bins(ctx, f.Desk)
	l.Contracts, errs[3] = office.Contracts(ctx, f.Desk)
	for _, err := range errs {
		if err != nil {
			f.Fail(err)
		}
	}
	l.GrowerOptions = l.makeGrowers()
	l.TruckOptions = l.makeTrucks()
	l.BinOptions = l.makeBins()
	l.CommodityOptions = makeCommodities(f)
	f.Lists = l
	return l
}

func (l *Lists) makeGrowers() []model.Option {
	var out []model.Option
	for _, g := range elevator.Cards(l.Growers) {
		o := model.Option{Code: g.ID, Name: g.Name}
		if n := len(g.Shares); n > 1 {
			o.Detail = l.language.Say("%d shares", n)
		}
		out = append(out, o)
	}
	return out
}

func (l *Lists) makeTrucks() []model.Option {
	var out []model.Option
	for _, t := range l.Trucks {
		o := model.Option{Code: t.ID, Name: t.Plate}
		if g, ok := l.Grower(t.Grower); ok {
			o.Detail = g.Name
		}
		if t.Tare != nil {
			o.Detail = Join(", ", o.Detail, l.language.Say("tare %s", t.Tare))
		}
		out = append(out, o)
	}
	return out
}

func (l *Lists) makeBins() []model.Option {
	var out []model.Option
	for _, b := range l.Bins {
		out = append(out, model.Option{Code: b.ID, Name: b.Name, Detail: l.language.GrainName(b.Commodity)})
	}
	return out
}

// makeCommodities lists the elevator's commodities, with the rates each is settled under today.
func makeCommodities(f *Session) []model.Option {
	var out []model.Option
	for _, g := range f.Desk.Profile().Grains {
		o := model.Option{Code: g.Commodity, Name: f.GrainName(g.Commodity)}
		e, err := f.Desk.Rates().On(g.Schedule, g.Commodity, f.Desk.Today())
		switch {
		case err != nil:
			o.Detail = f.Say("no rates in force today")
		case e.Status == rates.Example:
			o.Detail = f.Say("%s, example - not for trade", e.ID)
		default:
			o.Detail = e.ID
		}
		out = append(out, o)
	}
	return out
}

func (l *Lists) Grower(id string) (elevator.Grower, bool) {
	return Find(l.Growers, func(g elevator.Grower) bool { return g.ID == id && id != "" })
}

func (l *Lists) Truck(id string) (elevator.Truck, bool) {
	return Find(l.Trucks, func(t elevator.Truck) bool { return t.ID == id && id != "" })
}

func (l *Lists) Contract(number string) (elevator.ContractTerms, bool) {
	return Find(l.Contracts, func(c elevator.ContractTerms) bool { return c.Number == number && number != "" })
}

// Find is the first of a list that a function accepts.
func Find[T any](all []T, is func(T) bool) (T, bool) {
	if i := slices.IndexFunc(all, is); i >= 0 {
		return all[i], true
	}
	var none T
	return none, false
}

// KeepChosen returns the key to choose after a list has changed: the same one, while it is still
// listed, else that of the first row; empty in an empty list.
func KeepChosen[T any](all []T, key func(T) string, chosen string) string {
	if len(all) == 0 {
		return ""
	}
	if slices.ContainsFunc(all, func(one T) bool { return key(one) == chosen }) {
		return chosen
	}
	return key(all[0])
}

// GrainName returns the name of a commodity, or its id when it is not known.
func (l Language) GrainName(id string) string {
	if id == "" {
		return ""
	}
	return l.Say(grain.NameOf(id))
}

// GrainInList is the name of a commodity in a list, where the name of a wheat class has no room: the
// trade's letters for it.
func GrainInList(l Language, id string) string {
	switch id {
	case "wheat-hrw":
		return l.Say("HRW")
	case "wheat-hrs":
		return l.Say("HRS")
	case "wheat-srw":
		return l.Say("SRW")
	case "wheat-white":
		return l.Say("White wheat")
	case "wheat-white-club":
		return l.Say("White Club")
	case "wheat-durum":
		return l.Say("Durum")
	}
	return l.GrainName(id)
}

// Join sets the parts that are not empty side by side.
func Join(between string, parts ...string) string {
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
