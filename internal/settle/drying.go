package settle

import (
	"fmt"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// chargeDrying charges for taking the water out, by the edition's method.
func chargeDrying(d *calculation) {
	r := d.edition.Drying
	d.sheet.Section("Drying")
	switch {
	case r.Method.Nothing != "":
		noDrying(d, r.Method.Nothing)
		return
	case !d.out.Moisture.Value().More(r.Trigger.Amount):
		noDrying(d, fmt.Sprintf("%s is not above the trigger, %s", d.out.Moisture.Printed(), r.Trigger.Amount.Written()))
		return
	}
	to := d.Rate("drying.to", "Drying counts down to", r.To)
	points := d.Points("drying.points", "Points to dry", to, r.Step)
	charge, ok := r.Method.Work(d, r, to, points)
	if !ok {
		return
	}
	d.out.Drying = d.sheet.Work(LineDrying, "Drying charge", atLeast(d, charge), r.Rounding, d.Source(r.Row))
}

// atLeast raises a charge to the edition's least. A load in a free band, or
// whose points a step has rounded to none, is not charged at all and stays so.
func atLeast(d *calculation, charge worksheet.Expr) worksheet.Operand {
	least := d.edition.Drying.Minimum
	if !least.Given() || charge.Value().IsZero() {
		return charge
	}
	return worksheet.Higher(charge, d.Rate("drying.minimum", "Least drying charge", least))
}

func noDrying(d *calculation, reason string) {
	r := d.edition.Drying
	d.out.Drying = d.sheet.Skip(LineDrying, "Drying charge", quantity.Dollar, r.Rounding, reason, d.Source(r.Row))
}
