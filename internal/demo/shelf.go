package demo

import (
	"context"
	"slices"

	"tenthpoint/internal/dryness"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
)

// kept is a part of a sample on the shelf.
type kept struct {
	load, number, place string
	until               quantity.Date
}

// put notes the retained sample of a visit.
func (s *season) put(v *visit) {
	if v.sample.Kept != "" {
		s.shelf = append(s.shelf, kept{v.id, v.sample.Number, v.sample.Kept, v.sample.Until})
	}
}

// clearing is the tester's last act of a day: discarding the samples that are due, each recorded.
func (s *season) clearing(day quantity.Date) act {
	return act{s.hour(day, 20, 50), Tester, func(ctx context.Context, w *scalehouse.Batch) error {
		for _, k := range s.shelf {
			if k.until.Before(day) {
				gone := office.SampleDiscarded{Load: k.load, Number: k.number, Place: k.place, Until: k.until, Day: day}
				if err := scalehouse.SetRecord(ctx, w, k.load, gone); err != nil {
					return err
				}
			}
		}
		s.shelf = slices.DeleteFunc(s.shelf, func(k kept) bool { return k.until.Before(day) })
		return nil
	}}
}

// setUpBench records the elevator's rules of testing and its limits of dry grain. The limits are
// invented, as the elevator's rates are.
func (s *season) setUpBench(ctx context.Context) error {
	b, err := office.BenchSetup(ctx, s.desk)
	if err != nil {
		return err
	}
	b.Dry = dry()
	b.Policies = []moisture.Policy{cornPolicy()}
	return scalehouse.SetBench(ctx, s.desk, b)
}

// cornPolicy requires two tests of corn, whose moisture differs most within a load.
func cornPolicy() moisture.Policy {
	p := moisture.DefaultPolicy()
	p.Crop, p.Count = "corn", 2
	return p
}

// dry returns the limits of dry grain, by grain: to buy, to keep a short time and to keep long, in
// tenths of a percent.
func dry() []dryness.Rules {
	var out []dryness.Rules
	for _, r := range []struct {
		crop             string
		buy, short, long int64
	}{
		{"corn", 150, 150, 135}, {"soybeans", 130, 130, 115}, {"wheat-hrw", 135, 135, 125}, {"sorghum", 140, 140, 130},
		{"barley", 145, 140, 125}, {"oats", 140, 140, 125}, {"canola", 100, 95, 85},
	} {
		tenths := func(n int64) quantity.Amount { return figure(10*n, quantity.Percent) }
		out = append(out, dryness.Rules{
			Crop: r.crop, Buy: tenths(r.buy), StoreShort: tenths(r.short), StoreLong: tenths(r.long),
			AerateWithin: quantity.Int(1, quantity.Point), Dries: true, WetPit: "P2", Source: "the house: example - not for trade",
		})
	}
	return out
}
