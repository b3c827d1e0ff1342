package scaleticket

import (
	"tenthpoint/internal/rates/discount"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// weightLines is the column from net to the settled weight: dockage, water and handling down to the
// dry weight, then the discounts taken in weight. Handling always has a line of its own.
func weightLines(p *part) {
	col := weightColumn(p.facts)
	net := Line{Field: "net", Label: p.w.Net, Value: col.figure(p.s.Net.Value())}
	if scale, ok := netWeight(p.facts); ok && scale.Unit() != p.s.Net.Value().Unit() {
		net.Notes = some(p.w.worked(p.s.Net))
	}
	p.put(net)
	if p.s.Dockage != nil {
		p.put(takenLine(p.facts, col, p.w.Dockage, p.s.Dockage, ""))
	}
	p.put(waterLine(p.facts, col), handlingLine(p.facts, col))
	p.put(Line{Kind: Total, Field: "dry", Label: p.w.DryWeight, Value: col.figure(p.s.Dry.Value())})
	discounted := false
	for _, d := range p.s.Deductions {
		if d.Rule.Of == discount.OfWeight {
			p.put(discountInWeight(p.facts, col, d))
			discounted = true
		}
	}
	if discounted {
		p.put(Line{Kind: Total, Field: "settled", Label: p.w.SettledWeight, Value: col.figure(p.s.Settled.Value())})
	}
}

func weightColumn(t *facts) column {
	steps := []*worksheet.Step{t.s.Net, t.s.Dockage, t.s.Water, t.s.Handling, t.s.Dry, t.s.Settled}
	for _, d := range t.s.Deductions {
		if d.Rule.Of == discount.OfWeight {
			steps = append(steps, d.Step)
		}
	}
	return columnOfSteps(steps...)
}

// takenLine is the line of a weight taken off, or the reason for none. The note precedes the
// calculation.
func takenLine(t *facts, col column, label string, step *worksheet.Step, note string) Line {
	line := Line{Field: step.ID(), Label: label}
	if step.Kind() == worksheet.NotApplied || step.Value().IsZero() {
		line.Value, line.Notes = t.w.NoDeduction, some(t.w.say(step.Note()))
		return line
	}
	line.Value, line.Notes = col.off(step.Value()), some(t.w.named(note, t.w.worked(step)))
	return line
}

// waterLine is the shrink, with the description of its method.
func waterLine(t *facts, col column) Line {
	label := t.w.Water
	if t.s.Water.Value().Sign() < 0 {
		label = t.w.WaterCredit
	}
	r := t.s.Edition.Shrink
	return takenLine(t, col, label, t.s.Water, t.w.say(r.Method.Ticket(r)))
}

// handlingLine is the handling loss, and its base.
func handlingLine(t *facts, col column) Line {
	r, rate := t.s.Edition.Handling, ""
	if step, ok := t.s.Sheet.Step(settle.HandlingRateLine); ok {
		rate = Joined(" ", t.w.printed(step), t.w.say(r.Method.Ticket(r)))
	}
	return takenLine(t, col, t.w.Handling, t.s.Handling, rate)
}

func discountInWeight(t *facts, col column, d settle.Deduction) Line {
	line := takenLine(t, col, t.w.say(d.Rule.Label), d.Step, basisWords(t, d))
	if d.Direction == rule.Pays && !d.Step.Value().IsZero() {
		line.Value = col.on(d.Step.Value())
	}
	return line
}

// basisWords describes the result and the base of the rule: "6.1 %, on the dry weight".
func basisWords(t *facts, d settle.Deduction) string {
	found := ""
	if f := findingOf(t, d.Rule.Factor.ID); f != nil {
		found = resultWords(t, d.Rule.Factor, *f)
	}
	on := map[rule.Basis]string{
		rule.Net: t.w.OnNet, rule.Clean: t.w.OnClean, rule.Dry: t.w.OnDry, rule.Remaining: t.w.OnLeft,
	}[d.Rule.Basis]
	return Joined(", ", found, on)
}

// worked is the calculation of a step in figures. For a step that only takes another over it is the
// other's; a figure from outside has none.
func (w Words) worked(step *worksheet.Step) string {
	for step.Figures() == step.Printed() && len(step.Uses()) == 1 {
		step = step.Uses()[0]
	}
	return step.FiguresIn(w.Printer)
}
