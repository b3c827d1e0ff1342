package grain

import (
	"slices"

	"tenthpoint/internal/quantity"
)

// catalog lists the known commodities and their factors: grains with a United States grade table
// first, then those that only the Canadian classes have. The law about them comes from the files in
// force; see [TablesOf].
func catalog() []Commodity {
	return withDockage(withTradeFactors(slices.Concat(
		[]Commodity{corn(), soybeans()},
		wheats(),
		[]Commodity{sorghum(), barley(), maltingBarley("barley-malting-six", "Six-rowed Malting barley"),
			maltingBarley("barley-malting-two", "Two-rowed Malting barley"),
			oats(), rye(), triticale(), flaxseed(), canola(), sunflower()},
		canadianGrains(),
	)))
}

// withDockage gives each grain that has none the dockage that rates may take of it.
func withDockage(all []Commodity) []Commodity {
	for i := range all {
		if _, has := all[i].Dockage(); !has {
			all[i].ifTaken = dockage()
		}
	}
	return all
}

func percent(id FactorID, name string) Factor {
	return Factor{ID: id, Name: name, Unit: quantity.Percent,
		Min: quantity.Zero(quantity.Percent), Max: quantity.Int(100, quantity.Percent)}
}

// tally is a count in a sample whose mass is in its name.
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
	return f
}

func testWeight() Factor {
	return Factor{ID: TestWeight, Name: "Test weight", Unit: quantity.LbPerBushel,
		Min: quantity.Int(10, quantity.LbPerBushel), Max: quantity.Int(90, quantity.LbPerBushel)}
}

func dockage() Factor { return percent(Dockage, "Dockage") }

// sampled returns a grain's own factors and, after them, those of any grain: insects, which are
// counted, and faults that are smelled or felt.
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
