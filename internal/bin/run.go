package bin

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// meterError is by how much of its dry matter a run may seem to gain: two moisture tests and two
// weighings do not agree to the pound. Beyond it a figure is wrong.
var meterError = quantity.Int(1, quantity.Percent)

// checkRun refuses a run of the dryer that cannot have been, with its arithmetic.
func (m Movement) checkRun() error {
	r := m.Drying
	if r == nil || !isMoisture(r.MoistureIn) || !isMoisture(r.MoistureOut) {
		return message.Invalid.Errorf("a run of the dryer has a moisture going in and one coming out, above 0 %% and below 100 %%")
	}
	for _, w := range []struct {
		is   quantity.Amount
		unit []quantity.Unit
		name message.Text
	}{
		{r.Fuel, []quantity.Unit{quantity.Gallon, quantity.Litre, quantity.KWh}, message.New("fuel in gal, L or kWh")},
		{r.Power, []quantity.Unit{quantity.KWh}, message.New("power in kWh")},
		{r.Hours, []quantity.Unit{quantity.Hour}, message.New("hours")},
		{r.TestWeight, []quantity.Unit{quantity.LbPerBushel, quantity.KgPerHL}, message.New("a test weight")},
	} {
		if quantity.Recorded(w.is) && (!oneOf(w.is.Unit(), w.unit) || w.is.Sign() <= 0) {
			return message.Invalid.Errorf("%s is not %s above zero", w.is, w.name)
		}
	}
	in, out := m.In(), m.Out()
	matterIn, matterOut := dryMatter(in, r.MoistureIn), dryMatter(out, r.MoistureOut)
	waterIn, waterOut := in.Sub(matterIn), out.Sub(matterOut)
	switch {
	case r.MoistureOut.More(r.MoistureIn):
		return message.Refused.Errorf("grain of %s went in and came out at %s, wetter than before: a dryer takes water out. Test again, or swap the two", r.MoistureIn, r.MoistureOut)
	case waterOut.More(waterIn):
		return message.Refused.Errorf("%s at %s hold %s of water, and %s at %s hold %s: the run would have added %s of water. Test and weigh again",
			in, r.MoistureIn, shown(waterIn), out, r.MoistureOut, shown(waterOut), shown(waterOut.Sub(waterIn)))
	case matterOut.Sub(matterIn).Mul(quantity.Int(100, quantity.Percent)).More(matterIn.Mul(meterError)):
		return message.Refused.Errorf("%s at %s are %s of dry matter, and %s at %s are %s: the run would have made %s of grain. Test and weigh again",
			in, r.MoistureIn, shown(matterIn), out, r.MoistureOut, shown(matterOut), shown(matterOut.Sub(matterIn)))
	}
	return nil
}

func isMoisture(a quantity.Amount) bool {
	return a.Unit() == quantity.Percent && a.Sign() > 0 && a.Less(quantity.Int(100, quantity.Percent))
}

func oneOf(unit quantity.Unit, units []quantity.Unit) bool {
	for _, u := range units {
		if u == unit {
			return true
		}
	}
	return false
}

// shown rounds a weight that was worked out to what a scale could show.
func shown(a quantity.Amount) quantity.Amount { return quantity.To("0.1", quantity.HalfUp).Apply(a) }

// Yields is a run of the dryer looked at as a log does: points taken out, and what that took.
type Yields struct {
	Points quantity.Amount // of moisture
	Water  quantity.Amount // weight of water taken out
	// FuelPerWater is fuel per unit of weight of water; not set where no fuel was noted.
	FuelPerWater quantity.Amount
	PerHour      quantity.Amount // dried grain an hour; not set without hours
}

// Yields works out what a run did.
func (m Movement) Yields() Yields {
	r := m.Drying
	y := Yields{Points: r.MoistureIn.Sub(r.MoistureOut).In(quantity.Point), Water: m.Loss().Water}
	if quantity.Recorded(r.Fuel) && y.Water.Sign() > 0 {
		y.FuelPerWater = r.Fuel.Div(y.Water)
	}
	if quantity.Recorded(r.Hours) {
		y.PerHour = m.Out().Div(r.Hours)
	}
	return y
}
