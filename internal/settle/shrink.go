package settle

import (
	"fmt"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/working"
)

// shrink takes off the water, by the edition's method.
func (d *desk) shrink() {
	rule := d.edition.Shrink
	d.sheet.Section("Shrink")
	d.out.Wet = d.clean
	if rule.Method == rates.NoShrink {
		d.noShrink("this edition takes nothing off for water", rule.Row)
		return
	}
	d.out.Wet = d.on(rule.Basis)
	if d.isWet = d.out.Moisture.Value().More(rule.Trigger.Amount); !d.isWet {
		d.notWet(rule)
		return
	}
	switch rule.Method {
	case rates.Water:
		d.byFormula(rule)
	case rates.PerPoint:
		d.byPoint(rule)
	case rates.ShrinkTable:
		d.byShrinkTable(rule)
	}
	if d.out.Water != nil {
		d.off("after.water", "Weight after water shrink", d.out.Water)
	}
}

// byFormula is W x (Mi - Mf) / (100 - Mf).
func (d *desk) byFormula(rule rates.Shrink) {
	to := d.rate("shrink.to", "Shrink-to", rule.To)
	d.out.Water = d.sheet.Work(LineWater, "Water shrink", water(d.out.Wet, d.out.Moisture, to), rule.Rounding, d.edition.Source(rule.Row))
}

// water is the weight of water between two moistures; below nought when the
// first is the drier.
func water(weight, from, to *working.Step) working.Expr {
	rest := working.Points(working.Const(hundredPercent), to)
	return working.Over(working.Times(weight, working.Points(from, to)), rest)
}

func (d *desk) byPoint(rule rates.Shrink) {
	to := d.rate("shrink.to", "Shrink-to", rule.To)
	points := d.points("shrink.points", "Points to shrink", to, rule.Step)
	rate := d.rate("shrink.rate", "Shrink per point", rule.Rate)
	percent := d.sheet.Work("shrink.percent", "Shrink percent", working.Times(points, rate), rule.Percent, d.edition.Source(rule.Row))
	d.takePercent(rule, percent)
}

func (d *desk) byShrinkTable(rule rates.Shrink) {
	band, ok := rates.Find(rule.Table, d.out.Moisture.Value())
	if !ok {
		d.offTable("moisture", "Moisture", d.out.Moisture, rule.Row, rule.Table)
		return
	}
	percent := d.rate("shrink.percent", "Shrink percent", band.Cell)
	d.sheet.Note(percent, fmt.Sprintf("moisture %s is in the row %s", d.out.Moisture.Printed(), band))
	d.takePercent(rule, percent)
}

func (d *desk) takePercent(rule rates.Shrink, percent *working.Step) {
	if !percent.Value().Less(hundredPercent) {
		d.refuse(Problem{Field: "edition", Sentence: fmt.Sprintf("Shrink would be %s of the weight, which leaves nothing (%s). Check the moisture and the edition.", percent.Value(), d.edition.Source(rule.Row))})
		return
	}
	d.out.Water = d.sheet.Work(LineWater, "Water shrink", working.PercentOf(percent, d.out.Wet), rule.Rounding, d.edition.Source(rule.Row))
}

// notWet is grain at or below the trigger: nothing is taken, and where the
// edition says so over-dry grain is credited with the water it lacks.
func (d *desk) notWet(rule rates.Shrink) {
	moisture := d.out.Moisture
	reason := fmt.Sprintf("%s is not above the trigger, %s", moisture.Printed(), rule.Trigger.Amount.Written())
	overDry := moisture.Value().Less(rule.To.Amount)
	if !overDry || rule.Credit != "dry-matter" {
		if overDry {
			reason += "; over-dry grain brings no credit"
		}
		d.noShrink(reason, rule.Row)
		return
	}
	to := d.rate("shrink.to", "Shrink-to", rule.To)
	floor := d.rate("shrink.floor", "Driest moisture credited", rule.CreditFloor)
	counted := d.sheet.Work("shrink.credited", "Moisture credited", working.Higher(moisture, floor), quantity.Unrounded, d.edition.Source(rule.CreditFloor.Row))
	d.out.Water = d.sheet.Work(LineWater, "Water shrink (credit)", water(d.out.Wet, counted, to), rule.Rounding, d.edition.Source(rule.Row))
	d.off("after.water", "Weight at shrink-to", d.out.Water)
}

func (d *desk) noShrink(reason, row string) {
	d.out.Water = d.sheet.Skip(LineWater, "Water shrink", d.edition.Units.Weight, d.edition.Shrink.Rounding, reason, d.edition.Source(row))
}

// rate writes a cell of the edition down.
func (d *desk) rate(id, label string, c rates.Cell) *working.Step {
	return d.sheet.Rate(id, label, c.Amount, d.edition.Source(c.Row))
}

// points are the points of the load's moisture above a level, in the edition's
// steps.
func (d *desk) points(id, label string, to *working.Step, step rates.Step) *working.Step {
	return d.sheet.Work(id, label, working.Points(d.out.Moisture, to), step.Rounding, d.edition.Source(step.Row))
}

// offTable refuses a value that no row of a table holds.
func (d *desk) offTable(field, name string, found *working.Step, row string, bands []rates.Band) {
	sentence := fmt.Sprintf("%s %s is in no row of %s: the first is %s, the last %s. Ask the manager which rate applies.", name, found.Printed(), d.edition.Source(row), bands[0], bands[len(bands)-1])
	d.refuse(Problem{Field: field, Sentence: sentence})
}
