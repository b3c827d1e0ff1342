package settle

import (
	"fmt"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/working"
)

// drying charges for taking the water out.
func (d *desk) drying() {
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
func (d *desk) atLeast(rule rates.Drying, charge working.Expr) working.Operand {
	if !rule.Minimum.Given() || charge.Value().IsZero() {
		return charge
	}
	return working.Higher(charge, d.rate("drying.minimum", "Least drying charge", rule.Minimum))
}

// charge is the charge before minimum and rounding; false when the load was
// refused.
func (d *desk) charge(rule rates.Drying, to, points *working.Step) (working.Expr, bool) {
	if rule.Method == rates.DryPerPoint {
		rate := d.rate("drying.rate", "Drying rate", rule.Rate)
		return working.Times(rate, points, d.amountOn(rule.Basis, rate.Value().Unit())), true
	}
	band, ok := rates.Find(rule.Bands, d.out.Moisture.Value())
	if !ok {
		d.offTable("moisture", "Moisture", d.out.Moisture, rule.Row, rule.Bands)
		return working.Expr{}, false
	}
	if rule.Method == rates.DryBandsWhole {
		return d.wholeBand(rule, band, points), true
	}
	return d.eachBand(rule, to, points), true
}

func (d *desk) wholeBand(rule rates.Drying, band rates.Band, points *working.Step) working.Expr {
	rate := d.rate("drying.rate", "Drying rate", band.Cell)
	d.sheet.Note(rate, fmt.Sprintf("moisture %s is in the row %s", d.out.Moisture.Printed(), band))
	units := d.amountOn(rule.Basis, rate.Value().Unit())
	if isFlat(rate.Value().Unit()) {
		return working.Times(rate, units)
	}
	return working.Times(rate, points, units)
}

// eachBand charges the points that lie in each band at that band's rate. The
// points are counted in the edition's steps first and then laid upon the bands
// from below, so that the bands share out exactly the points that are charged.
func (d *desk) eachBand(rule rates.Drying, to, points *working.Step) working.Expr {
	top := d.sheet.Work("drying.top", "Points counted up to", working.Sum(to, working.AsPercent(points)), quantity.Unrounded, "")
	var parts []working.Operand
	for i, band := range rule.Bands {
		inside := pointsInside(band, to, top, i == len(rule.Bands)-1)
		if inside.Value().Sign() <= 0 {
			continue
		}
		n := i + 1
		share := d.sheet.Work(fmt.Sprintf("drying.points.%d", n), fmt.Sprintf("Points %s", band), inside, quantity.Unrounded, d.edition.Source(band.Cell.Row))
		rate := d.rate(fmt.Sprintf("drying.rate.%d", n), fmt.Sprintf("Drying rate %s", band), band.Cell)
		parts = append(parts, working.Times(rate, share, d.amountOn(rule.Basis, rate.Value().Unit())))
	}
	if len(parts) == 0 {
		return working.Same(working.Const(quantity.Zero(quantity.Dollar)))
	}
	return working.Sum(parts[0], parts[1:]...)
}

// pointsInside is how many of the points from low to top lie in a band. The
// last band also takes what a step upwards has carried past its end.
func pointsInside(b rates.Band, low, top *working.Step, last bool) working.Expr {
	var from, upTo working.Operand = low, top
	if b.HasLow && b.Low.More(low.Value()) {
		from = working.Const(b.Low)
	}
	if b.HasHigh && !last && b.High.Less(top.Value()) {
		upTo = working.Const(b.High)
	}
	return working.Points(upTo, from)
}

func (d *desk) noDrying(reason string) {
	rule := d.edition.Drying
	d.out.Drying = d.sheet.Skip(LineDrying, "Drying charge", quantity.Dollar, rule.Rounding, reason, d.edition.Source(rule.Row))
}

// isFlat reports whether a rate has no points in it.
func isFlat(rate quantity.Unit) bool {
	return rate == quantity.DollarsPerBu || rate == quantity.DollarsPerCwt || rate == quantity.DollarsPerT
}
