package quantity

import "fmt"

// kgPerLb is exact by definition: one avoirdupois pound is 0.45359237 kg
// (international yard and pound agreement, 1959).
var kgPerLb = Of("0.45359237", Kg.Per(Lb))

// massInKg is how many kg make one unit of mass, exact.
var massInKg = map[Unit]Amount{
	Kg:    Int(1, Kg.Per(Kg)),
	Tonne: Int(1000, Kg.Per(Tonne)),
	Gram:  Of("0.001", Kg.Per(Gram)),
	Lb:    kgPerLb,
	Cwt:   Int(100, Lb.Per(Cwt)).Mul(kgPerLb),
}

// MassFactor is how many units of "to" make one unit of "from", exact: lb to
// cwt is 0.01 cwt/lb, kg to lb is 1/0.45359237 lb/kg. Both must be units of
// mass.
func MassFactor(from, to Unit) (Amount, error) {
	f, okFrom := massInKg[from]
	t, okTo := massInKg[to]
	if !okFrom || !okTo {
		return Amount{}, fmt.Errorf("cannot turn %q into %q: both must be units of weight", from, to)
	}
	return f.Div(t), nil
}
