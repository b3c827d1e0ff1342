package grain

import "tenthpoint/internal/quantity"

// Where the recording rules were read.
const (
	cfrTestWeight = "7 CFR 810.102"
	cfrPercent    = "7 CFR 810.104"
	cfrDockage    = "7 CFR 810.104(b)"
	// byLimit marks factors whose limit is itself written in hundredths: a
	// coarser record could not be compared with it.
	byLimit  = "recorded to the place its limit in 7 CFR 810 is written to"
	practice = "common practice, no single source"
)

// Percentages are recorded to the nearest tenth, a figure of 5 going up:
// 2.45 is 2.5 and 0.35 is 0.4 (7 CFR 810.104).
var (
	toTenth     = quantity.To("0.1", quantity.HalfUp)
	toHundredth = quantity.To("0.01", quantity.HalfUp)
)

func percent(id FactorID, name string) Factor {
	return Factor{ID: id, Name: name, Unit: quantity.Percent, Record: toTenth,
		Min: quantity.Zero(quantity.Percent), Max: quantity.Int(100, quantity.Percent), Source: cfrPercent}
}

func hundredths(id FactorID, name string) Factor {
	f := percent(id, name)
	f.Record, f.Source = toHundredth, byLimit
	return f
}

// tally is a count in a sample of the mass its name gives.
func tally(id FactorID, name string) Factor {
	return Factor{ID: id, Name: name, Unit: quantity.Count, Record: quantity.Unrounded,
		Min: quantity.Zero(quantity.Count), Max: quantity.Int(9999, quantity.Count), Source: "a count; nothing to round"}
}

func present(id FactorID, name string) Factor {
	return Factor{ID: id, Name: name, Unit: quantity.Count, YesNo: true, Record: quantity.Unrounded,
		Min: No, Max: Yes, Source: "noticed by the tester"}
}

// moisture is typed within 3 to 60 %: grain is neither drier nor wetter, and
// 1.53 or 153 for 15.3 is caught at the desk.
func moisture() Factor {
	f := percent(Moisture, "Moisture")
	f.Min, f.Max = quantity.Int(3, quantity.Percent), quantity.Int(60, quantity.Percent)
	return f
}

func protein() Factor {
	f := percent(Protein, "Protein")
	f.Max = quantity.Int(60, quantity.Percent)
	f.Source = practice
	return f
}

func testWeight(record quantity.Rounding) Factor {
	return Factor{ID: TestWeight, Name: "Test weight", Unit: quantity.LbPerBushel, Record: record,
		Min: quantity.Int(10, quantity.LbPerBushel), Max: quantity.Int(90, quantity.LbPerBushel), Source: cfrTestWeight}
}

// testWeightTenths is the rule for corn, rye, sorghum, soybeans, triticale and
// wheat.
func testWeightTenths() Factor { return testWeight(toTenth) }

// testWeightHalves is the rule for every other grain: whole and half pounds, a
// fraction of a half pound dropped.
func testWeightHalves() Factor { return testWeight(quantity.To("0.5", quantity.Down)) }

func dockage(record quantity.Rounding, source string) Factor {
	f := percent(Dockage, "Dockage")
	f.Record, f.Source = record, source
	return f
}

// dockageTenths is the rule for wheat and rye.
func dockageTenths() Factor { return dockage(toTenth, cfrDockage) }

// dockageHalves is the rule for barley and triticale: half percents, the rest
// dropped.
func dockageHalves() Factor { return dockage(quantity.To("0.5", quantity.Down), cfrDockage) }

// dockageWhole is the rule for sorghum and flaxseed: whole percents, the rest
// dropped.
func dockageWhole() Factor { return dockage(quantity.To("1", quantity.Down), cfrDockage) }

// dockageByPractice is for grains whose rule nobody here has read.
func dockageByPractice() Factor { return dockage(toTenth, practice) }

// sampled is a grain's own factors and, after them, what may be found in any
// grain: insects, which are counted, and faults that a nose or a hand notices.
func sampled(own ...Factor) []Factor {
	return append(own,
		tally(Weevils, "Live weevils in the sample"),
		tally(Insects, "Other live injurious insects in the sample"),
		present(Infested, "Infested"),
		present(Musty, "Musty odor"),
		present(Sour, "Sour odor"),
		present(OffOdor, "Commercially objectionable foreign odor"),
		present(Heating, "Heating"),
	)
}
