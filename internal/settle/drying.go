package settle

import (
	"fmt"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/worksheet"
)

// chargeDrying charges for taking the water out.
func chargeDrying(d *calculation) {
	rule := d.edition.Drying
	c := dryingCharge{d, rule}
	d.sheet.Section("Drying")
	if rule.Method == rates.NoDrying {
		c.noDrying("this edition charges nothing for drying")
		return
	}
	if !d.out.Moisture.Value().More(rule.Trigger.Amount) {
		c.noDrying(fmt.Sprintf("%s is not above the trigger, %s", d.out.Moisture.Printed(), rule.Trigger.Amount.Written()))
		return
	}
	to := d.rate("drying.to", "Drying counts down to", rule.To)
	points := d.points("drying.points", "Points to dry", to, rule.Step)
	charge, ok := c.charge(to, points)
	if !ok {
		return
	}
	d.out.Drying = d.sheet.Work(LineDrying, "Drying charge", c.atLeast(charge), rule.Rounding, d.edition.Source(rule.Row))
}

// dryingCharge is the drying charge of one load under way.
type dryingCharge struct {
	*calculation
	rule rates.Drying
}

// atLeast raises a charge to the edition's least. A load in a free band, or
// whose points a step has rounded to none, is not charged at all and stays so.
func (c dryingCharge) atLeast(charge worksheet.Expr) worksheet.Operand {
	if !c.rule.Minimum.Given() || charge.Value().IsZero() {
		return charge
	}
	return worksheet.Higher(charge, c.rate("drying.minimum", "Least drying charge", c.rule.Minimum))
}

// charge is the charge before minimum and rounding; false when the load was
// refused.
func (c dryingCharge) charge(to, points *worksheet.Step) (worksheet.Expr, bool) {
	if c.rule.Method == rates.DryPerPoint {
		rate := c.rate("drying.rate", "Drying rate", c.rule.Rate)
		return worksheet.Times(rate, points, c.amountOn(c.rule.Basis, rate.Value().Unit())), true
	}
	band, ok := rates.Find(c.rule.Bands, c.out.Moisture.Value())
	if !ok {
		c.offTable("moisture", "Moisture", c.out.Moisture, c.rule.Row, c.rule.Bands)
		return worksheet.Expr{}, false
	}
	if c.rule.Method == rates.DryBandsWhole {
		return c.wholeBand(band, points), true
	}
	return c.eachBand(to, points), true
}

func (c dryingCharge) wholeBand(band rates.Band, points *worksheet.Step) worksheet.Expr {
	rate := c.rate("drying.rate", "Drying rate", band.Cell)
	c.sheet.Note(rate, fmt.Sprintf("moisture %s is in the row %s", c.out.Moisture.Printed(), band))
	units := c.amountOn(c.rule.Basis, rate.Value().Unit())
	if isFlat(rate.Value().Unit()) {
		return worksheet.Times(rate, units)
	}
	return worksheet.Times(rate, points, units)
}

// eachBand charges the points that lie in each band at that band's rate. The
// points are counted in the edition's steps first and then laid on the bands
// from below, so that the bands share out exactly the points that are charged.
func (c dryingCharge) eachBand(to, points *worksheet.Step) worksheet.Expr {
	top := c.sheet.Work("drying.top", "Points counted up to", worksheet.Sum(to, worksheet.AsPercent(points)), quantity.Unrounded, "")
	var parts []worksheet.Operand
	for i, band := range c.rule.Bands {
		inside := pointsInside(band, to, top, i == len(c.rule.Bands)-1)
		if inside.Value().Sign() <= 0 {
			continue
		}
		n := i + 1
		share := c.sheet.Work(fmt.Sprintf("drying.points.%d", n), fmt.Sprintf("Points %s", band), inside, quantity.Unrounded, c.edition.Source(band.Cell.Row))
		rate := c.rate(fmt.Sprintf("drying.rate.%d", n), fmt.Sprintf("Drying rate %s", band), band.Cell)
		parts = append(parts, worksheet.Times(rate, share, c.amountOn(c.rule.Basis, rate.Value().Unit())))
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

func (c dryingCharge) noDrying(reason string) {
	c.out.Drying = c.sheet.Skip(LineDrying, "Drying charge", quantity.Dollar, c.rule.Rounding, reason, c.edition.Source(c.rule.Row))
}

// isFlat reports whether a rate has no points in it.
func isFlat(rate quantity.Unit) bool {
	return rate == quantity.DollarsPerBu || rate == quantity.DollarsPerCwt || rate == quantity.DollarsPerT
}
