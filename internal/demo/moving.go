package demo

import (
	"context"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
)

// movements are the movements of grain on the last day: corn dried, soybeans moved on,
// fans run, temperatures read.
func movements() []bin.Movement {
	pounds := func(name string, n int64) []bin.Weighed {
		return []bin.Weighed{{Bin: name, Weight: quantity.Int(n, quantity.Lb)}}
	}
	degrees := func(n int64) quantity.Amount { return quantity.Int(n, quantity.Fahrenheit) }
	return []bin.Movement{
		{
			// 50,000 lb at 18 % are 41,000 lb of dry matter, and 47,600 lb at 14 % are 40,936 lb.
			What: bin.Dry, Commodity: "corn", From: pounds("B3", 50_000), Into: pounds("B2", 47_600),
			Drying: &bin.Run{
				MoistureIn: quantity.Int(18, quantity.Percent), MoistureOut: quantity.Int(14, quantity.Percent),
				Fuel: quantity.Int(71, quantity.Gallon), Hours: quantity.Int(3, quantity.Hour),
			},
		},
		{What: bin.Transfer, Commodity: "soybeans", From: pounds("B5", 30_000), Into: pounds("B4", 30_000), Reason: "B5 is wanted for the next crop"},
		{What: bin.Aerate, Commodity: "corn", From: pounds("B1", 0), Hours: quantity.Int(12, quantity.Hour)},
		{What: bin.Temperatures, Commodity: "corn", From: pounds("B1", 0), Readings: []quantity.Amount{degrees(51), degrees(53), degrees(58)}},
	}
}

// moveGrain does what the bins have enough for; a short season leaves some of them empty.
func moveGrain(ctx context.Context, at *scalehouse.Desk, lying heaps) error {
	for _, m := range movements() {
		if lying[heap{m.Commodity, m.From[0].Bin}] < leastLeft {
			continue
		}
		if _, err := scalehouse.MoveGrain(ctx, at, m); err != nil {
			return err
		}
	}
	return nil
}
