package settle

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/rates/discount"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/worksheet"
)

// Settlement is a settled load: the sheet, and the lines of it that slips and
// totals read. Every figure here is a step of the sheet.
type Settlement struct {
	// Engine is the engine that calculated it.
	Engine  Engine
	Edition *rates.Edition
	Sheet   *worksheet.Sheet

	Gross, Tare, Net *worksheet.Step
	Moisture         *worksheet.Step
	Dockage          *worksheet.Step // nil where the grain has none
	Clean            *worksheet.Step
	Wet              *worksheet.Step // weight that water shrink is taken on
	Water            *worksheet.Step // weight taken off; a credit is below zero
	Handling         *worksheet.Step
	Dry              *worksheet.Step
	Settled          *worksheet.Step // weight that is paid for
	Quantity         *worksheet.Step // the same in bu, cwt or t
	Bushels          *worksheet.Step // dry-equivalent bushels; nil where bushels are not used
	Drying           *worksheet.Step
	Deductions       []Deduction // discounts and premiums in the order taken
	// Quality, Discounts and Premiums are totals, in weight and in money; nil in
	// the first engine, whose [Settlement.Summary] works them out.
	Quality, Discounts, Premiums *worksheet.Step
	Price                        *worksheet.Step
	Value                        *worksheet.Step // price x quantity; not applied without a price
	Owed
	Payable *worksheet.Step // not applied without a price
	Shares  []ShareLine
}

// Owed is what is added to a value and taken off it. Charges are drying + discounts
// - premiums, in the first two engines. The third has what services cost,
// adjustments, which are premiums - discounts - services, and the value after
// discounts and premiums; its NetValue is not applied without a price.
type Owed struct {
	Charges, Services, Adjustments, NetValue *worksheet.Step
}

// ToOwner is what charges, discounts and premiums come to: above zero it is paid to
// the owner, below zero it is taken.
func (o Owed) ToOwner() quantity.Amount {
	if o.Adjustments != nil {
		return o.Adjustments.Value()
	}
	return o.Charges.Value().Neg()
}

// Deduction is one discount or premium. Its step's figure is a size, in money or in weight;
// Direction says who gains by it.
type Deduction struct {
	Rule      *discount.Rule // of the edition
	Direction rule.Direction
	Step      *worksheet.Step
}

// settle works the facts with the parts of an engine.
func (n Engine) settle(by *engine, f Facts, e *rates.Edition) (*Settlement, error) {
	if problems := by.problems(f, e); len(problems) > 0 {
		return nil, problems
	}
	d := &calculation{engine: by, number: n.Number(), facts: f, edition: e, out: &Settlement{Engine: n.Number(), Edition: e}}
	d.sheet = worksheet.NewSheet(roomFor(f, e))
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

// roomFor is about how many steps a settlement has: those of every load, one
// for each discount, more where its factor was tested, and the lines of each owner.
func roomFor(f Facts, e *rates.Edition) int {
	return 28 + len(e.Discounts) + 4*len(f.Findings) + 13*len(f.Shares)
}

// calculation is one settlement under way.
type calculation struct {
	engine   *engine
	number   Engine
	facts    Facts
	edition  *rates.Edition
	sheet    *worksheet.Sheet
	out      *Settlement
	problems Problems

	found map[grain.FactorID]*worksheet.Step // results as recorded
	left  *worksheet.Step                    // weight left so far
	clean *worksheet.Step
	dry   *worksheet.Step
	// What there was of the load before water and before handling were taken off.
	beforeWater, beforeHandling *worksheet.Step
	isWet                       bool                         // moisture is above the shrink trigger
	units                       map[weightIn]*worksheet.Step // quantities already worked
	// prices and ownDeductions are the prices of owners with deals of their own, and
	// their parts of what is taken of a price, by the rule.
	prices        map[int]*worksheet.Step
	ownDeductions map[*discount.Rule][]*worksheet.Step
	// docked tells that a discount has already taken of the weight, so that
	// what is left is no longer clean grain less water and handling.
	docked bool
	// changed tells that discounts or premiums have made the weight another.
	changed bool
}

// Sheet, Moisture, Source and the like serve the methods of the rates; see [rule.Working].
func (d *calculation) Sheet() *worksheet.Sheet { return d.sheet }

// Moisture is the load's moisture as recorded.
func (d *calculation) Moisture() *worksheet.Step { return d.out.Moisture }

// Refuse records why the load cannot be settled.
func (d *calculation) Refuse(field string, sentence message.Text) {
	d.refuse(Problem{Field: field, Sentence: sentence})
}

func (d *calculation) refuse(p Problem) { d.problems = append(d.problems, p) }

func (d *calculation) places() rule.Places { return d.edition.Rounding }

// take applies one place of the edition's order.
func (d *calculation) take(place string) {
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

// off subtracts a weight step from the remaining weight and keeps the remainder as a step.
func (d *calculation) off(id string, label message.Text, taken *worksheet.Step) *worksheet.Step {
	if taken.Value().IsZero() {
		return d.left
	}
	d.left = d.sheet.Work(id, label, worksheet.Less(d.left, taken), quantity.Unrounded, worksheet.Unsourced)
	d.somethingLeft(taken)
	return d.left
}

// somethingLeft refuses a deduction that takes the whole load.
func (d *calculation) somethingLeft(taken *worksheet.Step) {
	if d.left.Value().Sign() <= 0 {
		d.refuse(Problem{Field: "edition", Sentence: message.New("%s takes %s, which leaves %s of the load. Check the sample and edition %s.", taken.Label(), taken.Value(), d.left.Value(), d.edition.ID)})
	}
}

// on is the weight a rule is taken on.
func (d *calculation) on(b rule.Basis) *worksheet.Step {
	switch b {
	case rule.Net:
		return d.out.Net
	case rule.Clean:
		return d.clean
	case rule.Dry:
		return d.dry
	}
	return d.left
}

// Rate records a cell of the edition.
func (d *calculation) Rate(id string, label message.Text, c rule.Cell) *worksheet.Step {
	return d.sheet.Rate(id, label, c.Amount, c.Source)
}

// Points are the points of the load's moisture above a level, in the edition's
// steps.
func (d *calculation) Points(id string, label message.Text, to *worksheet.Step, step rule.Step) *worksheet.Step {
	return d.sheet.Work(id, label, worksheet.Points(d.out.Moisture, to), step.Rounding, step.Source)
}

// OffTable refuses a value that no row of a table holds.
func (d *calculation) OffTable(field, name string, found *worksheet.Step, source message.Text, bands []rule.Band) {
	d.Refuse(field, message.New("%s %s is in no row of %s: the first is %s, the last %s. Ask the manager which rate applies.", name, found.Said(), source, bands[0], bands[len(bands)-1]))
}
