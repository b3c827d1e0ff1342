package settle

import (
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/working"
)

// ShareLine is what one owner has of a settlement. The owners' lines add to
// the whole, and an owner's payable is the sum of that owner's own lines.
type ShareLine struct {
	Share    Share
	Net      *working.Step
	Settled  *working.Step
	Quantity *working.Step
	Bushels  *working.Step // nil where bushels are not used
	Drying   *working.Step
	// Deductions are this owner's parts of the settlement's deductions, in the
	// same order; nil entries stand for those that apply to nobody's money or
	// weight.
	Deductions []*working.Step
	Value      *working.Step
	// Discounts and Premiums are totals in money; nil in the first engine.
	Discounts, Premiums *working.Step
	Charges             *working.Step
	Payable             *working.Step
}

// shares parts the settlement among its owners. Each owner's part of a line is
// rounded down to the line's place; the owner the edition names takes what is
// left, so that nothing is lost and nothing is made.
func (d *desk) shares() {
	if len(d.facts.Shares) < 2 {
		return
	}
	d.sheet.Section("Shares")
	lines := make([]ShareLine, len(d.facts.Shares))
	for i, s := range d.facts.Shares {
		lines[i].Share = s
	}
	d.part(d.out.Net, d.places().Weight, func(i int, s *working.Step) { lines[i].Net = s })
	d.part(d.out.Settled, d.places().Weight, func(i int, s *working.Step) { lines[i].Settled = s })
	d.part(d.out.Quantity, d.places().Quantity, func(i int, s *working.Step) { lines[i].Quantity = s })
	if d.out.Bushels == d.out.Quantity {
		for i := range lines {
			lines[i].Bushels = lines[i].Quantity
		}
	} else if d.out.Bushels != nil {
		d.part(d.out.Bushels, d.places().Quantity, func(i int, s *working.Step) { lines[i].Bushels = s })
	}
	d.part(d.out.Drying, d.out.Drying.Rounding(), func(i int, s *working.Step) { lines[i].Drying = s })
	for _, one := range d.out.Deductions {
		d.partDeduction(one, lines)
	}
	if d.facts.Price != nil {
		d.part(d.out.Value, d.places().Money, func(i int, s *working.Step) { lines[i].Value = s })
	}
	for i := range lines {
		d.engine.owed(d, i, &lines[i])
	}
	d.out.Shares = lines
}

func (d *desk) partDeduction(one Deduction, lines []ShareLine) {
	if one.Step.Value().IsZero() {
		for i := range lines {
			lines[i].Deductions = append(lines[i].Deductions, nil)
		}
		return
	}
	d.part(one.Step, one.Rule.Rounding, func(i int, s *working.Step) { lines[i].Deductions = append(lines[i].Deductions, s) })
}

// part shares one line out.
func (d *desk) part(whole *working.Step, place quantity.Rounding, keep func(int, *working.Step)) {
	down := quantity.Rounding{Step: place.Step, Rule: quantity.Down}
	if place.IsExact() {
		down = quantity.Unrounded
	}
	rest := d.remainderOwner()
	steps := make([]*working.Step, len(d.facts.Shares))
	var others []working.Operand
	for i, s := range d.facts.Shares {
		if i == rest {
			continue
		}
		expr := working.Over(working.Times(whole, working.Const(s.Parts)), working.Const(s.Of))
		steps[i] = d.sheet.Work(OwnLine(i+1, whole.ID()), s.Owner+": "+whole.Label(), expr, down, "")
		others = append(others, steps[i])
	}
	name := d.facts.Shares[rest].Owner + ": " + whole.Label()
	source := d.edition.Source(d.edition.Shares.Row)
	steps[rest] = d.sheet.Work(OwnLine(rest+1, whole.ID()), name, working.Less(whole, others...), quantity.Unrounded, source)
	for i, s := range steps {
		keep(i, s)
	}
}

// remainderOwner is the index of the owner who takes what rounding leaves.
func (d *desk) remainderOwner() int {
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
	return working.Over(working.Const(s.Parts), working.Const(s.Of)).Value()
}

// owed adds up one owner's own lines.
func (d *desk) owed(i int, line *ShareLine) {
	owner := line.Share.Owner
	docks := []working.Operand{}
	var pays []working.Operand
	for n, step := range line.Deductions {
		if step == nil || step.Value().Unit() != quantity.Dollar {
			continue
		}
		if d.out.Deductions[n].Gives == rates.Pays {
			pays = append(pays, step)
		} else {
			docks = append(docks, step)
		}
	}
	sum := working.Sum(line.Drying, docks...)
	if len(pays) > 0 {
		sum = working.Less(sum, pays...)
	}
	line.Charges = d.sheet.Work(OwnLine(i+1, LineCharges), owner+": Charges", sum, quantity.Unrounded, "")
	if d.facts.Price == nil {
		line.Value = d.sheet.Skip(OwnLine(i+1, LineValue), owner+": Value", quantity.Dollar, d.places().Money, "price later", "")
		line.Payable = d.sheet.Skip(OwnLine(i+1, LinePayable), owner+": Payable", quantity.Dollar, d.places().Money, "price later", "")
		return
	}
	line.Payable = d.sheet.Work(OwnLine(i+1, LinePayable), owner+": Payable", working.Less(line.Value, line.Charges), quantity.Unrounded, "")
}
