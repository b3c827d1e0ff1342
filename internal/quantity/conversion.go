package quantity

import (
	"tenthpoint/internal/message"
)

// kgPerLb is exact by definition: one avoirdupois pound is 0.45359237 kg
// (international yard and pound agreement, 1959).
var kgPerLb = Of("0.45359237", Kg.Per(Lb))

// massInKg is the kg in one unit of mass, exact.
var massInKg = map[Unit]Amount{
	Kg:    Int(1, Kg.Per(Kg)),
	Tonne: Int(1000, Kg.Per(Tonne)),
	Gram:  Of("0.001", Kg.Per(Gram)),
	Lb:    kgPerLb,
	Cwt:   Int(100, Lb.Per(Cwt)).Mul(kgPerLb),
}

// MassFactor returns the exact factor from one unit of mass to another: lb to cwt is 0.01 cwt/lb,
// kg to lb is 1/0.45359237 lb/kg. It fails unless both are units of mass.
func MassFactor(from, to Unit) (Amount, error) {
	f, okFrom := massInKg[from]
	t, okTo := massInKg[to]
	if !okFrom || !okTo {
		return Amount{}, message.Invalid.Errorf("cannot turn %q into %q: both must be units of weight", from, to)
	}
	return f.Div(t), nil
}

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
	return Amount{}, message.Invalid.Errorf("cannot turn %q into %q: both must be °F or °C", a.unit, to)
}

func isTemperature(u Unit) bool { return u == Fahrenheit || u == Celsius }

// kgPerHLPerLbPerBu is the kg/hL in one lb/bu, exact by definition: a pound is 0.45359237 kg and a
// Winchester bushel of 2150.42 cubic inches of 16.387064 cm3 each is 35.23907016688 litres.
var kgPerHLPerLbPerBu = kgPerLb.Div(Of("0.3523907016688", Hectolitre.Per(Bushel)))

// TestWeight is the same density of grain in the other unit of test weight,
// exact: lb/bu and kg/hL. It says nothing of grams per half litre, which is
// another test with its own published regressions.
func TestWeight(a Amount, to Unit) (Amount, error) {
	switch {
	case a.unit == to && (to == LbPerBushel || to == KgPerHL):
		return a, nil
	case a.unit == LbPerBushel && to == KgPerHL:
		return a.Mul(kgPerHLPerLbPerBu), nil
	case a.unit == KgPerHL && to == LbPerBushel:
		return a.Div(kgPerHLPerLbPerBu), nil
	}
	return Amount{}, message.Invalid.Errorf("cannot turn %q into %q: both must be units of test weight, %s or %s", a.unit, to, LbPerBushel, KgPerHL)
}
