package bench

import "tenthpoint/internal/quantity"

// Span runs from Low to High, both included and in one unit. The zero Span
// sets no limit.
type Span struct {
	Low  quantity.Amount `json:"low"`
	High quantity.Amount `json:"high"`
}

// Given reports whether the span sets any limit.
func (s Span) Given() bool { return recorded(s.High) }

// Contains reports whether a lies in the span; a must be in its unit.
func (s Span) Contains(a quantity.Amount) bool {
	return !s.Given() || !a.Less(s.Low) && !a.More(s.High)
}

// ContainsTemperature is Contains for a thermometer of either scale.
func (s Span) ContainsTemperature(a quantity.Amount) bool {
	return !s.Given() || s.Contains(temperatureIn(a, s.High.Unit()))
}

// String is the span for people: "8 % to 20 %".
func (s Span) String() string {
	if !s.Given() {
		return "no limit"
	}
	return s.Low.String() + " to " + s.High.String()
}

// recorded tells a figure that somebody wrote down from one nobody did: the
// zero Amount has no unit, and nothing at the bench is measured without one.
func recorded(a quantity.Amount) bool { return a.Unit() != quantity.Plain }

// isTemperature reports whether a is a thermometer's reading.
func isTemperature(a quantity.Amount) bool {
	return a.Unit() == quantity.Fahrenheit || a.Unit() == quantity.Celsius
}

// temperatureIn is a temperature on the scale asked for. Readings and charts
// are checked to hold temperatures before they come here.
func temperatureIn(a quantity.Amount, scale quantity.Unit) quantity.Amount {
	converted, err := quantity.ConvertTemperature(a, scale)
	if err != nil {
		panic("bench: " + err.Error())
	}
	return converted
}
