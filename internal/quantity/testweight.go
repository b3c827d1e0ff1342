package quantity

import "fmt"

// kgPerHLPerLbPerBu is how many kg/hL make one lb/bu, exact by definition: a
// pound is 0.45359237 kg and a Winchester bushel of 2150.42 cubic inches of
// 16.387064 cm3 each is 35.23907016688 litres.
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
	return Amount{}, fmt.Errorf("cannot turn %q into %q: both must be units of test weight, %s or %s", a.unit, to, LbPerBushel, KgPerHL)
}
