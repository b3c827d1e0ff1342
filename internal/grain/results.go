package grain

import (
	"errors"
	"maps"
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Observations are the results of a sample as measured, by factor. A factor
// that is not in the map was not tested, which is not the same as zero.
type Observations map[FactorID]quantity.Amount

// Record records the observations by the commodity's recording rules, each rounded once from the
// figure as measured. Test weight may come in kg/hL and is recorded in lb/bu. The error joins a
// sentence for every figure that does not belong.
func (c Commodity) Record(obs Observations) (Observations, error) {
	r, err := c.results(obs)
	return r.recorded, err
}

// results are observations checked, as measured and as recorded.
type results struct {
	commodity Commodity
	measured  Observations
	recorded  Observations
}

func (c Commodity) results(obs Observations) (results, error) {
	r := results{commodity: c, measured: Observations{}, recorded: Observations{}}
	var problems []error
	for _, id := range slices.Sorted(maps.Keys(obs)) {
		f, known := c.Factor(id)
		if !known {
			problems = append(problems, message.NotFound.Errorf("%s has no factor called %q; leave it out", c.Name, id))
			continue
		}
		a, err := f.accept(obs[id])
		if err != nil {
			problems = append(problems, err)
			continue
		}
		r.measured[id], r.recorded[id] = a, f.Recorded(a)
	}
	if c.Grades != nil {
		problems = append(problems, c.Grades.misfits(r)...)
	}
	return r, errors.Join(problems...)
}

// accept checks unit and limits, and converts test weight to lb/bu.
func (f Factor) accept(a quantity.Amount) (quantity.Amount, error) {
	if f.ID == TestWeight && a.Unit() == quantity.KgPerHL {
		a, _ = quantity.TestWeight(a, quantity.LbPerBushel) // between these two it cannot fail
	}
	if a.Unit() != f.Unit {
		return a, message.Invalid.Errorf("%s is in %s, but was written down as %s; write it down again in %s", f.Name, f.Unit, a, f.Unit)
	}
	if a.Less(f.Min) || a.More(f.Max) {
		return a, message.Invalid.Errorf("%s %s is outside %s to %s; check the figure and write it down again", f.Name, a, f.Min, f.Max)
	}
	return a, nil
}

func (r results) factor(id FactorID) Factor {
	f, _ := r.commodity.Factor(id)
	return f
}

func (r results) name(id FactorID) string { return r.factor(id).Name }

// show prints a figure with as many decimals as the factor is recorded with.
func (r results) show(id FactorID, a quantity.Amount) string {
	f := r.factor(id)
	if f.Unit == quantity.Count {
		return a.Figure()
	}
	return a.FixedString(f.Record.Places())
}

func (r results) names(ids []FactorID) []string {
	var out []string
	for _, id := range ids {
		out = append(out, r.name(id))
	}
	return out
}

// cautions are the faults noticed on the sample whose place in the standards
// was not read, and which no rule of the table is about. From memory, such grain is sample grade; memory decides
// nothing here, but a better grade is not claimed over it.
func (r results) cautions(ruled []FactorID) []message.Text {
	var out []message.Text
	for _, id := range []FactorID{Musty, Sour, OffOdor, Heating} {
		if a, tested := r.recorded[id]; tested && a.Equal(Yes) && !slices.Contains(ruled, id) {
			out = append(out, message.New("%s was noticed. Such grain may be U.S. Sample grade (from memory, not read in the standards). Ask a licensed inspector", r.name(id)))
		}
	}
	return out
}
