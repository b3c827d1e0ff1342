package demo

import (
	"slices"

	"tenthpoint/internal/bin/shape"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/quantity"
)

// The people of the demo elevator.
const (
	Manager     = "Harriet Blume"
	Clerk       = "Owen Tarrant"
	SecondClerk = "Noor Castellan"
	Tester      = "Pilar Stensrud"
)

var people = []elevator.Person{
	{Name: Manager, Role: elevator.Manager},
	{Name: Clerk, Role: elevator.Clerk},
	{Name: SecondClerk, Role: elevator.Clerk},
	{Name: Tester, Role: elevator.Tester},
}

// The scale of the demo elevator weighs in pounds, by twenties.
const (
	scaleID    = "1"
	divisionLb = 20
	capacityLb = 120_000
)

// profile is the elevator. The telephone number is one of those set aside for
// invented people.
func profile(grains []elevator.GrainRule, language string) elevator.Profile {
	return elevator.Profile{
		Business: "Ottermill Siding Elevator",
		Street:   "1 Siding Road",
		Town:     "Ottermill (an invented town)",
		Phone:    "555-0100",
		Licence:  "none: example - not for trade",
		Demo:     true,
		Scales: []elevator.Scale{{
			ID:       scaleID,
			Division: quantity.Int(divisionLb, quantity.Lb),
			Capacity: quantity.Int(capacityLb, quantity.Lb),
		}},
		Rules:      "us",
		Grains:     grains,
		RetainDays: 3,
		Weigher:    Clerk,
		Language:   language,
	}
}

// places are the receiving pits and the bins.
var places = []elevator.Bin{
	{ID: "P1", Name: "Pit 1", Paths: paths},
	{ID: "P2", Name: "Pit 2", Paths: paths},
	{ID: "B1", Name: "Bin 1", Commodity: "corn", Shape: tank},
	{ID: "B2", Name: "Bin 2", Commodity: "corn", Shape: tank},
	{ID: "B3", Name: "Bin 3, wet corn", Commodity: "corn", Shape: hopper},
	{ID: "B4", Name: "Bin 4", Commodity: "soybeans", Shape: tank},
	{ID: "B5", Name: "Bin 5", Commodity: "soybeans", Shape: tank},
	{ID: "B6", Name: "Bin 6", Commodity: "wheat-hrw", Shape: tank},
	{ID: "B7", Name: "Bin 7", Commodity: "sorghum", Shape: tank},
	{ID: "H1", Name: "Hopper 1", Commodity: "barley", Shape: hopper},
	{ID: "H2", Name: "Hopper 2", Commodity: "oats", Shape: hopper},
	{ID: "H3", Name: "Hopper 3", Commodity: "canola", Shape: hopper},
	{ID: "F1", Name: "Flat store", Shape: shape.Shape{Form: shape.Flat, Length: feet(200), Width: feet(80), Wall: feet(16), Peak: feet(18)}},
}

// tank is the size of most bins here, hopper that of the smaller ones.
var (
	tank   = shape.Shape{Form: shape.Round, Diameter: feet(60), Wall: feet(80), Peak: feet(12)}
	hopper = shape.Shape{Form: shape.Hopper, Diameter: feet(48), Wall: feet(60), Cone: feet(24)}
)

// paths are the usual paths of the grains that are dumped in either pit; the others are entered by their bin.
var paths = []elevator.Path{{Commodity: "barley", To: "H1"}, {Commodity: "oats", To: "H2"}, {Commodity: "canola", To: "H3"}}

func feet(n int64) quantity.Amount { return quantity.Int(n, quantity.Foot) }

// placesFor returns the destinations of a commodity: the pits from which it usually goes on, else its
// own bins, else a pit.
func placesFor(commodity string) []string {
	var pits, bins []string
	for _, p := range places {
		if p.Onward(commodity) != "" {
			pits = append(pits, p.ID)
		}
		if p.Commodity == commodity {
			bins = append(bins, p.ID)
		}
	}
	switch {
	case len(pits) > 0:
		return pits
	case len(bins) > 0:
		return bins
	}
	return []string{"P1", "P2"}
}

// restsIn is where grain received at a place lies in the end.
func restsIn(place, commodity string) string {
	i := slices.IndexFunc(places, func(b elevator.Bin) bool { return b.ID == place })
	if i >= 0 && places[i].Onward(commodity) != "" {
		return places[i].Onward(commodity)
	}
	return place
}
