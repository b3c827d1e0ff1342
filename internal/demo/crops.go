package demo

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
)

// crop says how a commodity is delivered to the demo elevator.
type crop struct {
	commodity string
	share     int64 // of every hundred loads
	price     int64 // cents a bushel as the season begins
	moisture  span
	factors   []habit
}

// span is a range of hundredths.
type span struct{ low, high int64 }

// habit is a factor, how many of a thousand loads are tested for it, and the range of its results.
type habit struct {
	factor grain.FactorID
	unit   quantity.Unit
	tested int64
	span   span
}

// crops are the possible commodities; those with rates are delivered.
var crops = []crop{
	{"corn", 44, 412, span{1300, 2450}, []habit{
		{grain.TestWeight, quantity.LbPerBushel, 1000, span{5060, 6010}},
		{grain.BrokenCorn, quantity.Percent, 900, span{40, 440}},
		{grain.Damage, quantity.Percent, 500, span{0, 610}},
	}},
	{"soybeans", 28, 1034, span{950, 1640}, []habit{
		{grain.TestWeight, quantity.LbPerBushel, 1000, span{5340, 5880}},
		{grain.ForeignMaterial, quantity.Percent, 900, span{20, 260}},
		{grain.Splits, quantity.Percent, 300, span{200, 1900}},
		{grain.Damage, quantity.Percent, 500, span{0, 290}},
	}},
	{"wheat-hrw", 12, 561, span{1020, 1480}, []habit{
		{grain.TestWeight, quantity.LbPerBushel, 1000, span{5640, 6290}},
		{grain.Dockage, quantity.Percent, 1000, span{10, 230}},
		{grain.Protein, quantity.Percent, 800, span{1010, 1460}},
		{grain.ShrunkenBroken, quantity.Percent, 300, span{60, 480}},
	}},
	{"sorghum", 8, 398, span{1150, 1840}, []habit{
		{grain.TestWeight, quantity.LbPerBushel, 1000, span{5420, 6060}},
		{grain.Dockage, quantity.Percent, 900, span{0, 240}},
		{grain.BrokenSorghum, quantity.Percent, 500, span{110, 690}},
	}},
	{"barley", 4, 452, span{1090, 1620}, []habit{
		{grain.TestWeight, quantity.LbPerBushel, 1000, span{4310, 5140}},
		{grain.Dockage, quantity.Percent, 900, span{0, 260}},
		{grain.Protein, quantity.Percent, 700, span{980, 1390}},
	}},
	{"oats", 2, 338, span{1060, 1520}, []habit{
		{grain.TestWeight, quantity.LbPerBushel, 1000, span{3180, 4020}},
		{grain.ForeignMaterial, quantity.Percent, 500, span{30, 260}},
	}},
	{"canola", 2, 1176, span{740, 1160}, []habit{
		{grain.Dockage, quantity.Percent, 1000, span{60, 420}},
		{grain.Green, quantity.Percent, 700, span{0, 240}},
	}},
}

// wetness is a load's moisture in hundredths. Grain dries in the field: it
// comes in wettest in the first fifth of the season.
func (k crop) wetness(c *chance, day, days int64) int64 {
	drier := (k.moisture.high - k.moisture.low) / 3 * day / max(days, 1)
	m := c.about(k.moisture.low, k.moisture.high-drier)
	if c.in1000(800) {
		m -= m % 10 // most meters show tenths
	}
	return m
}
