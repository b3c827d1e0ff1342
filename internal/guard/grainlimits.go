package guard

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
)

// The ranges below are those an elevator sees in any season, with a margin on both sides. They
// catch figures that were mistyped, or typed into the wrong field; they are no standard, and an
// elevator may set its own.

// span is a range, both ends included; a nil end is open.
type span struct{ from, to *quantity.Amount }

func percents(from, to string) span {
	low, high := quantity.Of(from, quantity.Percent), quantity.Of(to, quantity.Percent)
	return span{&low, &high}
}

func upTo(to string) span {
	high := quantity.Of(to, quantity.Percent)
	return span{to: &high}
}

// moistures by commodity.
var moistures = map[string]span{
	"corn": percents("9", "35"), "soybeans": percents("6", "22"), "sorghum": percents("8", "30"),
	"canola": percents("4", "18"), "rapeseed": percents("4", "18"), "flaxseed": percents("4", "18"), "sunflower": percents("4", "25"),
}

// otherMoistures are those of wheat, barley, oats, rye and the like.
var otherMoistures = percents("7", "25")

func usualMoisture(commodity string) span {
	if s, ok := moistures[commodity]; ok {
		return s
	}
	return otherMoistures
}

// results by factor, of every grain.
var results = map[grain.FactorID]span{
	grain.Damage: upTo("30"), grain.HeatDamage: upTo("10"), grain.ForeignMaterial: upTo("20"), grain.BrokenCorn: upTo("20"), grain.BrokenSorghum: upTo("25"),
	grain.Dockage: upTo("25"), grain.ShrunkenBroken: upTo("30"), grain.Broken: upTo("30"), grain.Splits: upTo("50"), grain.Ergot: upTo("5"),
	grain.Stones: upTo("5"), grain.Sclerotinia: upTo("5"), grain.Green: upTo("40"),
}

// The protein that the grains tested for it have.
var (
	proteinOfBeans = percents("25", "50")
	proteinOfGrain = percents("6", "22")
)

// The test weight of sound and of poor grain, as parts of its legal bushel. Oats are heavier than
// theirs: 40 lb/bu is a special grade of 7 CFR 810.1005, and the prairies grow heavier ones; hulless
// barley weighs as much as wheat.
var (
	lightest  = quantity.Of("0.7", quantity.Plain)
	heaviest  = quantity.Of("1.2", quantity.Plain)
	heaviests = map[string]quantity.Amount{"oats": quantity.Of("1.45", quantity.Plain), "barley": quantity.Of("1.3", quantity.Plain)}
)

func heaviestOf(commodity string) quantity.Amount {
	if part, ok := heaviests[commodity]; ok {
		return part
	}
	return heaviest
}

// usualResult is the range of a result; open where there is none.
func usualResult(c grain.Commodity, f grain.FactorID) span {
	switch {
	case f == grain.Protein && c.ID == "soybeans":
		return proteinOfBeans
	case f == grain.Protein:
		return proteinOfGrain
	case f == grain.TestWeight && !c.Bushel.IsZero():
		low, high := c.Bushel.Mul(lightest), c.Bushel.Mul(heaviestOf(c.ID))
		return span{&low, &high}
	}
	return results[f]
}

// prices are dollars a hundredweight, by commodity.
var prices = map[string][2]string{
	"corn": {"3", "20"}, "soybeans": {"8", "40"}, "sorghum": {"3", "20"}, "canola": {"10", "60"}, "rapeseed": {"10", "60"}, "flaxseed": {"10", "80"},
	"sunflower": {"8", "70"},
}

// otherPrices are those of wheat, barley, oats, rye and the like.
var otherPrices = [2]string{"3", "35"}

func pricesPerCwt(commodity string) span {
	both, ok := prices[commodity]
	if !ok {
		both = otherPrices
	}
	low, high := quantity.Of(both[0], quantity.DollarsPerCwt), quantity.Of(both[1], quantity.DollarsPerCwt)
	return span{&low, &high}
}

// orRange returns the elevator's range, with defaults for unset ends.
func orRange(from, to *quantity.Amount, usual span) (*quantity.Amount, *quantity.Amount) {
	if from == nil {
		from = usual.from
	}
	if to == nil {
		to = usual.to
	}
	return from, to
}
