package grain

import (
	"slices"

	"tenthpoint/internal/quantity"
)

// commodities is the list behind [All] and [ByID]: grains with a United States
// grade table first, then those that only the Canadian classes know.
var commodities = slices.Concat(
	[]Commodity{corn(), soybeans()},
	wheats(),
	[]Commodity{sorghum(), barley(), maltingBarleySix(), maltingBarleyTwo(),
		oats(), rye(), triticale(), flaxseed(), canola(), sunflower()},
	canadianGrains(),
)

func lbPerBu(text string) quantity.Amount { return quantity.Of(text, quantity.LbPerBushel) }

// noBushel stands where the laws read name no bushel weight, or not one alone.
func noBushel() quantity.Amount { return quantity.Zero(quantity.LbPerBushel) }
