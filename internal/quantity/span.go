package quantity

// Span runs from Low to High, both included and in one unit. The zero Span
// sets no limit.
type Span struct {
	Low  Amount `json:"low"`
	High Amount `json:"high"`
}

// Given reports whether the span sets any limit.
func (s Span) Given() bool { return Recorded(s.High) }

// Contains reports whether a is in the span; a must be in its unit.
func (s Span) Contains(a Amount) bool {
	return !s.Given() || !a.Less(s.Low) && !a.More(s.High)
}

// ContainsTemperature is Contains for a thermometer of either scale.
func (s Span) ContainsTemperature(a Amount) bool {
	return !s.Given() || s.Contains(TemperatureIn(a, s.High.Unit()))
}

// String is the span for people: "8 % to 20 %".
func (s Span) String() string {
	if !s.Given() {
		return "no limit"
	}
	return s.Low.String() + " to " + s.High.String()
}

// Recorded reports whether a figure was recorded: the zero Amount has no unit, and every
// measurement has one.
func Recorded(a Amount) bool { return a.Unit() != Plain }

// IsTemperature reports whether a is a thermometer's reading.
func IsTemperature(a Amount) bool {
	return a.Unit() == Fahrenheit || a.Unit() == Celsius
}

// TemperatureIn converts a temperature to a scale. It panics on an amount that is no temperature:
// callers check with [IsTemperature] first.
func TemperatureIn(a Amount, scale Unit) Amount {
	converted, err := ConvertTemperature(a, scale)
	if err != nil {
		panic("quantity: " + err.Error())
	}
	return converted
}
