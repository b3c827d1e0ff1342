package grain

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
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
	// Factors are in the order in which a sample is tested.
	Factors []Factor
	// ifTaken is dockage of a grain that has none among its factors, see [Commodity.TakingDockage].
	ifTaken Factor
	// Grades is the United States grade table; nil where there is none here.
	Grades *GradeTable
	// Special are the words that may be added to a grade.
	Special []SpecialGrade
	// CanadaKind is the kind of grain under which the Canadian moisture
	// classes list this commodity; empty where they do not.
	CanadaKind string
	// moistureGrains are those names in full.
	moistureGrains []string
}

// Factor finds one of the commodity's factors.
func (c Commodity) Factor(id FactorID) (Factor, bool) {
	for _, f := range c.Factors {
		if f.ID == id {
			return f, true
		}
	}
	return Factor{}, false
}

// With is the commodity with more factors after its own.
func (c Commodity) With(more ...Factor) Commodity {
	if len(more) > 0 {
		c.Factors = slices.Concat(c.Factors, more)
	}
	return c
}

// LookedFor returns the factors that a tester looks for and mostly does not find: counts and
// observations, and stones, filth, ergot and sclerotinia by weight.
func (c Commodity) LookedFor() []Factor {
	var out []Factor
	for _, f := range c.Factors {
		if f.Unit == quantity.Count || slices.Contains([]FactorID{Stones, Filth, Ergot, Sclerotinia}, f.ID) {
			out = append(out, f)
		}
	}
	return out
}

// Dockage is the factor taken off the net weight before anything else, with
// the grain's own recording rule; false where no dockage is determined.
func (c Commodity) Dockage() (Factor, bool) { return c.Factor(Dockage) }

// TakingDockage is the commodity with dockage among its factors. Of some grains the United States
// determine none, and Canada of any; rates that take it say so.
func (c Commodity) TakingDockage() Commodity {
	if _, has := c.Dockage(); has {
		return c
	}
	return c.With(c.ifTaken)
}

// measured are all factors a recording rule may be about.
func (c *Commodity) measured() []*Factor {
	out := []*Factor{&c.ifTaken}
	for i := range c.Factors {
		out = append(out, &c.Factors[i])
	}
	return out
}

// ReadCommodity reads the commodity that a table of a rule file names; its zero where it names none
// or one that is not known, which is a problem of the file.
func ReadCommodity(t *tomlfile.Table) Commodity {
	id := t.Text("commodity")
	if id == "" {
		return Commodity{}
	}
	c, err := ByID(id)
	if err != nil {
		t.AddProblem("commodity", message.New("%s: %s", t.Name("commodity"), err), message.New("Write one of those names."))
	}
	return c
}
