package keeping

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// cornLoss is the equation of dry-matter loss of shelled corn (ASAE X535 draft,
// 2004): 230 hours to 0.5 % at 60 °F and 25 %, times multipliers for moisture and
// temperature. Damage and hybrid count as 1, as in the printed tables.
type cornLoss struct{ temperatures, moistures quantity.Span }

func number(text string) quantity.Amount { return quantity.Of(text, quantity.Plain) }

// referenceDays are the 230 hours.
var referenceDays = quantity.Int(230, quantity.Day).Div(quantity.Int(24, quantity.Plain))

func (e cornLoss) days(moisture, fahrenheit quantity.Amount) (Days, error) {
	switch {
	case moisture.More(e.moistures.High):
		return Days{}, message.Invalid.Errorf("a moisture of %s is above %s, where the equation ends", moisture, e.moistures.High)
	case fahrenheit.More(e.temperatures.High):
		return Days{}, message.Invalid.Errorf("a temperature of %s is above %s, where the equation ends", tenth.Apply(fahrenheit), e.temperatures.High)
	}
	m, f := quantity.Max(moisture, e.moistures.Low), quantity.Max(fahrenheit, e.temperatures.Low)
	product := moistureMultiplier(m).Mul(temperatureMultiplier(m.In(quantity.Plain), f.In(quantity.Plain)))
	return Days{referenceDays.Mul(onTheWay.Apply(product)), m.More(moisture) || f.More(fahrenheit)}, nil
}

// moistureMultiplier is 0.103 (exp(455 / Mdb^1.53) - 0.00845 Mdb + 1.558), with Mdb
// in percent of dry weight.
func moistureMultiplier(moisture quantity.Amount) quantity.Amount {
	dry := hundred.Mul(moisture).Div(hundred.Sub(moisture)).In(quantity.Plain)
	wet := exp(number("455").Div(power(dry, number("1.53"))))
	return number("0.103").Mul(wet.Sub(number("0.00845").Mul(dry)).Add(number("1.558")))
}

// temperatureMultiplier takes f degrees Fahrenheit up to 80 and m percent of
// moisture on wet basis.
func temperatureMultiplier(m, f quantity.Amount) quantity.Amount {
	sixty := number("60")
	switch {
	case !f.More(sixty):
		return number("128.389").Mul(exp(number("-4.86").Mul(f).Div(sixty)))
	case m.Less(number("19")):
		return number("32.3").Mul(exp(number("-3.48").Mul(f).Div(sixty)))
	case m.Less(number("28")):
		return exp(number("0.05").Mul(f).Sub(number("3")).Mul(ln(number("0.0795012").Add(number("0.012315").Mul(m)))).Sub(number("0.00493277")))
	}
	return exp(number("2.56683").Sub(number("0.0428628").Mul(f)))
}
