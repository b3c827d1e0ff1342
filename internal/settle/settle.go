package settle

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/working"
)

// Settlement is a settled load: the sheet, and the lines of it that slips and
// totals read. Every figure here is a step of the sheet.
type Settlement struct {
	// Engine is the one that worked it.
	Engine  Engine
	Edition *rates.Edition
	Sheet   *working.Sheet

	Gross, Tare, Net *working.Step
	Moisture         *working.Step
	Dockage          *working.Step // nil where the grain has none
	Clean            *working.Step
	Wet              *working.Step // weight that water shrink is taken on
	Water            *working.Step // weight taken off; a credit is below nought
	Handling         *working.Step
	Dry              *working.Step
	Settled          *working.Step // weight that is paid for
	Quantity         *working.Step // the same in bu, cwt or t
	Bushels          *working.Step // dry-equivalent bushels; nil where bushels are not used
	Drying           *working.Step
	Deductions       []Deduction // discounts and premiums in the order taken
	// Quality, Discounts and Premiums are totals, in weight and in money; nil in
	// the first engine, whose [Settlement.Summary] works them out.
	Quality, Discounts, Premiums *working.Step
	Price                        *working.Step
	Value                        *working.Step // price x quantity; not applied while the price comes later
	Charges                      *working.Step // drying + discounts - premiums, in money
	Payable                      *working.Step // value - charges; not applied while the price comes later
	Shares                       []ShareLine
}

// Deduction is one discount or premium. Its step's figure is a size, in money
// or in weight; Gives tells the way.
type Deduction struct {
	Rule  *rates.Discount // of the edition
	Gives rates.Gives
	Step  *working.Step
}

// settle works the facts with the parts of an engine.
func (n Engine) settle(by *engine, f Facts, e *rates.Edition) (*Settlement, error) {
	if problems := by.problems(f, e); len(problems) > 0 {
		return nil, problems
	}
	d := &desk{engine: by, number: n.Number(), facts: f, edition: e, out: &Settlement{Engine: n.Number(), Edition: e}}
	d.sheet = working.NewSheet(roomFor(f, e))
	d.out.Sheet, d.out.Deductions = d.sheet, make([]Deduction, 0, len(e.Discounts))
	by.weights(d)
	by.sample(d)
	if len(d.problems) > 0 {
		return nil, d.problems
	}
	for _, place := range e.Order {
		d.take(place)
	}
	if len(d.problems) > 0 {
		return nil, d.problems
	}
	by.quantities(d)
	by.money(d)
	by.shares(d)
	if len(d.problems) > 0 {
		return nil, d.problems
	}
	return d.out, nil
}

// roomFor is about how many steps a settlement has: those of every load, a few
// for each discount, and a line for each owner.
func roomFor(f Facts, e *rates.Edition) int {
	return 33 + 3*len(e.Discounts) + 10*len(f.Shares)
}

// desk is one settlement under way.
type desk struct {
	engine   *engine
	number   Engine
	facts    Facts
	edition  *rates.Edition
	sheet    *working.Sheet
	out      *Settlement
	problems Problems

	found map[grain.FactorID]*working.Step // results as recorded
	left  *working.Step                    // weight left so far
	clean *working.Step
	dry   *working.Step
	isWet bool                       // moisture is above the shrink trigger
	units map[weightIn]*working.Step // quantities already worked
	// docked tells that a discount has already taken of the weight, so that
	// what is left is no longer clean grain less water and handling.
	docked bool
}

func (d *desk) refuse(p Problem) { d.problems = append(d.problems, p) }

func (d *desk) places() rates.Places { return d.edition.Rounding }

// take applies one place of the edition's order.
func (d *desk) take(place string) {
	if len(d.problems) > 0 {
		return
	}
	switch place {
	case "dockage":
		d.engine.dockage(d)
	case "shrink":
		d.engine.shrink(d)
	case "handling":
		d.engine.handling(d)
	case "drying":
		d.engine.drying(d)
	default:
		d.engine.discount(d, place)
	}
}

// off takes a weight step off what is left and keeps the remainder as a step.
func (d *desk) off(id, label string, taken *working.Step) *working.Step {
	if taken.Value().IsZero() {
		return d.left
	}
	d.left = d.sheet.Work(id, label, working.Less(d.left, taken), quantity.Unrounded, "")
	d.somethingLeft(taken)
	return d.left
}

// somethingLeft refuses a deduction that takes the whole load.
func (d *desk) somethingLeft(taken *working.Step) {
	if d.left.Value().Sign() <= 0 {
		d.refuse(Problem{Field: "edition", Sentence: taken.Label() + " takes " + taken.Value().String() + ", which leaves " + d.left.Value().String() + " of the load. Check the sample and edition " + d.edition.ID + "."})
	}
}

// on is the weight a rule is taken on.
func (d *desk) on(b rates.Basis) *working.Step {
	switch b {
	case rates.Net:
		return d.out.Net
	case rates.Clean:
		return d.clean
	case rates.Dry:
		return d.dry
	}
	return d.left
}
