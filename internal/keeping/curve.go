package keeping

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Model is the form of an equation of equilibrium moisture.
type Model string

// The published forms; schedules/keeping/equilibrium.toml writes them out.
const (
	ChungPfost Model = "chung-pfost"
	Henderson  Model = "henderson"
	Halsey     Model = "halsey"
	Oswin      Model = "oswin"
)

// Curve is an equation of equilibrium moisture with the constants of one grain
// and source.
type Curve struct {
	ID     string
	Grains []string
	Model  Model
	// A, B and C are the constants as printed, for °C and percent of dry weight.
	A, B, C quantity.Amount
	// Temperatures and Humidities are the ranges of the published cells that the
	// curve was held against.
	Temperatures, Humidities quantity.Span
	Source, Checked, Note    string
}

// The air and grain that a curve is asked about. Beyond them the equations were
// never measured.
var (
	airTemperatures = quantity.Span{Low: quantity.Int(-20, quantity.Celsius), High: quantity.Int(60, quantity.Celsius)}
	airHumidities   = quantity.Span{Low: quantity.Int(10, quantity.Percent), High: quantity.Int(95, quantity.Percent)}
	wetBasis        = quantity.Span{Low: quantity.Int(3, quantity.Percent), High: quantity.Int(35, quantity.Percent)}

	hundred = quantity.Int(100, quantity.Percent)
	one     = quantity.Int(1, quantity.Plain)

	// onTheWay rounds exponentials and logarithms.
	onTheWay = quantity.To("0.0000000000000001", quantity.HalfUp)
	// tenth rounds moistures and humidities that are shown.
	tenth = quantity.To("0.1", quantity.HalfUp)
)

func ln(a quantity.Amount) quantity.Amount  { return quantity.Ln(a, onTheWay) }
func exp(a quantity.Amount) quantity.Amount { return quantity.Exp(a, onTheWay) }

// power is a raised to b, for a above zero.
func power(a, b quantity.Amount) quantity.Amount { return exp(ln(a).Mul(b)) }

// Moisture is the wet-basis moisture that the grain comes to in air of a
// temperature, °F or °C, and a relative humidity in percent; not rounded to what
// is shown. The error says what is out of reach.
func (c Curve) Moisture(temperature, humidity quantity.Amount) (quantity.Amount, error) {
	if err := checkAir(temperature); err != nil {
		return quantity.Amount{}, err
	}
	if !airHumidities.Contains(humidity) {
		return quantity.Amount{}, message.Invalid.Errorf("a relative humidity of %s is outside %s, where equations of equilibrium moisture hold", humidity, airHumidities)
	}
	dry := c.dryBasis(plainCelsius(temperature), humidity.Div(hundred))
	return hundred.Mul(dry).Div(hundred.In(quantity.Plain).Add(dry)), nil
}

// Humidity is the relative humidity, in percent, of air in which grain of a
// wet-basis moisture neither dries nor gets wetter.
func (c Curve) Humidity(temperature, moisture quantity.Amount) (quantity.Amount, error) {
	if err := checkAir(temperature); err != nil {
		return quantity.Amount{}, err
	}
	if !wetBasis.Contains(moisture) {
		return quantity.Amount{}, message.Invalid.Errorf("a moisture of %s is outside %s, where equations of equilibrium moisture hold", moisture, wetBasis)
	}
	dry := hundred.Mul(moisture).Div(hundred.Sub(moisture)).In(quantity.Plain)
	humidity := hundred.Mul(c.humidity(plainCelsius(temperature), dry))
	if !airHumidities.Contains(humidity) {
		return quantity.Amount{}, message.Invalid.Errorf("grain of %s at %s stands in air of %s, outside %s, where equations of equilibrium moisture hold",
			moisture, temperature, tenth.Apply(humidity), airHumidities)
	}
	return humidity, nil
}

func checkAir(temperature quantity.Amount) error {
	if !quantity.IsTemperature(temperature) || !airTemperatures.ContainsTemperature(temperature) {
		return message.Invalid.Errorf("a temperature of %s is outside %s, where equations of equilibrium moisture hold", temperature, airTemperatures)
	}
	return nil
}

func plainCelsius(t quantity.Amount) quantity.Amount {
	return quantity.TemperatureIn(t, quantity.Celsius).In(quantity.Plain)
}

// dryBasis is the moisture in percent of dry weight, as a plain number, in air of
// t degrees Celsius and a humidity between 0 and 1.
func (c Curve) dryBasis(t, rh quantity.Amount) quantity.Amount {
	switch c.Model {
	case ChungPfost:
		return ln(t.Add(c.C).Mul(ln(rh)).Div(c.A).Neg()).Div(c.B).Neg()
	case Henderson:
		return power(ln(one.Sub(rh)).Div(c.A.Mul(t.Add(c.C))).Neg(), one.Div(c.B))
	case Halsey:
		return power(exp(c.A.Add(c.B.Mul(t))).Div(ln(rh).Neg()), one.Div(c.C))
	default: // Oswin: the reader of the data knows no other
		return c.A.Add(c.B.Mul(t)).Div(power(one.Div(rh).Sub(one), one.Div(c.C)))
	}
}

// humidity is the inverse of dryBasis, in its first argument's temperature.
func (c Curve) humidity(t, dry quantity.Amount) quantity.Amount {
	switch c.Model {
	case ChungPfost:
		return exp(c.A.Div(t.Add(c.C)).Mul(exp(c.B.Mul(dry).Neg())).Neg())
	case Henderson:
		return one.Sub(exp(c.A.Mul(t.Add(c.C)).Mul(power(dry, c.B)).Neg()))
	case Halsey:
		return exp(exp(c.A.Add(c.B.Mul(t))).Mul(power(dry, c.C.Neg())).Neg())
	default: // Oswin
		return one.Div(power(c.A.Add(c.B.Mul(t)).Div(dry), c.C).Add(one))
	}
}

// Covers reports whether published cells that confirm the curve lie around a
// temperature and humidity.
func (c Curve) Covers(temperature, humidity quantity.Amount) bool {
	return c.Temperatures.ContainsTemperature(temperature) && c.Humidities.Contains(humidity)
}

// Equilibrium is the answer of one curve, rounded to the tenth.
type Equilibrium struct {
	Curve              Curve
	Temperature        quantity.Amount
	Humidity, Moisture quantity.Amount
	// Beyond is true where no published cell around confirms the curve.
	Beyond bool
}

// EquilibriumMoisture asks every curve of a grain; the first answers and the
// others tell how far sources part.
func EquilibriumMoisture(grain string, temperature, humidity quantity.Amount) ([]Equilibrium, error) {
	return askCurves(grain, func(c Curve) (Equilibrium, error) {
		m, err := c.Moisture(temperature, humidity)
		return Equilibrium{c, temperature, humidity, tenth.Apply(m), err == nil && !c.Covers(temperature, humidity)}, err
	})
}

// EquilibriumHumidity asks every curve of a grain for the humidity that keeps a
// moisture as it is.
func EquilibriumHumidity(grain string, temperature, moisture quantity.Amount) ([]Equilibrium, error) {
	return askCurves(grain, func(c Curve) (Equilibrium, error) {
		h, err := c.Humidity(temperature, moisture)
		return Equilibrium{c, temperature, tenth.Apply(h), moisture, err == nil && !c.Covers(temperature, h)}, err
	})
}

// askCurves drops an answer beside the first that is out of its curve's reach.
func askCurves(grain string, ask func(Curve) (Equilibrium, error)) ([]Equilibrium, error) {
	curves, err := Curves(grain)
	if err != nil {
		return nil, err
	}
	var out []Equilibrium
	for i, c := range curves {
		e, err := ask(c)
		if i == 0 && err != nil {
			return nil, err
		}
		if err == nil {
			out = append(out, e)
		}
	}
	return out, nil
}
