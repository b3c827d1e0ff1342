package settle

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// chargeDrying charges for taking the water out, by the edition's method.
func chargeDrying(d *calculation) {
	r := d.edition.Drying
	d.sheet.Section(message.Words("Drying"))
	switch {
	case !r.Method.Nothing.IsZero():
		noDrying(d, r.Method.Nothing)
		return
	case !d.out.Moisture.Value().More(r.Trigger.Amount):
		noDrying(d, message.New("%s is not above the trigger, %s", d.out.Moisture.Printed(), r.Trigger.Amount.Written()))
		return
	}
	to := d.Rate("drying.to", message.Words("Drying counts down to"), r.To)
	points := d.Points("drying.points", message.Words("Points to dry"), to, r.Step)
	charge, ok := r.Method.Work(d, r, to, points)
	if !ok {
		return
	}
	d.out.Drying = d.sheet.Work(LineDrying, message.Words("Drying charge"), atLeast(d, charge), r.Rounding, r.Source)
}

// atLeast raises a charge to the edition's least. A load in a free band, or
// whose points a step has rounded to none, is not charged at all and stays so.
func atLeast(d *calculation, charge worksheet.Expr) worksheet.Operand {
	least := d.edition.Drying.Minimum
	if !least.Given() || charge.Value().IsZero() {
		return charge
	}
	return worksheet.Higher(charge, d.Rate("drying.minimum", message.Words("Least drying charge"), least))
}

func noDrying(d *calculation, reason message.Text) {
	r := d.edition.Drying
	d.out.Drying = d.sheet.Skip(LineDrying, message.Words("Drying charge"), quantity.Dollar, r.Rounding, reason, r.Source)
}
