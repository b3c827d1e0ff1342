package rates

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/discount"
	"tenthpoint/internal/rates/rule"
)

// What is looked at twice: figures that are allowed and can hardly be meant. The limits are common
// practice, set far from any posted rates that were read.
var (
	coarsestMoisture = quantity.To("0.5", quantity.HalfUp)
	coarsestWeight   = quantity.To("100", quantity.HalfUp)
	coarsestQuantity = quantity.To("1", quantity.HalfUp)
	coarsestMoney    = quantity.To("1", quantity.HalfUp)
	largestStep      = quantity.To("1", quantity.HalfUp)
	deepestShrink    = quantity.Of("5", quantity.Percent)
	dearestDrying    = map[quantity.Unit]quantity.Amount{
		quantity.DollarsPerBu.Per(quantity.Point):  quantity.Of("0.5", quantity.DollarsPerBu.Per(quantity.Point)),
		quantity.DollarsPerCwt.Per(quantity.Point): quantity.Of("1", quantity.DollarsPerCwt.Per(quantity.Point)),
		quantity.DollarsPerT.Per(quantity.Point):   quantity.Of("20", quantity.DollarsPerT.Per(quantity.Point)),
	}
)

// unlikely are the figures of an edition that can hardly be meant.
func (e *Edition) unlikely() []message.Text {
	out := e.unlikelyRoundings()
	if e.Corrects == "" && e.Origin.Issued.After(e.From) {
		out = append(out, message.New("The edition is issued on %s, after its first day, %s.", e.Origin.Issued, e.From))
	}
	if to := e.Shrink.To; to.Given() && e.Shrink.Trigger.Amount.Sub(to.Amount).More(deepestShrink) {
		out = append(out, message.New("Grain above %s is shrunk to %s: a load at the trigger loses the water of %s.", e.Shrink.Trigger.Amount.Written(), to.Amount.Written(), e.Shrink.Trigger.Amount.Sub(to.Amount)))
	}
	for _, rate := range e.dryingRates() {
		if most, known := dearestDrying[rate.Unit()]; known && rate.More(most) {
			out = append(out, message.New("Drying at %s costs more than %s.", rate.Written(), most.Written()))
		}
	}
	return out
}

func (e *Edition) unlikelyRoundings() []message.Text {
	var out []message.Text
	for _, one := range []struct {
		what  message.Text
		by    quantity.Rounding
		limit quantity.Rounding
	}{
		{message.New("Moisture"), e.Rounding.Moisture, coarsestMoisture},
		{message.New("Weights"), e.Rounding.Weight, coarsestWeight},
		{message.New("Bushels, hundredweight, tonnes"), e.Rounding.Quantity, coarsestQuantity},
		{message.New("Money"), e.Rounding.Money, coarsestMoney},
		{message.New("Points of shrink"), e.Shrink.Step.Rounding, largestStep},
		{message.New("Points of drying"), e.Drying.Step.Rounding, largestStep},
	} {
		if one.by.CoarserThan(one.limit) {
			out = append(out, message.New("%s: rounded to %s, which is coarse.", one.what, one.by))
		}
	}
	return out
}

func (e *Edition) dryingRates() []quantity.Amount {
	var out []quantity.Amount
	if e.Drying.Rate.Given() {
		out = append(out, e.Drying.Rate.Amount)
	}
	for _, band := range e.Drying.Bands {
		out = append(out, band.Cell.Amount)
	}
	return out
}

// paidMore are the places where worse grain is paid more than better.
func (e *Edition) paidMore() []message.Text {
	var out []message.Text
	for i := range e.Discounts {
		r := &e.Discounts[i]
		if r.RefuseUnder.Given() && !r.Above && rule.Less(r.Base, r.RefuseUnder) {
			out = append(out, message.New("%v: every load under %s is rejected, and the base is %s.", r.Label, r.RefuseUnder.Amount.Written(), r.Base.Amount.Written()))
		}
		out = append(out, e.forgiven(r)...)
		if hill, found := hill(r); found {
			out = append(out, message.New("%v: the row %s takes more than a row on either side of it.", r.Label, hill))
		}
	}
	return out
}

// forgiven are the rows that turn loads away and, accepted by a manager, bring less than the row
// beside them.
func (e *Edition) forgiven(r *discount.Rule) []message.Text {
	var out []message.Text
	for _, row := range r.Rows {
		if !row.Refuse {
			continue
		}
		last, found := r.LastRow(row)
		if found && last.TakesMore(e.Format.Accepted(r, row)) {
			out = append(out, message.New("%v: a load that a manager accepts %s brings no discount, and one %s brings %s: the worse grain is paid more.", r.Label, row, last, last.Cell.Amount.Written()))
		}
	}
	return out
}

// hill is a row that takes more than some row below it and some row above it.
func hill(r *discount.Rule) (rule.Band, bool) {
	for i := range r.Rows {
		if !r.Rows[i].Refuse && takesLess(r.Rows[:i], r.Rows[i]) && takesLess(r.Rows[i+1:], r.Rows[i]) {
			return r.Rows[i], true
		}
	}
	return rule.Band{}, false
}

func takesLess(rows []rule.Band, than rule.Band) bool {
	for _, row := range rows {
		if !row.Refuse && than.TakesMore(row) {
			return true
		}
	}
	return false
}
