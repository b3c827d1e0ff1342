package quantity

import "fmt"

// The two scales meet by definition: a degree Fahrenheit is 5/9 of a degree
// Celsius, and 0 °C is 32 °F.
var (
	fahrenheitPerCelsius = Of("1.8", Fahrenheit.Per(Celsius))
	freezingFahrenheit   = Int(32, Fahrenheit)
)

// ConvertTemperature is the same temperature on the other scale, exact:
// 20 °C is 68 °F. Both units must be °F or °C.
func ConvertTemperature(a Amount, to Unit) (Amount, error) {
	switch {
	case a.unit == to && isTemperature(to):
		return a, nil
	case a.unit == Celsius && to == Fahrenheit:
		return a.Mul(fahrenheitPerCelsius).Add(freezingFahrenheit), nil
	case a.unit == Fahrenheit && to == Celsius:
		return a.Sub(freezingFahrenheit).Div(fahrenheitPerCelsius), nil
	}
	return Amount{}, fmt.Errorf("cannot turn %q into %q: both must be °F or °C", a.unit, to)
}

func isTemperature(u Unit) bool { return u == Fahrenheit || u == Celsius }
