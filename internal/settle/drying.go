package settle

import (
	"fmt"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/worksheet"
)

// drying charges for taking the water out.
func (d *calculation) drying() {
	rule := d.edition.Drying
	d.sheet.Section("Drying")
	if rule.Method == rates.NoDrying {
		d.noDrying("this edition charges nothing for drying")
		return
	}
	if !d.out.Moisture.Value().More(rule.Trigger.Amount) {
		d.noDrying(fmt.Sprintf("%s is not above the trigger, %s", d.out.Moisture.Printed(), rule.Trigger.Amount.Written()))
		return
	}
	to := d.rate("drying.to", "Drying counts down to", rule.To)
	points := d.points("drying.points", "Points to dry", to, rule.Step)
	charge, ok := d.charge(rule, to, points)
	if !ok {
		return
	}
	d.out.Drying = d.sheet.Work(LineDrying, "Drying charge", d.atLeast(rule, charge), rule.Rounding, d.edition.Source(rule.Row))
}

// atLeast raises a charge to the edition's least. A load in a free band, or
// whose points a step has rounded to none, is not charged at all and stays so.
func (d *calculation) atLeast(rule rates.Drying, charge worksheet.Expr) worksheet.Operand {
	if !rule.Minimum.Given() || charge.Value().IsZero() {
		return charge
	}
	return worksheet.Higher(charge, d.rate("drying.minimum", "Least drying charge", rule.Minimum))
}

// charge is the charge before minimum and rounding; false when the load was
// refused.
func (d *calculation) charge(rule rates.Drying, to, points *worksheet.Step) (worksheet.Expr, bool) {
	if rule.Method == rates.DryPerPoint {
		rate := d.rate("drying.rate", "Drying rate", rule.Rate)
		return worksheet.Times(rate, points, d.amountOn(rule.Basis, rate.Value().Unit())), true
	}
	band, ok := rates.Find(rule.Bands, d.out.Moisture.Value())
	if !ok {
		d.offTable("moisture", "Moisture", d.out.Moisture, rule.Row, rule.Bands)
		return worksheet.Expr{}, false
	}
	if rule.Method == rates.DryBandsWhole {
		return d.wholeBand(rule, band, points), true
	}
	return d.eachBand(rule, to, points), true
}

func (d *calculation) wholeBand(rule rates.Drying, band rates.Band, points *worksheet.Step) worksheet.Expr {
	rate := d.rate("drying.rate", "Drying rate", band.Cell)
	d.sheet.Note(rate, fmt.Sprintf("moisture %s is in the row %s", d.out.Moisture.Printed(), band))
	units := d.amountOn(rule.Basis, rate.Value().Unit())
	if isFlat(rate.Value().Unit()) {
		return worksheet.Times(rate, units)
	}
	return worksheet.Times(rate, points, units)
}

// eachBand charges the points that lie in each band at that band's rate. The
// points are counted in the edition's steps first and then laid on the bands
// from below, so that the bands share out exactly the points that are charged.
func (d *calculation) eachBand(rule rates.Drying, to, points *worksheet.Step) worksheet.Expr {
	top := d.sheet.Work("drying.top", "Points counted up to", worksheet.Sum(to, worksheet.AsPercent(points)), quantity.Unrounded, "")
	var parts []worksheet.Operand
	for i, band := range rule.Bands {
		inside := pointsInside(band, to, top, i == len(rule.Bands)-1)
		if inside.Value().Sign() <= 0 {
			continue
		}
		n := i + 1
		share := d.sheet.Work(fmt.Sprintf("drying.points.%d", n), fmt.Sprintf("Points %s", band), inside, quantity.Unrounded, d.edition.Source(band.Cell.Row))
		rate := d.rate(fmt.Sprintf("drying.rate.%d", n), fmt.Sprintf("Drying rate %s", band), band.Cell)
		parts = append(parts, worksheet.Times(rate, share, d.amountOn(rule.Basis, rate.Value().Unit())))
	}
	if len(parts) == 0 {
		return worksheet.Same(worksheet.Const(quantity.Zero(quantity.Dollar)))
	}
	return worksheet.Sum(parts[0], parts[1:]...)
}

// pointsInside is how many of the points from low to top lie in a band. The
// last band also takes what a step upwards has carried past its end.
func pointsInside(b rates.Band, low, top *worksheet.Step, last bool) worksheet.Expr {
	var from, upTo worksheet.Operand = low, top
	if b.HasLow && b.Low.More(low.Value()) {
		from = worksheet.Const(b.Low)
	}
	if b.HasHigh && !last && b.High.Less(top.Value()) {
		upTo = worksheet.Const(b.High)
	}
	return worksheet.Points(upTo, from)
}

func (d *calculation) noDrying(reason string) {
	rule := d.edition.Drying
	d.out.Drying = d.sheet.Skip(LineDrying, "Drying charge", quantity.Dollar, rule.Rounding, reason, d.edition.Source(rule.Row))
}

// isFlat reports whether a rate has no points in it.
func isFlat(rate quantity.Unit) bool {
	return rate == quantity.DollarsPerBu || rate == quantity.DollarsPerCwt || rate == quantity.DollarsPerT
}
