package chart

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// Convert writes the way from a dial and a temperature to moisture on the
// sheet, under ids that begin with id: the four cells around the reading, the
// part of the way along each edge, and the straight lines between. The result
// is exact; the mean of all tests is rounded, not this. testWeight may be nil
// when the chart has no second table.
//
// The two-way linear rule: with parts u and v along dial and temperature,
// M = (1-v)((1-u)A + uB) + v((1-u)C + uD), written here as lines first along
// the dial at both temperatures, then between them.
//
// When the chart refuses, the sheet holds the steps up to there.
func (c *Chart) Convert(s *worksheet.Sheet, id string, dial, temperature, testWeight *worksheet.Step) (*worksheet.Step, error) {
	row, column, err := c.Place(dial.Value(), temperature.Value())
	if err != nil {
		return nil, err
	}
	onScale := c.onScale(s, id, temperature)
	along := part(s, id+".dial-part", dial, c.dials, row)
	across := part(s, id+".temperature-part", onScale, c.temperatures, column)
	cool := c.line(s, id+".cool", row, column, along)
	warm := c.line(s, id+".warm", row, column+1, along)
	moisture := s.Work(id+".chart", message.Words("From the chart"),
		worksheet.Sum(cool, worksheet.Times(across, worksheet.Less(warm, cool))), quantity.Unrounded, message.New("two-way linear in %v", c.ID))
	if c.testWeight != nil {
		if testWeight == nil {
			return nil, c.testWeight.refuseOutside(quantity.Amount{}, c.ID)
		}
		if err := c.testWeight.refuseOutside(testWeight.Value(), c.ID); err != nil {
			return nil, err
		}
		moisture = c.testWeight.write(s, id, c.ID, moisture, testWeight)
	}
	return moisture, c.refuseMoisture(moisture.Value())
}

// onScale converts the temperature to the unit of the columns.
func (c *Chart) onScale(s *worksheet.Sheet, id string, temperature *worksheet.Step) *worksheet.Step {
	var e worksheet.Expr
	freezing := worksheet.Const(quantity.Int(32, quantity.Fahrenheit))
	perDegree := worksheet.Const(quantity.Of("1.8", quantity.Fahrenheit.Per(quantity.Celsius)))
	switch from, to := temperature.Value().Unit(), c.TemperatureScale(); {
	case from == to:
		return temperature
	case to == quantity.Fahrenheit:
		e = worksheet.Sum(worksheet.Times(temperature, perDegree), freezing)
	default:
		e = worksheet.Over(worksheet.Less(temperature, freezing), perDegree)
	}
	return s.Work(id+".on-scale", message.New("Sample temperature in %s", c.TemperatureScale()), e, quantity.Unrounded, worksheet.Unsourced)
}

// part returns the position of a figure between mark n of an axis and the next: 0 on the first, 1
// on the second.
func part(s *worksheet.Sheet, id string, at *worksheet.Step, a axis, n int) *worksheet.Step {
	low, high := a[n], a[n+1]
	return s.Work(id, message.New("Part of the way from %s to %s", low, high),
		worksheet.Over(worksheet.Less(at, worksheet.Const(low)), worksheet.Const(high.Sub(low))), quantity.Unrounded, worksheet.Unsourced)
}

// line goes straight between two cells of one column.
func (c *Chart) line(s *worksheet.Sheet, id string, row, column int, along *worksheet.Step) *worksheet.Step {
	low := c.writeCell(s, id+".low", row, column)
	high := c.writeCell(s, id+".high", row+1, column)
	return s.Work(id, message.New("At %s", c.temperatures[column]),
		worksheet.Sum(low, worksheet.Times(along, worksheet.Less(high, low))), quantity.Unrounded, worksheet.Unsourced)
}

func (c *Chart) writeCell(s *worksheet.Sheet, id string, row, column int) *worksheet.Step {
	where := message.List(", ", c.dials[row], c.temperatures[column])
	return s.Rate(id, message.New("Chart at %s", where), c.cells[row][column], message.New("%v: %s", message.Own(c.ID), where))
}

func (c *Chart) refuseMoisture(m quantity.Amount) error {
	if c.Moisture.Contains(m) {
		return nil
	}
	return message.Invalid.Errorf("the cells give %s, but chart %s with %s of grain answers only for %s. Take the chart and sample mass for that moisture, or use the oven",
		m, c.ID, c.Mass, c.Moisture)
}
