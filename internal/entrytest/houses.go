package entrytest

import (
	"context"
	"testing"
	"time"

	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/scalehouse"
)

// Manager is the person who enters everything.
const Manager = "Mae Orton"

// usualLoads are a whole load of each elevator, which a case types over.
var usualLoads = map[string][]Text{
	"lb":   {{"grower", "103"}, {"commodity", "corn"}, {"truck", "7"}, {"gross", "52300"}, {"moisture", "15.2"}, {"tare", "24300"}},
	"kg":   {{"grower", "103"}, {"commodity", "corn"}, {"truck", "7"}, {"gross", "40010"}, {"moisture", "14.2"}, {"tare", "14000"}},
	"bare": {{"grower", "103"}, {"commodity", "corn"}, {"truck", "7"}, {"gross", "52300"}, {"moisture", "15.2"}, {"tare", "24300"}},
	// guarded is the elevator in pounds with every guard on.
	"guarded": {{"grower", "103"}, {"commodity", "corn"}, {"truck", "9"}, {"gross", "52300"}, {"moisture", "15.2"}, {"tare", "24300"}, {"price", "4.12"}},
	// french is the elevator in pounds, whose language writes a decimal comma.
	"french": {{"grower", "103"}, {"commodity", "corn"}, {"truck", "7"}, {"gross", "52300"}, {"moisture", "15,2"}, {"tare", "24300"}},
	// blank is the elevator in pounds with nothing typed yet.
	"blank": {},
}

func scale(id, division, capacity string, unit quantity.Unit) elevator.Scale {
	return elevator.Scale{ID: id, Division: quantity.Of(division, unit), Capacity: quantity.Of(capacity, unit)}
}

// profile is an elevator in pounds with a second scale for small loads, or one in
// kilograms under the Canadian rules. Oats have a schedule without rates.
func profile(name string) elevator.Profile {
	p := elevator.Profile{
		Business: "Our Elevator", Street: "1 Siding Road", Town: "Nowhere", Phone: "555-0100", Rules: "us", RetainDays: 30,
		Scales: []elevator.Scale{scale("1", "20", "120000", quantity.Lb), scale("small", "0.5", "2000", quantity.Lb)},
		Grains: []elevator.GrainRule{
			{Commodity: "corn", Schedule: "main"}, {Commodity: "soybeans", Schedule: "main"}, {Commodity: "wheat-hrw", Schedule: "main"},
			{Commodity: "canola", Schedule: "main"}, {Commodity: "oats", Schedule: "unwritten"},
		},
		// Every line of the table leaves its truck on the yard, and the stored tare is
		// another than the one that is typed.
		Guards: elevator.GuardRules{{Guard: "on-yard", Act: elevator.GuardOff}, {Guard: "tare", Act: elevator.GuardOff}},
	}
	if name == "guarded" {
		p.Guards = nil
	}
	if name == "french" {
		p.Language = "fr"
	}
	if name == "kg" {
		p.Rules = "canada"
		p.Scales = []elevator.Scale{scale("1", "10", "60000", quantity.Kg), scale("small", "0.5", "2000", quantity.Kg)}
		p.Grains = []elevator.GrainRule{{Commodity: "corn", Schedule: "metric"}, {Commodity: "wheat-hrw", Schedule: "metric"}, {Commodity: "canola", Schedule: "metric"}}
	}
	return p
}

// Open opens a desk at an elevator of the table, with a manager signed in. The test's cleanup
// closes it.
func Open(t testing.TB, name string, set *rates.Set) *scalehouse.Desk {
	t.Helper()
	book, err := sqlite.OpenScratch()
	must(t, err)
	t.Cleanup(func() { must(t, book.Close()) })
	ctx := context.Background()
	d, err := scalehouse.Open(ctx, book, scalehouse.Options{Name: "test", Rates: set, Place: time.UTC, Clock: func() time.Time { return Now }})
	must(t, err)
	must(t, d.SignIn(Manager)) // anyone may, while nobody is on the list
	must(t, scalehouse.SetPerson(ctx, d, elevator.Person{Name: Manager, Role: elevator.Manager}))
	must(t, scalehouse.SetProfile(ctx, d, profile(name)))
	setUp(t, d, name)
	if name == "guarded" {
		must(t, scalehouse.SetBin(ctx, d, elevator.Bin{ID: "B9", Name: "Bin 9, organic corn", Commodity: "corn", Lot: "ORG-1"}))
		must(t, scalehouse.SetContract(ctx, d, elevator.ContractTerms{
			Number: "K-9", Grower: "103", Commodity: "corn", Quantity: quantity.Int(100, quantity.Bushel), Price: quantity.Of("4.12", quantity.DollarsPerBu), Until: d.Today().AddDays(30),
		}))
		trade(t, d)
		must(t, scalehouse.PostPrice(ctx, d, elevator.PostedPrice{Commodity: "soybeans", Day: d.Today(), Price: quantity.Of("10.30", quantity.DollarsPerBu)}))
	}
	return d
}

// trade adds tickets at the usual price to the book, the last of them of truck 8, and truck r2 to
// the yard.
func trade(t testing.TB, d *scalehouse.Desk) {
	t.Helper()
	ctx := context.Background()
	for _, truck := range []string{"31", "32", "8", "r2"} {
		f := entry.New(office.NewEntering(ctx, d), entry.Start{Direction: load.Inbound, Reason: func(string) string { return "read from the indicator" }})
		for _, text := range usualLoads["guarded"] {
			f.Set(text.Field, text.Typed)
		}
		f.Set("truck", truck)
		l := Enter(t, d, f)
		if truck == "r2" {
			return
		}
		_, err := scalehouse.Issue(ctx, d, l.ID)
		must(t, err)
	}
}

func setUp(t testing.TB, d *scalehouse.Desk, name string) {
	t.Helper()
	ctx, unit := context.Background(), d.Profile().WeightUnit()
	part := func(grower string, parts, of int64) elevator.Share {
		return elevator.Share{GrowerID: grower, Parts: quantity.Int(parts, quantity.Plain), Of: quantity.Int(of, quantity.Plain)}
	}
	for _, g := range []elevator.Grower{
		{ID: "901", Name: "Estate of R. Pomfret"},
		{ID: "102", Name: "Beatrix Holloway", Shares: []elevator.Share{part("102", 2, 3), part("901", 1, 3)}},
		{ID: "103", Name: "Cobb Hollow Farm"}, {ID: "104", Name: "Étienne Dubé"}, {ID: "105", Name: "Ann Lee"}, {ID: "106", Name: "Ann Lee"},
		{ID: "A1", Name: "Acre One"}, {ID: "a1", Name: "Acre Other"}, {ID: "B7", Name: "102 Acres"},
	} {
		must(t, scalehouse.SetGrower(ctx, d, g))
	}
	tare := quantity.Of("14000", unit)
	for _, truck := range []elevator.Truck{
		{ID: "7", Plate: "ABC 123", Trailer: "T 9", Grower: "103", Tare: &tare, Taken: quantity.MustDate("2025-10-01")},
		{ID: "8", Plate: "XYZ 777"}, {ID: "r2", Plate: "SAME 1"}, {ID: "r3", Plate: "SAME 1"},
	} {
		must(t, scalehouse.SetTruck(ctx, d, truck))
	}
	if name != "bare" {
		must(t, scalehouse.SetBin(ctx, d, elevator.Bin{ID: "P1", Name: "Pit 1"}))
		must(t, scalehouse.SetBin(ctx, d, elevator.Bin{ID: "B3", Name: "Bin 3, wet corn", Commodity: "corn"}))
	}
	settle := quantity.Bushel
	if unit == quantity.Kg {
		settle = quantity.Tonne
	}
	must(t, scalehouse.SetContract(ctx, d, elevator.ContractTerms{
		Number: "C-1001", Grower: "103", Commodity: "corn", Quantity: quantity.Int(5000, settle),
		Price: quantity.Of("4.32", quantity.Dollar.Per(settle)), Until: quantity.MustDate("2026-03-31"),
	}))
}
