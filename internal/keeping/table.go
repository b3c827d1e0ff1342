package keeping

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Days is how long grain keeps.
type Days struct {
	// Days is not rounded to what is shown.
	Days quantity.Amount
	// AtLeast is true where the source says no more than "over" so many days, or
	// grain is drier or colder than it goes down to.
	AtLeast bool
}

// Shown is the whole number of days, rounded down: half a day more is no day more.
func (d Days) Shown() quantity.Amount { return quantity.To("1", quantity.Down).Apply(d.Days) }

// Message is the days for people.
func (d Days) Message() message.Text {
	if d.AtLeast {
		return message.New("at least %s", d.Shown())
	}
	return message.New("%s", d.Shown())
}

// String is the days in English.
func (d Days) String() string { return d.Message().String() }

// Table is one source of allowable storage time: a printed table, an equation, or
// either read at another moisture.
type Table struct {
	ID     string
	Grains []string
	Source string
	// Basis is the loss at which the time ends; Checked says how the source was held
	// against published cells, where it was worked out.
	Basis, Checked string

	lookUp lookUp
}

// lookUp finds days for a wet-basis moisture and a temperature in °F.
type lookUp interface {
	days(moisture, fahrenheit quantity.Amount) (Days, error)
}

// Days is how long grain of a wet-basis moisture keeps at a temperature, °F or °C,
// from fresh. The error says what is out of the source's reach.
func (t Table) Days(moisture, temperature quantity.Amount) (Days, error) {
	if !quantity.IsTemperature(temperature) {
		return Days{}, message.Invalid.Errorf("%s is no temperature", temperature)
	}
	d, err := t.lookUp.days(moisture, quantity.TemperatureIn(temperature, quantity.Fahrenheit))
	if err != nil {
		return d, message.Errorf("by the table %v: %w", t.ID, err)
	}
	return d, nil
}

// grid is a printed table. Cells between are read on straight lines.
type grid struct {
	moistures    []quantity.Amount // rising, %
	temperatures []quantity.Amount // rising, °F
	cells        [][]Days
}

func (g grid) days(moisture, fahrenheit quantity.Amount) (Days, error) {
	row, drier, err := place(g.moistures, moisture, "a moisture of %s is above %s, the wettest row of the table")
	if err != nil {
		return Days{}, err
	}
	column, colder, err := place(g.temperatures, fahrenheit, "a temperature of %s is above %s, the warmest column of the table")
	if err != nil {
		return Days{}, err
	}
	low := between(g.cells[row.low][column.low], g.cells[row.low][column.high], column.part)
	high := between(g.cells[row.high][column.low], g.cells[row.high][column.high], column.part)
	out := between(low, high, row.part)
	out.AtLeast = out.AtLeast || drier || colder
	return out, nil
}

// gap is a place between two lines of a table; part is how far it is on the way
// from the lower to the higher.
type gap struct {
	low, high int
	part      quantity.Amount
}

// place finds a value among rising ones. Below the first it is read at the first
// and below is true, since drier and colder grain keeps longer; above the last is
// an error in the words given.
func place(lines []quantity.Amount, value quantity.Amount, above string) (g gap, below bool, err error) {
	last := len(lines) - 1
	if value.More(lines[last]) {
		return g, false, message.Err(message.Invalid, message.New(above, quantity.To("0.01", quantity.HalfUp).Apply(value), lines[last]))
	}
	if value.Less(lines[0]) {
		return gap{part: quantity.Zero(quantity.Plain)}, true, nil
	}
	i := 0
	for i < last-1 && !value.Less(lines[i+1]) {
		i++
	}
	return gap{i, i + 1, value.Sub(lines[i]).Div(lines[i+1].Sub(lines[i]))}, false, nil
}

// between reads two cells on a straight line. An open cell is taken at its bound,
// so that what is read beside it is at least right.
func between(a, b Days, part quantity.Amount) Days {
	switch {
	case part.IsZero():
		return a
	case part.Equal(one):
		return b
	}
	return Days{a.Days.Add(b.Days.Sub(a.Days).Mul(part)), a.AtLeast || b.AtLeast}
}

// wetter reads another source at more moisture.
type wetter struct {
	of     lookUp
	points quantity.Amount
}

func (w wetter) days(moisture, fahrenheit quantity.Amount) (Days, error) {
	return w.of.days(moisture.Add(w.points.In(quantity.Percent)), fahrenheit)
}
