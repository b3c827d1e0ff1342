package settle

import (
	"fmt"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/worksheet"
)

// takeShrink takes off the water, by the edition's method.
func takeShrink(d *calculation) {
	rule := d.edition.Shrink
	s := shrinkage{d, rule}
	d.sheet.Section("Shrink")
	d.out.Wet = d.clean
	if rule.Method == rates.NoShrink {
		s.noShrink("this edition takes nothing off for water", rule.Row)
		return
	}
	d.out.Wet = d.on(rule.Basis)
	if d.isWet = d.out.Moisture.Value().More(rule.Trigger.Amount); !d.isWet {
		s.notWet()
		return
	}
	switch rule.Method {
	case rates.Water:
		s.byFormula()
	case rates.PerPoint:
		s.byPoint()
	case rates.ShrinkTable:
		s.byShrinkTable()
	}
	if d.out.Water != nil {
		d.off("after.water", "Weight after water shrink", d.out.Water)
	}
}

// shrinkage is the water of one load under way.
type shrinkage struct {
	*calculation
	rule rates.Shrink
}

// byFormula is W x (Mi - Mf) / (100 - Mf).
func (s shrinkage) byFormula() {
	to := s.rate("shrink.to", "Shrink-to", s.rule.To)
	s.out.Water = s.sheet.Work(LineWater, "Water shrink", water(s.out.Wet, s.out.Moisture, to), s.rule.Rounding, s.edition.Source(s.rule.Row))
}

// water is the weight of water between two moistures; below zero when the
// first is the drier.
func water(weight, from, to *worksheet.Step) worksheet.Expr {
	rest := worksheet.Points(worksheet.Const(hundredPercent), to)
	return worksheet.Over(worksheet.Times(weight, worksheet.Points(from, to)), rest)
}

func (s shrinkage) byPoint() {
	to := s.rate("shrink.to", "Shrink-to", s.rule.To)
	points := s.points("shrink.points", "Points to shrink", to, s.rule.Step)
	rate := s.rate("shrink.rate", "Shrink per point", s.rule.Rate)
	percent := s.sheet.Work("shrink.percent", "Shrink percent", worksheet.Times(points, rate), s.rule.Percent, s.edition.Source(s.rule.Row))
	s.takePercent(percent)
}

func (s shrinkage) byShrinkTable() {
	band, ok := rates.Find(s.rule.Table, s.out.Moisture.Value())
	if !ok {
		s.offTable("moisture", "Moisture", s.out.Moisture, s.rule.Row, s.rule.Table)
		return
	}
	percent := s.rate("shrink.percent", "Shrink percent", band.Cell)
	s.sheet.Note(percent, fmt.Sprintf("moisture %s is in the row %s", s.out.Moisture.Printed(), band))
	s.takePercent(percent)
}

func (s shrinkage) takePercent(percent *worksheet.Step) {
	if !percent.Value().Less(hundredPercent) {
		s.refuse(Problem{Field: "edition", Sentence: fmt.Sprintf("Shrink would be %s of the weight, which leaves nothing (%s). Check the moisture and the edition.", percent.Value(), s.edition.Source(s.rule.Row))})
		return
	}
	s.out.Water = s.sheet.Work(LineWater, "Water shrink", worksheet.PercentOf(percent, s.out.Wet), s.rule.Rounding, s.edition.Source(s.rule.Row))
}

// notWet is grain at or below the trigger: nothing is taken, and where the
// edition says so over-dry grain is credited with the water it lacks.
func (s shrinkage) notWet() {
	moisture := s.out.Moisture
	reason := fmt.Sprintf("%s is not above the trigger, %s", moisture.Printed(), s.rule.Trigger.Amount.Written())
	overDry := moisture.Value().Less(s.rule.To.Amount)
	if !overDry || s.rule.Credit != "dry-matter" {
		if overDry {
			reason += "; over-dry grain brings no credit"
		}
		s.noShrink(reason, s.rule.Row)
		return
	}
	to := s.rate("shrink.to", "Shrink-to", s.rule.To)
	floor := s.rate("shrink.floor", "Driest moisture credited", s.rule.CreditFloor)
	counted := s.sheet.Work("shrink.credited", "Moisture credited", worksheet.Higher(moisture, floor), quantity.Unrounded, s.edition.Source(s.rule.CreditFloor.Row))
	s.out.Water = s.sheet.Work(LineWater, "Water shrink (credit)", water(s.out.Wet, counted, to), s.rule.Rounding, s.edition.Source(s.rule.Row))
	s.off("after.water", "Weight at shrink-to", s.out.Water)
}

func (s shrinkage) noShrink(reason, row string) {
	s.out.Water = s.sheet.Skip(LineWater, "Water shrink", s.edition.Units.Weight, s.rule.Rounding, reason, s.edition.Source(row))
}
