package keeping

import (
	"sync"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/internal/worksheet"
	"tenthpoint/schedules/keeping"
)

var (
	// CFMPerBushel is the unit of an airflow through grain.
	CFMPerBushel = quantity.CFM.Per(quantity.Bushel)
	// DollarsPerKWh is the unit of the price of power.
	DollarsPerKWh = quantity.Dollar.Per(quantity.KWh)

	cents     = quantity.To("0.01", quantity.HalfUp)
	wholeHour = quantity.To("1", quantity.HalfUp)

	// powerPerHorse is the electric power of a fan for each horsepower: hp x 0.75 x rate.
	powerPerHorse = quantity.Of("0.75", quantity.KWh.Per(quantity.Hour))
)

var powerSource = message.Words("0.75 kWh an hour for each hp (Alberta crop commissions, 22 April 2019)")

// Aeration is a fan that cools grain, and what power costs the house.
type Aeration struct {
	// Airflow is in cfm a bushel.
	Airflow quantity.Amount
	// Horsepower of the fan, a plain number, and the price of power; not set, no
	// cost is worked out.
	Horsepower, PowerPrice quantity.Amount
}

// Work writes down how long a cooling front takes to pass the grain: sources differ,
// so it is a shortest and a longest time.
func (a Aeration) Work() (*worksheet.Sheet, error) {
	if a.Airflow.Unit() != CFMPerBushel || a.Airflow.Sign() <= 0 {
		return nil, message.Invalid.Errorf("an airflow of %s cools nothing; give cfm a bushel above zero, such as 0.1", a.Airflow)
	}
	if a.Horsepower.Sign() < 0 || a.PowerPrice.Sign() < 0 {
		return nil, message.Invalid.Errorf("a fan's horsepower and the price of power are not below zero")
	}
	s := &worksheet.Sheet{}
	s.Section(message.Words("Cooling"))
	airflow := s.Given("airflow", message.Words("Airflow"), a.Airflow, quantity.Unrounded, worksheet.Unsourced)
	var longest *worksheet.Step
	for i, c := range published().cooling {
		id, label := "hours.longest", message.Words("Longest time")
		if i > 0 {
			id, label = "hours.shortest", message.Words("Shortest time")
		}
		step := s.Work(id, label, worksheet.Over(worksheet.Const(c.hours), airflow), wholeHour, message.Words(c.source))
		if i == 0 {
			longest = step
		}
	}
	if a.Horsepower.Sign() > 0 && quantity.Recorded(a.PowerPrice) {
		s.Section(message.Words("Power, for the longest time"))
		fanCost(s, longest, a.Horsepower, a.PowerPrice)
	}
	return s, nil
}

// fanCost writes down what a fan takes in so many hours, and its cost.
func fanCost(s *worksheet.Sheet, hours worksheet.Operand, horsepower, price quantity.Amount) *worksheet.Step {
	hp := s.Given("fan.hp", message.Words("Horsepower of the fan"), horsepower, quantity.Unrounded, worksheet.Unsourced)
	rate := s.Given("power.price", message.Words("Price of power"), price, quantity.Unrounded, message.Words("the house"))
	power := s.Work("power", message.Words("Power"), worksheet.Times(hp, worksheet.Const(powerPerHorse), hours), tenth, powerSource)
	return s.Work("power.cost", message.Words("Cost of power"), worksheet.Times(power, rate), cents, worksheet.Unsourced)
}

// figures are the published figures of drying and aeration.
type figures struct {
	heated  []heatedRate
	natural heatedRate // the power that natural air takes
	air     []airCapacity
	cooling []coolingConstant
}

// heatedRate is the fuel a heated dryer takes for a bushel or tonne and point.
type heatedRate struct {
	fuel, power quantity.Amount
	source      string
}

// airCapacity is the water that air of a temperature, at 70 % humidity, takes up.
type airCapacity struct {
	at                 quantity.Amount // °F
	water, air, feet   quantity.Amount
	printedDays        quantity.Amount
	printedFor, source string
}

type coolingConstant struct {
	hours  quantity.Amount // hours times cfm a bushel
	source string
}

var published = sync.OnceValue(func() figures { return shipped("drying.toml", keeping.Drying, readFigures) })

func readFigures(root *tomlfile.Table) figures {
	f := figures{}
	root.Date("dated")
	for _, t := range root.Tables("natural") {
		f.natural = heatedRate{power: t.Amount("power", KWhPerBushelPoint), source: t.Text("source")}
	}
	for _, t := range root.Tables("heated") {
		t.Text("id")
		power, _ := t.OptionalAmount("power", KWhPerBushelPoint)
		f.heated = append(f.heated, heatedRate{t.Amount("fuel", fuelRates...), power, t.Text("source")})
	}
	for _, t := range root.Tables("air") {
		f.air = append(f.air, airCapacity{
			at: t.Amount("at", quantity.Fahrenheit), water: t.Amount("water", quantity.Lb), air: t.Amount("air", quantity.Lb),
			feet: quantity.Of(t.Text("feet_per_lb"), quantity.Plain), printedDays: quantity.Of(t.Text("printed_days"), quantity.Day),
			printedFor: t.Text("printed_for"), source: t.Text("source"),
		})
	}
	for _, t := range root.Tables("cooling") {
		f.cooling = append(f.cooling, coolingConstant{t.Amount("hours", quantity.CFM.Times(quantity.Hour).Per(quantity.Bushel)), t.Text("source")})
	}
	return f
}
