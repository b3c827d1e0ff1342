package demo

import (
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
	{ID: "P1", Name: "Pit 1"},
	{ID: "P2", Name: "Pit 2"},
	{ID: "B1", Name: "Bin 1", Commodity: "corn", Shape: tank},
	{ID: "B2", Name: "Bin 2", Commodity: "corn", Shape: tank},
	{ID: "B3", Name: "Bin 3, wet corn", Commodity: "corn", Shape: shape.Shape{Form: shape.Hopper, Diameter: feet(48), Wall: feet(60), Cone: feet(24)}},
	{ID: "B4", Name: "Bin 4", Commodity: "soybeans", Shape: tank},
	{ID: "B5", Name: "Bin 5", Commodity: "soybeans", Shape: tank},
	{ID: "B6", Name: "Bin 6", Commodity: "wheat-hrw", Shape: tank},
	{ID: "B7", Name: "Bin 7", Commodity: "sorghum", Shape: tank},
	{ID: "F1", Name: "Flat store", Shape: shape.Shape{Form: shape.Flat, Length: feet(200), Width: feet(80), Wall: feet(16), Peak: feet(18)}},
}

// tank is the size of most bins here.
var tank = shape.Shape{Form: shape.Round, Diameter: feet(60), Wall: feet(80), Peak: feet(12)}

func feet(n int64) quantity.Amount { return quantity.Int(n, quantity.Foot) }

// placesFor returns the destinations of a commodity: its own bins, else a pit.
func placesFor(commodity string) []string {
	var out []string
	for _, p := range places {
		if p.Commodity == commodity {
			out = append(out, p.ID)
		}
	}
	if len(out) == 0 {
		return []string{"P1", "P2"}
	}
	return out
}
