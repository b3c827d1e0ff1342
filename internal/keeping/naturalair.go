package keeping

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// NaturalAir is grain dried by a fan alone.
type NaturalAir struct {
	// Grain has weight, moistures and bushel; its rates of a heated dryer are not asked.
	Grain Drying
	// Airflow is in cfm a bushel; Temperature is that of the air.
	Airflow, Temperature quantity.Amount
	// Horsepower of the fan, a plain number; not set, a published figure of the power stands in its
	// place. Without the price of power no cost is worked out.
	Horsepower, PowerPrice quantity.Amount
}

// NaturalDrying is the time a fan alone takes, with its working.
type NaturalDrying struct {
	Days  quantity.Amount
	Sheet *worksheet.Sheet
}

// capacityAt is the published capacity of air at a temperature, or that of the
// warmest air colder than it: warmer air takes more, so that the time is at most
// what comes out.
func capacityAt(temperature quantity.Amount) (airCapacity, error) {
	f := quantity.TemperatureIn(temperature, quantity.Fahrenheit)
	for _, c := range published().air {
		if !f.Less(c.at) {
			return c, nil
		}
	}
	return airCapacity{}, message.Invalid.Errorf("air of %s dries too little to be reckoned with", temperature)
}

// Work writes down the days that natural air takes, from the water that published
// air at 70 % humidity carries off. It is a rule of thumb beside the weather.
func (n NaturalAir) Work() (NaturalDrying, error) {
	d := n.Grain
	if err := d.Check(); err != nil {
		return NaturalDrying{}, err
	}
	if d.Weight.Unit() != quantity.Lb {
		return NaturalDrying{}, message.Invalid.Errorf("air is counted in cfm a bushel; give the weight in lb")
	}
	if n.Airflow.Unit() != CFMPerBushel || n.Airflow.Sign() <= 0 {
		return NaturalDrying{}, message.Invalid.Errorf("an airflow of %s dries nothing; give cfm a bushel above zero, such as 1", n.Airflow)
	}
	if !quantity.IsTemperature(n.Temperature) {
		return NaturalDrying{}, message.Invalid.Errorf("%s is no temperature", n.Temperature)
	}
	air, err := capacityAt(n.Temperature)
	if err != nil {
		return NaturalDrying{}, err
	}
	s := &worksheet.Sheet{}
	water := d.Water(s)
	grain := d.quantityOf(s)
	s.Section(message.Words("Natural air"))
	each := s.Work("water.each", message.Words("Water from a bushel"), worksheet.Over(water, grain), quantity.To("0.001", quantity.HalfUp), worksheet.Unsourced)
	airflow := s.Given("airflow", message.Words("Airflow"), n.Airflow, quantity.Unrounded, worksheet.Unsourced)
	// 1,440 minutes a day and cubic feet in a pound of air give pounds a day for each cfm.
	perDay := quantity.Int(1440, quantity.Lb.Per(quantity.Day).Per(quantity.CFM)).Div(air.feet)
	lbAir := s.Work("air", message.Words("Air through a bushel"), worksheet.Times(airflow, worksheet.Const(quantity.To("0.01", quantity.HalfUp).Apply(perDay))), tenth, message.New("1,440 minutes a day over %s cubic feet in a pound of air", air.feet))
	carried := s.Work("carried", message.Words("Water carried off"), worksheet.Over(worksheet.Times(lbAir, worksheet.Const(air.water)), worksheet.Const(air.air)), quantity.To("0.0001", quantity.HalfUp),
		message.New("%s for %s of air at %s and 70 %% humidity: %s", air.water, air.air, air.at, air.source))
	days := s.Work("days", message.Words("Time"), worksheet.Over(each, carried), quantity.To("1", quantity.Up), worksheet.Unsourced)
	s.Note(days, message.New("printed there: %s for %s", air.printedDays, air.printedFor))
	if !quantity.Recorded(n.PowerPrice) {
		return NaturalDrying{days.Value(), s}, nil
	}
	if n.Horsepower.Sign() > 0 {
		s.Section(message.Words("Power"))
		hours := s.Work("hours", message.Words("Hours of the fan"), worksheet.Times(days, worksheet.Const(quantity.Int(24, quantity.Hour.Per(quantity.Day)))), quantity.Unrounded, worksheet.Unsourced)
		cost := fanCost(s, hours, n.Horsepower, n.PowerPrice)
		return NaturalDrying{days.Value(), s}, total(s, []worksheet.Operand{cost}, grain)
	}
	return NaturalDrying{days.Value(), s}, n.published(s, grain)
}

// published writes down what the power costs by the published figure, where nobody says how strong the
// fan is.
func (n NaturalAir) published(s *worksheet.Sheet, grain *worksheet.Step) error {
	points, _ := s.Step("points")
	by := published().natural
	power := energy{"power", message.Words("Power"), message.Words("Power for each and point"), message.Words("Price of power"), message.Words("Cost of power"), message.Words(by.source), by.power, n.PowerPrice}
	s.Section(message.Words("Power"))
	cost, err := power.work(s, grain, points)
	if err != nil {
		return err
	}
	return total(s, []worksheet.Operand{cost}, grain)
}
