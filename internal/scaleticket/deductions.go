package scaleticket

import (
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// weights is the column from net to what is settled: dockage, water and
// handling down to the dry weight, then the discounts taken in weight. Handling
// always has a line of its own.
func (c *composer) weights() {
	col := c.weightColumn()
	net := Line{Field: "net", Label: c.w.Net, Value: col.figure(c.s.Net.Value())}
	if scale, ok := c.net(); ok && scale.Unit() != c.s.Net.Value().Unit() {
		net.Notes = some(c.worked(c.s.Net))
	}
	c.put(net)
	if c.s.Dockage != nil {
		c.put(c.taken(col, c.w.Dockage, c.s.Dockage, ""))
	}
	c.put(c.water(col), c.handling(col))
	c.put(Line{Kind: Total, Field: "dry", Label: c.w.DryWeight, Value: col.figure(c.s.Dry.Value())})
	discounted := false
	for _, d := range c.s.Deductions {
		if d.Rule.Of == rates.OfWeight {
			c.put(c.discountInWeight(col, d))
			discounted = true
		}
	}
	if discounted {
		c.put(Line{Kind: Total, Field: "settled", Label: c.w.SettledWeight, Value: col.figure(c.s.Settled.Value())})
	}
}

func (c *composer) weightColumn() column {
	steps := []*worksheet.Step{c.s.Net, c.s.Dockage, c.s.Water, c.s.Handling, c.s.Dry, c.s.Settled}
	for _, d := range c.s.Deductions {
		if d.Rule.Of == rates.OfWeight {
			steps = append(steps, d.Step)
		}
	}
	return columnOfSteps(steps...)
}

// taken is the line of a weight taken off, or of nothing and why. The note
// leads the figures it was worked from.
func (c *composer) taken(col column, label string, step *worksheet.Step, note string) Line {
	line := Line{Field: step.ID(), Label: label}
	if step.Kind() == worksheet.NotApplied || step.Value().IsZero() {
		line.Value, line.Notes = c.w.NoDeduction, some(c.w.say(step.Note()))
		return line
	}
	line.Value, line.Notes = col.off(step.Value()), some(c.named(note, c.worked(step)))
	return line
}

// water is the shrink, with its method and what the weight is brought to.
func (c *composer) water(col column) Line {
	rule, label := c.s.Edition.Shrink, c.w.Water
	if c.s.Water.Value().Sign() < 0 {
		label = c.w.WaterCredit
	}
	to := rule.To.Amount.Written()
	method := map[rates.ShrinkMethod]string{
		rates.Water:       c.w.ByWater + " " + to,
		rates.PerPoint:    c.w.ByPoint + " " + to,
		rates.ShrinkTable: c.w.ByTable,
	}[rule.Method]
	return c.taken(col, label, c.s.Water, method)
}

// handling is the loss by handling, and what it is a percent of.
func (c *composer) handling(col column) Line {
	of := c.w.HandlingWet
	if c.s.Edition.Handling.Method == rates.OfDried {
		of = c.w.HandlingDried
	}
	rate := ""
	if step, ok := c.s.Sheet.Step(settle.HandlingRateLine); ok {
		rate = step.Printed() + " " + of
	}
	return c.taken(col, c.w.Handling, c.s.Handling, rate)
}

func (c *composer) discountInWeight(col column, d settle.Deduction) Line {
	line := c.taken(col, c.w.say(d.Rule.Label), d.Step, c.basis(d))
	if d.Gives == rates.Pays && !d.Step.Value().IsZero() {
		line.Value = col.on(d.Step.Value())
	}
	return line
}

// basis says what was found and what the rule is taken on: "6.1 %, on the dry
// weight".
func (c *composer) basis(d settle.Deduction) string {
	found := ""
	if f := c.found(d.Rule.Factor.ID); f != nil {
		found = c.result(d.Rule.Factor, *f)
	}
	on := map[rates.Basis]string{
		rates.Net: c.w.OnNet, rates.Clean: c.w.OnClean, rates.Dry: c.w.OnDry, rates.Remaining: c.w.OnLeft,
	}[d.Rule.Basis]
	return Joined(", ", found, on)
}

// worked is the calculation of a step in figures. A step that only takes
// another over is worked as that one is; a figure from outside is not worked.
func (c *composer) worked(step *worksheet.Step) string {
	for step.Figures() == step.Printed() && len(step.Uses()) == 1 {
		step = step.Uses()[0]
	}
	return step.FiguresIn(c.w.Say)
}
