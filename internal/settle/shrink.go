package settle

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/shrink"
	"tenthpoint/internal/worksheet"
)

// takeShrink takes off the water, by the edition's method.
func takeShrink(d *calculation) {
	r := d.edition.Shrink
	s := shrinkage{d, r}
	d.sheet.Section(message.Words("Shrink"))
	d.beforeWater, d.out.Wet = d.left, d.clean
	if !r.Method.Nothing.IsZero() {
		s.noShrink(r.Method.Nothing)
		return
	}
	d.out.Wet = d.on(r.Basis)
	if d.isWet = d.out.Moisture.Value().More(r.Trigger.Amount); !d.isWet {
		s.notWet()
		return
	}
	water, ok := r.Method.Work(d, r, d.out.Wet)
	if !ok {
		return
	}
	d.out.Water = d.sheet.Work(LineWater, message.Words("Water shrink"), water, r.Rounding, r.Source)
	d.off("after.water", message.Words("Weight after water shrink"), d.out.Water)
}

// shrinkage is the water of one load under way.
type shrinkage struct {
	*calculation
	rule shrink.Rule
}

// notWet is grain at or below the trigger: nothing is taken, and where the
// edition says so over-dry grain is credited with the water it lacks.
func (s shrinkage) notWet() {
	moisture := s.out.Moisture
	reason := message.New("%s is not above the trigger, %s", moisture.Printed(), s.rule.Trigger.Amount.Written())
	overDry := moisture.Value().Less(s.rule.To.Amount)
	if !overDry || s.rule.Credit != "dry-matter" {
		if overDry {
			reason = message.List("; ", reason, message.New("over-dry grain brings no credit"))
		}
		s.noShrink(reason)
		return
	}
	to := s.Rate("shrink.to", message.Words("Shrink-to"), s.rule.To)
	floor := s.Rate("shrink.floor", message.Words("Driest moisture credited"), s.rule.CreditFloor)
	counted := s.sheet.Work("shrink.credited", message.Words("Moisture credited"), worksheet.Higher(moisture, floor), quantity.Unrounded, s.rule.CreditFloor.Source)
	s.out.Water = s.sheet.Work(LineWater, message.Words("Water shrink (credit)"), shrink.Lost(s.out.Wet, counted, to), s.rule.Rounding, s.rule.Source)
	s.off("after.water", message.Words("Weight at shrink-to"), s.out.Water)
}

func (s shrinkage) noShrink(reason message.Text) {
	s.out.Water = s.sheet.Skip(LineWater, message.Words("Water shrink"), s.edition.Units.Weight, s.rule.Rounding, reason, s.rule.Source)
}
