package growing_test

import (
	"context"
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/entrytest"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/growing"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/schedules"
)

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// Loads of one farm, grain and year are one line, with each owner's part; the parts are the whole.
func TestProduction(t *testing.T) {
	editions, err := schedules.Editions()
	must(t, err)
	ctx, d := context.Background(), entrytest.Open(t, "lb", editions)
	g, err := entry.Grower(office.NewEntering(ctx, d), "102")
	must(t, err)
	must(t, scalehouse.SetGrower(ctx, d, g.WithFarm(elevator.Farm{Name: "Creek", Shares: g.Shares})))
	for truck, farm := range map[string]string{"1": "creek", "2": "Creek", "3": ""} {
		f := entry.New(office.NewEntering(ctx, d), entry.Start{Direction: load.Inbound, Reason: func(string) string { return "read from the indicator" }})
		for field, text := range map[string]string{"grower": "102", "commodity": "corn", "truck": truck, "gross": "52300", "tare": "24300", "moisture": "15.0", "crop": "2025", "farm": farm} {
			f.Set(field, text)
		}
		_, err := scalehouse.Issue(ctx, d, entrytest.Enter(t, d, f).ID)
		must(t, err)
	}
	farms, err := growing.Production(ctx, d, "102", quantity.Date{}, quantity.Date{})
	must(t, err)
	if len(farms) != 2 || farms[0].Farm != "" || farms[1].Farm != "Creek" {
		t.Fatalf("farms %+v", farms)
	}
	creek := farms[1]
	if creek.Loads != 2 || creek.Quantity.String() != "1,000 bu" || creek.Net.String() != "56,000 lb" || creek.Year != "2025" {
		t.Errorf("creek %+v", creek)
	}
	sum := quantity.Zero(quantity.Bushel)
	for _, o := range creek.Owners {
		sum = sum.Add(o.Quantity)
	}
	if len(creek.Owners) != 2 || !sum.Equal(creek.Quantity) {
		t.Errorf("owners %+v", creek.Owners)
	}
	if later, err := growing.Production(ctx, d, "102", d.Today().AddDays(1), quantity.Date{}); err != nil || len(later) > 0 {
		t.Errorf("later: %v, %v", later, err)
	}
}
