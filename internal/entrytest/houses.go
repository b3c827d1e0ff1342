package entrytest

import (
	"context"
	"testing"
	"time"

	"tenthpoint/internal/desk"
	"tenthpoint/internal/house"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/store"
)

// Manager is who enters everything.
const Manager = "Mae Orton"

// usualLoads are a whole load of each house, which a case types over.
var usualLoads = map[string][]Text{
	"lb":   {{"grower", "103"}, {"commodity", "corn"}, {"truck", "7"}, {"gross", "52300"}, {"moisture", "15.2"}, {"tare", "24300"}},
	"kg":   {{"grower", "103"}, {"commodity", "corn"}, {"truck", "7"}, {"gross", "40010"}, {"moisture", "14.2"}, {"tare", "14000"}},
	"bare": {{"grower", "103"}, {"commodity", "corn"}, {"truck", "7"}, {"gross", "52300"}, {"moisture", "15.2"}, {"tare", "24300"}},
	// blank is the house in pounds with nothing typed yet.
	"blank": {},
}

func scale(id, division, capacity string, unit quantity.Unit) house.Scale {
	return house.Scale{ID: id, Division: quantity.Of(division, unit), Capacity: quantity.Of(capacity, unit)}
}

// profile is an elevator in pounds with a second scale for small loads, or one in
// kilograms under the Canadian rules. Oats have a schedule without rates.
func profile(name string) house.Profile {
	p := house.Profile{
		Business: "Our Elevator", Street: "1 Siding Road", Town: "Nowhere", Phone: "555-0100", Rules: "us", RetainDays: 30,
		Scales: []house.Scale{scale("1", "20", "120000", quantity.Lb), scale("small", "0.5", "2000", quantity.Lb)},
		Grains: []house.GrainRule{
			{Commodity: "corn", Schedule: "main"}, {Commodity: "soybeans", Schedule: "main"}, {Commodity: "wheat-hrw", Schedule: "main"},
			{Commodity: "canola", Schedule: "main"}, {Commodity: "oats", Schedule: "unwritten"},
		},
	}
	if name == "kg" {
		p.Rules = "canada"
		p.Scales = []house.Scale{scale("1", "10", "60000", quantity.Kg), scale("small", "0.5", "2000", quantity.Kg)}
		p.Grains = []house.GrainRule{{Commodity: "corn", Schedule: "metric"}, {Commodity: "wheat-hrw", Schedule: "metric"}, {Commodity: "canola", Schedule: "metric"}}
	}
	return p
}

// Open opens a desk in a house of the table, with a manager at it. The desk lives
// as long as the test.
func Open(t testing.TB, name string, set *rates.Set) *desk.Desk {
	t.Helper()
	book, err := store.OpenScratch()
	must(t, err)
	t.Cleanup(func() { must(t, book.Close()) })
	ctx := context.Background()
	d, err := desk.Open(ctx, book, desk.Options{Name: "test", Rates: set, Place: time.UTC, Clock: func() time.Time { return Now }})
	must(t, err)
	must(t, d.SignIn(Manager)) // anyone may, while nobody is on the list
	must(t, d.SetPerson(ctx, house.Person{Name: Manager, Role: house.Manager}))
	must(t, d.SetProfile(ctx, profile(name)))
	furnish(t, d, name)
	return d
}

func furnish(t testing.TB, d *desk.Desk, name string) {
	t.Helper()
	ctx, unit := context.Background(), d.Profile().WeightUnit()
	part := func(grower string, parts, of int64) house.Share {
		return house.Share{GrowerID: grower, Parts: quantity.Int(parts, quantity.Plain), Of: quantity.Int(of, quantity.Plain)}
	}
	for _, g := range []house.Grower{
		{ID: "901", Name: "Estate of R. Pomfret"},
		{ID: "102", Name: "Beatrix Holloway", Shares: []house.Share{part("102", 2, 3), part("901", 1, 3)}},
		{ID: "103", Name: "Cobb Hollow Farm"}, {ID: "104", Name: "Étienne Dubé"}, {ID: "105", Name: "Ann Lee"}, {ID: "106", Name: "Ann Lee"},
		{ID: "A1", Name: "Acre One"}, {ID: "a1", Name: "Acre Other"}, {ID: "B7", Name: "102 Acres"},
	} {
		must(t, d.SetGrower(ctx, g))
	}
	tare := quantity.Of("14000", unit)
	for _, truck := range []house.Truck{
		{ID: "7", Plate: "ABC 123", Trailer: "T 9", Grower: "103", Tare: &tare, Taken: quantity.MustDate("2025-10-01")},
		{ID: "8", Plate: "XYZ 777"}, {ID: "r2", Plate: "SAME 1"}, {ID: "r3", Plate: "SAME 1"},
	} {
		must(t, d.SetTruck(ctx, truck))
	}
	if name != "bare" {
		must(t, d.SetBin(ctx, house.Bin{ID: "P1", Name: "Pit 1"}))
		must(t, d.SetBin(ctx, house.Bin{ID: "B3", Name: "Bin 3, wet corn", Commodity: "corn"}))
	}
	settle := quantity.Bushel
	if unit == quantity.Kg {
		settle = quantity.Tonne
	}
	must(t, d.SetContract(ctx, house.ContractTerms{
		Number: "C-1001", Grower: "103", Commodity: "corn", Quantity: quantity.Int(5000, settle),
		Price: quantity.Of("4.32", quantity.Dollar.Per(settle)), Until: quantity.MustDate("2026-03-31"),
	}))
}
