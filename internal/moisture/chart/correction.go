package chart

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// correction is a chart's second table: points of moisture to add by test
// weight, in straight lines between its rows.
type correction struct {
	weights axis              // lb/bu or kg/hL
	adds    []quantity.Amount // points; may be below zero
}

func (k *correction) refuseOutside(weight quantity.Amount, chart string) error {
	unit := k.weights[0].Unit()
	if weight.Unit() != unit {
		return message.Invalid.Errorf("chart %s also goes by test weight, in %s; type the sample's test weight in %s", chart, unit, unit)
	}
	if !k.weights.holds(weight) {
		return message.Invalid.Errorf("test weight %s is outside chart %s, which runs from %s to %s. Weigh the kettle again; if it stands, use the oven",
			weight, chart, k.weights.first(), k.weights.last())
	}
	return nil
}

// write adds the correction to the moisture from the chart.
func (k *correction) write(s *worksheet.Sheet, id, chart string, moisture, weight *worksheet.Step) *worksheet.Step {
	i := k.weights.interval(weight.Value())
	low, high := k.weights[i], k.weights[i+1]
	// Points are added to a percent here, so they are written on the sheet as percent.
	row := func(suffix string, n int) *worksheet.Step {
		return s.Rate(id+suffix, message.New("To add at %s", k.weights[n]), k.adds[n].In(quantity.Percent),
			message.New("%v: test weight %s", chart, k.weights[n]))
	}
	light, heavy := row(".add-light", i), row(".add-heavy", i+1)
	part := s.Work(id+".test-weight-part", message.New("Part of the way from %s to %s", low, high),
		worksheet.Over(worksheet.Less(weight, worksheet.Const(low)), worksheet.Const(high.Sub(low))), quantity.Unrounded, worksheet.Unsourced)
	add := s.Work(id+".add", message.Words("To add for test weight"),
		worksheet.Sum(light, worksheet.Times(part, worksheet.Less(heavy, light))), quantity.Unrounded, message.New("two-point line in %v", chart))
	return s.Work(id+".corrected", message.Words("Corrected for test weight"), worksheet.Sum(moisture, add), quantity.Unrounded, worksheet.Unsourced)
}
