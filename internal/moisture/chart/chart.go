package chart

import (
	"fmt"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// Chart turns dial and sample temperature into moisture for one crop on one
// meter, filled with one sample mass. It never changes once read.
type Chart struct {
	ID    string
	Title string
	// Crop is the commodity's id; Meter the model; Calibration the edition of
	// the maker's calibration the cells belong to.
	Crop, Meter, Calibration string
	// Example charts are invented and never for trade.
	Example bool
	// From and Until are the first and last day of use; no Until means until
	// replaced.
	From, Until quantity.Date
	// Mass is the grain weighed into the meter, in g.
	Mass quantity.Amount
	// Moisture is the range, in %, that the maker answers for; it may be less
	// than the cells cover.
	Moisture quantity.Span
	// Ambient is the temperature of the room and meter, and MaxDifference the
	// most the grain may differ from it, in degrees.
	Ambient       quantity.Span
	MaxDifference quantity.Amount
	Origin        tomlfile.Origin

	File string // name of the file
	Text []byte // the file as read
	Hash string // SHA-256 of Text, in hex

	dials        axis
	temperatures axis
	cells        [][]quantity.Amount // by dial, then by temperature
	testWeight   *correction
	uneven       string // why the steps of an axis change, if they do
}

// Name identifies the chart for people.
func (c *Chart) Name() string {
	return fmt.Sprintf("%s, %s on %s, calibration %s", c.Crop, c.Mass, c.Meter, c.Calibration)
}

// InForce reports whether the chart may be used on the day.
func (c *Chart) InForce(day quantity.Date) bool { return day.Between(c.From, c.Until) }

// Dials lists the dial readings of the rows.
func (c *Chart) Dials() []quantity.Amount { return append([]quantity.Amount(nil), c.dials...) }

// Temperatures lists the sample temperatures of the columns, all on one scale.
func (c *Chart) Temperatures() []quantity.Amount {
	return append([]quantity.Amount(nil), c.temperatures...)
}

// Cell is the moisture at a row and a column, in %.
func (c *Chart) Cell(row, column int) quantity.Amount { return c.cells[row][column] }

// TemperatureScale is °F or °C, as the columns are headed.
func (c *Chart) TemperatureScale() quantity.Unit { return c.temperatures[0].Unit() }

// NeedsTestWeight reports whether the chart has a second table, by test
// weight, and the unit it is in.
func (c *Chart) NeedsTestWeight() (quantity.Unit, bool) {
	if c.testWeight == nil {
		return quantity.Plain, false
	}
	return c.testWeight.weights[0].Unit(), true
}

// Place returns the four cells a dial and a temperature fall between: the row and column of the
// first of them.
func (c *Chart) Place(dial, temperature quantity.Amount) (row, column int, err error) {
	if err := c.refuseOutside(dial, temperature); err != nil {
		return 0, 0, err
	}
	t := quantity.TemperatureIn(temperature, c.TemperatureScale())
	return c.dials.interval(dial), c.temperatures.interval(t), nil
}

// refuseOutside answers a reading beyond the chart's edges with the edges.
func (c *Chart) refuseOutside(dial, temperature quantity.Amount) error {
	if dial.Unit() != quantity.Dial || !quantity.IsTemperature(temperature) {
		return message.Invalid.Errorf("a chart is read by dial and by temperature, not by %s and %s; type the dial reading and the sample temperature", dial, temperature)
	}
	if !c.dials.holds(dial) {
		return message.Invalid.Errorf("%s is outside chart %s, which runs from %s to %s. Read the dial again; if it stands, take the chart and sample mass for that moisture, or use the oven",
			dial, c.ID, c.dials.first(), c.dials.last())
	}
	if t := quantity.TemperatureIn(temperature, c.TemperatureScale()); !c.temperatures.holds(t) {
		return message.Invalid.Errorf("a sample at %s is outside chart %s, which runs from %s to %s. Let the sample come to that range in a closed jar and test again",
			temperature, c.ID, c.temperatures.first(), c.temperatures.last())
	}
	return nil
}
