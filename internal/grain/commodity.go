package grain

import (
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/quantity"
)

// Commodity is a kind of grain as an elevator buys it.
type Commodity struct {
	// ID names the commodity in editions and in the book; Name is for people.
	ID, Name string
	// Bushel is the legal weight of a bushel in lb/bu, zero where the law
	// read names none or the laws disagree: then weights stay in pounds,
	// hundredweight or tonnes unless the edition states its own bushel.
	Bushel       quantity.Amount
	BushelSource string
	// Factors are in the order a sample is worked through.
	Factors []Factor
	// Grades is the United States grade table; nil where there is none here.
	Grades *GradeTable
	// Special are the words that may be added to a grade.
	Special []SpecialGrade
	// CanadaKind is the kind of grain under which the Canadian moisture
	// classes list this commodity; empty where they do not.
	CanadaKind string
}

// ByID finds a commodity; the error lists the known ids.
func ByID(id string) (Commodity, error) {
	for _, c := range commodities {
		if c.ID == id {
			return c, nil
		}
	}
	return Commodity{}, fmt.Errorf("%q is not a commodity here; known ones are %s", id, knownIDs())
}

func knownIDs() string {
	ids := make([]string, len(commodities))
	for i, c := range commodities {
		ids[i] = c.ID
	}
	return strings.Join(ids, ", ")
}

// All lists every commodity, always in the same order.
func All() []Commodity { return append([]Commodity(nil), commodities...) }

// Factor finds one of the commodity's factors.
func (c Commodity) Factor(id FactorID) (Factor, bool) {
	for _, f := range c.Factors {
		if f.ID == id {
			return f, true
		}
	}
	return Factor{}, false
}

// Dockage is the factor taken off the net weight before anything else, with
// the grain's own recording rule; false where no dockage is determined.
func (c Commodity) Dockage() (Factor, bool) { return c.Factor(Dockage) }

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
