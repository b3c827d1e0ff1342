package meter

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Capacitor is the coaxial test cell of a dial meter: a can with a rod along its middle. The grain
// between them is the dielectric, and water has so much higher a permittivity than anything else in
// grain that the capacitance measures the moisture.
//
// Nothing here settles a load: charts do that. It shows why a meter depends on the mass of grain in
// the cell, its temperature and its water.
type Capacitor struct {
	// Length of the cell, and the radii of rod and can, all in one unit of
	// length, as plain numbers.
	Length, Rod, Can quantity.Amount
	// PerMetre is the number of those units in a metre.
	PerMetre quantity.Amount
}

// The constants of the formula. Permittivity of vacuum: CODATA 2018,
// 8.854 187 8128(13) pF/m; written from memory.
var (
	pi          = quantity.Of("3.14159265358979323846", quantity.Plain)
	vacuumPfPer = quantity.Of("8.8541878128", quantity.Plain)
	two         = quantity.Int(2, quantity.Plain)
)

// lnPlaces is the number of decimals of logarithms, far beyond those shown.
const lnPlaces = 24

// Picofarads is C = 2 π ε₀ εᵣ L / ln(b/a) for a filling of relative
// permittivity εᵣ (1 for vacuum), rounded once.
func (c Capacitor) Picofarads(permittivity quantity.Amount, r quantity.Rounding) (quantity.Amount, error) {
	if !c.Can.More(c.Rod) || c.Rod.Sign() <= 0 || c.Length.Sign() <= 0 || c.PerMetre.Sign() <= 0 {
		return quantity.Amount{}, message.Invalid.Errorf("a cell %s long with a rod of %s in a can of %s is none; the can must be wider than the rod, and all of them above zero", c.Length, c.Rod, c.Can)
	}
	can, err := logarithm(c.Can)
	if err != nil {
		return can, err
	}
	rod, err := logarithm(c.Rod)
	if err != nil {
		return rod, err
	}
	metres := c.Length.Div(c.PerMetre)
	stored := two.Mul(pi).Mul(vacuumPfPer).Mul(permittivity).Mul(metres)
	return r.Apply(stored.Div(can.Sub(rod))), nil
}

func logarithm(a quantity.Amount) (quantity.Amount, error) {
	d, plain := a.Decimal()
	if !plain {
		return a, message.Invalid.Errorf("%s is no plain decimal; write it with so many decimals", a)
	}
	ln, err := d.Ln(lnPlaces)
	if err != nil {
		return a, message.Errorf("the logarithm of %s: %w", a, err)
	}
	return quantity.New(ln, quantity.Plain), nil
}

// WaterPermittivity is the relative permittivity of water at a temperature from
// 0 to 100 °C by the polynomial of Malmberg and Maryott (Journal of Research of
// the National Bureau of Standards 56, 1956),
//
//	87.740 - 0.40008 t + 9.398e-4 t² - 1.410e-6 t³
//
// written from memory.
func WaterPermittivity(temperature quantity.Amount) (quantity.Amount, error) {
	celsius, err := quantity.ConvertTemperature(temperature, quantity.Celsius)
	if err != nil {
		return quantity.Amount{}, err
	}
	if celsius.Sign() < 0 || celsius.More(quantity.Int(100, quantity.Celsius)) {
		return quantity.Amount{}, message.Invalid.Errorf("water is no liquid at %s; the formula holds from 0 to 100 °C", temperature)
	}
	t := celsius.In(quantity.Plain)
	sum := quantity.Zero(quantity.Plain)
	for _, c := range waterCoefficients {
		sum = sum.Mul(t).Add(c)
	}
	return sum, nil
}

// waterCoefficients are those of t³, t², t and 1.
var waterCoefficients = []quantity.Amount{
	quantity.Of("-0.000001410", quantity.Plain), quantity.Of("0.0009398", quantity.Plain),
	quantity.Of("-0.40008", quantity.Plain), quantity.Of("87.740", quantity.Plain),
}
