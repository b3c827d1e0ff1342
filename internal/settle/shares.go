package settle

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/title"
	"tenthpoint/internal/worksheet"
)

// ShareLine is one owner's part of a settlement. The owners' lines add to the whole, and an owner's
// payable is the sum of that owner's own lines.
type ShareLine struct {
	Share    Share
	Net      *worksheet.Step
	Settled  *worksheet.Step
	Quantity *worksheet.Step
	Bushels  *worksheet.Step // nil where bushels are not used
	Drying   *worksheet.Step
	// Deductions are this owner's parts of the settlement's deductions, in the same order; nil for
	// those that apply to nobody's money or weight.
	Deductions []*worksheet.Step
	Value      *worksheet.Step
	// Discounts and Premiums are totals in money; nil in the first engine.
	Discounts, Premiums *worksheet.Step
	Owed
	Payable *worksheet.Step
}

// shareOut splits the settlement among its owners. Each owner's part of a line is rounded down to
// the line's place; the owner the edition names takes the remainder, so that the parts add to the
// whole.
func shareOut(d *calculation) {
	if len(d.facts.Shares) < 2 {
		return
	}
	d.sheet.Section(message.Words("Shares"))
	lines := partWeights(d)
	if d.facts.Price != nil {
		partLine(d, d.out.Value, d.places().Money, func(i int, s *worksheet.Step) { lines[i].Value = s })
	}
	for i := range lines {
		d.engine.owed(d, i, &lines[i])
	}
	d.out.Shares = lines
}

// partWeights parts everything but the value.
func partWeights(d *calculation) []ShareLine {
	lines := make([]ShareLine, len(d.facts.Shares))
	for i, s := range d.facts.Shares {
		lines[i].Share = s
	}
	partLine(d, d.out.Net, d.places().Weight, func(i int, s *worksheet.Step) { lines[i].Net = s })
	partLine(d, d.out.Settled, d.places().Weight, func(i int, s *worksheet.Step) { lines[i].Settled = s })
	partLine(d, d.out.Quantity, d.places().Quantity, func(i int, s *worksheet.Step) { lines[i].Quantity = s })
	if d.out.Bushels == d.out.Quantity {
		for i := range lines {
			lines[i].Bushels = lines[i].Quantity
		}
	} else if d.out.Bushels != nil {
		partLine(d, d.out.Bushels, d.places().Quantity, func(i int, s *worksheet.Step) { lines[i].Bushels = s })
	}
	partDrying(d, func(i int, s *worksheet.Step) { lines[i].Drying = s })
	for _, one := range d.out.Deductions {
		partDeduction(d, one, lines)
	}
	return lines
}

func partDeduction(d *calculation, one Deduction, lines []ShareLine) {
	if one.Step.Value().IsZero() {
		for i := range lines {
			lines[i].Deductions = append(lines[i].Deductions, nil)
		}
		return
	}
	keep := func(i int, s *worksheet.Step) { lines[i].Deductions = append(lines[i].Deductions, s) }
	if own, apart := d.ownDeductions[one.Rule]; apart {
		for i, step := range own {
			keep(i, step)
		}
		return
	}
	partLine(d, one.Step, one.Rule.Rounding, keep)
}

// partDrying shares the drying charge out as the grain, or as the owners have agreed on it.
func partDrying(d *calculation, keep func(int, *worksheet.Step)) {
	if !driesApart(d.facts.Shares) {
		partLine(d, d.out.Drying, d.out.Drying.Rounding(), keep)
		return
	}
	parts := make([]Share, len(d.facts.Shares))
	rest := remainderOwner(d)
	for i, s := range d.facts.Shares {
		parts[i] = Share{Parts: quantity.Int(0, quantity.Plain), Of: quantity.Int(1, quantity.Plain)}
		if s.Drying != nil {
			parts[i].Parts, parts[i].Of = s.Drying.Parts, s.Drying.Of
		}
	}
	if parts[rest].Parts.IsZero() { // who pays for no drying takes no cent left over
		rest = slices.IndexFunc(parts, func(s Share) bool { return !s.Parts.IsZero() })
	}
	partBy(d, parts, rest, d.out.Drying, d.out.Drying.Rounding(), keep)
}

func driesApart(shares []Share) bool {
	return slices.ContainsFunc(shares, func(s Share) bool { return s.Drying != nil })
}

// partLine shares one line out by the parts of the grain.
func partLine(d *calculation, whole *worksheet.Step, place quantity.Rounding, keep func(int, *worksheet.Step)) {
	partBy(d, d.facts.Shares, remainderOwner(d), whole, place, keep)
}

// partBy shares one line out; the owner rest takes what is left over.
func partBy(d *calculation, shares []Share, rest int, whole *worksheet.Step, place quantity.Rounding, keep func(int, *worksheet.Step)) {
	down := quantity.Rounding{Step: place.Step, Rule: quantity.Down}
	if place.IsExact() {
		down = quantity.Unrounded
	}
	steps := make([]*worksheet.Step, len(shares))
	var others []worksheet.Operand
	for i, s := range shares {
		if i == rest {
			continue
		}
		expr := worksheet.Over(worksheet.Times(whole, worksheet.Const(s.Parts)), worksheet.Const(s.Of))
		steps[i] = d.sheet.Work(OwnLine(i+1, whole.ID()), d.holderOf(i).label(whole.Label()), expr, down, worksheet.Unsourced)
		others = append(others, steps[i])
	}
	source := d.edition.Shares.Source
	steps[rest] = d.sheet.Work(OwnLine(rest+1, whole.ID()), d.holderOf(rest).label(whole.Label()), worksheet.Less(whole, others...), quantity.Unrounded, source)
	for i, s := range steps {
		keep(i, s)
	}
}

// remainderOwner returns the index of the owner who takes the rounding remainder.
func remainderOwner(d *calculation) int {
	shares := d.facts.Shares
	switch d.edition.Shares.Remainder {
	case "last":
		return len(shares) - 1
	case "largest":
		best := 0
		for i := range shares {
			if shares[i].fraction().More(shares[best].fraction()) {
				best = i
			}
		}
		return best
	}
	return 0
}

func (s Share) fraction() quantity.Amount {
	return worksheet.Over(worksheet.Const(s.Parts), worksheet.Const(s.Of)).Value()
}

// addOwner adds up one owner's own lines.
func addOwner(d *calculation, i int, line *ShareLine) {
	own := d.holderOf(i)
	docks := []worksheet.Operand{}
	var pays []worksheet.Operand
	for n, step := range line.Deductions {
		if step == nil || step.Value().Unit() != quantity.Dollar {
			continue
		}
		if d.out.Deductions[n].Direction == rule.Pays {
			pays = append(pays, step)
		} else {
			docks = append(docks, step)
		}
	}
	sum := worksheet.Sum(line.Drying, docks...)
	if len(pays) > 0 {
		sum = worksheet.Less(sum, pays...)
	}
	line.Charges = d.sheet.Work(own.id(LineCharges), own.label(message.Words("Charges")), sum, quantity.Unrounded, worksheet.Unsourced)
	if d.facts.Price == nil {
		line.Value = d.sheet.Skip(own.id(LineValue), own.label(message.Words("Value")), quantity.Dollar, d.places().Money, title.Later, worksheet.Unsourced)
		line.Payable = d.sheet.Skip(own.id(LinePayable), own.label(message.Words("Payable")), quantity.Dollar, d.places().Money, title.Later, worksheet.Unsourced)
		return
	}
	line.Payable = d.sheet.Work(own.id(LinePayable), own.label(message.Words("Payable")), worksheet.Less(line.Value, line.Charges), quantity.Unrounded, worksheet.Unsourced)
}
