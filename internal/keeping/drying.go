package keeping

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// The units of what a dryer takes for a bushel, or a tonne, and point of moisture.
var (
	perBushelPoint    = quantity.Bushel.Times(quantity.Point)
	perTonnePoint     = quantity.Tonne.Times(quantity.Point)
	KWhPerBushelPoint = quantity.KWh.Per(perBushelPoint)
	fuelRates         = []quantity.Unit{quantity.Gallon.Per(perBushelPoint), quantity.Litre.Per(perBushelPoint), quantity.Litre.Per(perTonnePoint)}

	wholeLb = quantity.To("1", quantity.HalfUp)
)

// Drying is grain to be dried. What the house knows of its own dryer goes before
// the published figures; what it has no price for is not worked out.
type Drying struct {
	// Weight is in lb or kg; From and To are moistures in percent.
	Weight, From, To quantity.Amount
	// Bushel is the pounds in a bushel of the grain; not needed where the weight is
	// in kg, which is counted in tonnes.
	Bushel quantity.Amount
	// FuelRate is the fuel use of the house's dryer, such as 0.018 gal/bu/pt or
	// 1.2 L/t/pt; PowerRate the same in kWh.
	FuelRate, PowerRate quantity.Amount
	// FuelPrice is such as 1.80 $/gal, PowerPrice such as 0.12 $/kWh.
	FuelPrice, PowerPrice quantity.Amount
	// Capacity is bushels or tonnes an hour, as the house's drying runs show it
	// over these points; Labour is dollars an hour.
	Capacity, Labour quantity.Amount
}

// Check lists everything wrong with the figures.
func (d Drying) Check() error {
	switch {
	case d.Weight.Unit() != quantity.Lb && d.Weight.Unit() != quantity.Kg || d.Weight.Sign() <= 0:
		return message.Invalid.Errorf("%s cannot be dried; give a weight above zero in lb or kg", d.Weight)
	case d.To.Sign() < 0 || !d.From.Less(hundred):
		return message.Invalid.Errorf("a moisture lies from 0 %% to below 100 %%, not at %s or %s", d.From, d.To)
	case !d.From.More(d.To):
		return message.Invalid.Errorf("drying takes water out: %s is not above %s", d.From, d.To)
	case d.Weight.Unit() == quantity.Lb && d.Bushel.Sign() <= 0:
		return message.Invalid.Errorf("pounds are counted in bushels, and it is not known what a bushel of this grain weighs; give the weight in kg")
	}
	return nil
}

// Water writes down the water that has to come out, and the weight that is left.
func (d Drying) Water(s *worksheet.Sheet) (water *worksheet.Step) {
	s.Section(message.Words("Water"))
	weight := s.Given("weight", message.Words("Wet weight"), d.Weight, quantity.Unrounded, worksheet.Unsourced)
	from := s.Given("from", message.Words("Moisture"), d.From, quantity.Unrounded, worksheet.Unsourced)
	to := s.Given("to", message.Words("Dried to"), d.To, quantity.Unrounded, worksheet.Unsourced)
	water = s.Work("water", message.Words("Water to remove"),
		worksheet.Over(worksheet.Times(weight, worksheet.Less(from, to)), worksheet.Less(worksheet.Const(hundred), to)), wholeLb, message.Words("W x (Mi - Mf) / (100 - Mf)"))
	s.Work("dry", message.Words("Weight left"), worksheet.Less(weight, water), quantity.Unrounded, worksheet.Unsourced)
	s.Work("points", message.Words("Points to take out"), worksheet.Points(from, to), quantity.Unrounded, worksheet.Unsourced)
	return water
}

// quantityOf writes the wet grain down in bushels, or in tonnes.
func (d Drying) quantityOf(s *worksheet.Sheet) *worksheet.Step {
	weight, _ := s.Step("weight")
	if d.Weight.Unit() == quantity.Kg {
		perTonne := quantity.Int(1000, quantity.Kg.Per(quantity.Tonne))
		return s.Work("quantity", message.Words("Wet tonnes"), worksheet.Over(weight, worksheet.Const(perTonne)), quantity.To("0.001", quantity.HalfUp), worksheet.Unsourced)
	}
	return s.Work("quantity", message.Words("Wet bushels"), worksheet.Over(weight, worksheet.Const(d.Bushel)), cents, worksheet.Unsourced)
}

// WorkHeated writes down what drying with heat takes: water, fuel, power, time and
// their cost as far as prices are known.
func (d Drying) WorkHeated() (*worksheet.Sheet, error) {
	if err := d.Check(); err != nil {
		return nil, err
	}
	s := &worksheet.Sheet{}
	d.Water(s)
	s.Section(message.Words("Drying with heat"))
	grain := d.quantityOf(s)
	points, _ := s.Step("points")
	var costs []worksheet.Operand
	for _, energy := range d.energies(grain.Value().Unit()) {
		step, err := energy.work(s, grain, points)
		if err != nil {
			return nil, err
		}
		if step != nil {
			costs = append(costs, step)
		}
	}
	labour, err := d.labour(s, grain)
	if err != nil {
		return nil, err
	}
	if labour != nil {
		costs = append(costs, labour)
	}
	return s, total(s, costs, grain)
}

// total writes down what all that is known of the cost comes to.
func total(s *worksheet.Sheet, costs []worksheet.Operand, grain *worksheet.Step) error {
	if len(costs) == 0 {
		return nil
	}
	sum := s.Work("cost", message.Words("Cost as far as prices are known"), worksheet.Sum(costs[0], costs[1:]...), cents, worksheet.Unsourced)
	s.Work("cost.each", message.Words("Cost for each"), worksheet.Over(sum, grain), quantity.To("0.0001", quantity.HalfUp), worksheet.Unsourced)
	return nil
}

// energy is fuel or power with its rate and price.
type energy struct {
	id                                              string
	label, rateLabel, priceLabel, costLabel, source message.Text
	rate, price                                     quantity.Amount
}

func (d Drying) energies(per quantity.Unit) []energy {
	fuel := energy{"fuel", message.Words("Fuel"), message.Words("Fuel for each and point"), message.Words("Price of fuel"), message.Words("Cost of fuel"), message.Words("the house"), d.FuelRate, d.FuelPrice}
	power := energy{"power", message.Words("Power"), message.Words("Power for each and point"), message.Words("Price of power"), message.Words("Cost of power"), message.Words("the house"), d.PowerRate, d.PowerPrice}
	for _, p := range published().heated {
		if !quantity.Recorded(fuel.rate) && slices.Contains(fuelRates, p.fuel.Unit()) && p.fuel.Mul(quantity.Int(1, per.Times(quantity.Point))).Unit() == volume(p.fuel.Unit()) {
			fuel.rate, fuel.source = p.fuel, message.Words(p.source)
		}
		if !quantity.Recorded(power.rate) && quantity.Recorded(p.power) && per == quantity.Bushel {
			power.rate, power.source = p.power, message.Words(p.source)
		}
	}
	return []energy{fuel, power}
}

// volume is gallons or litres, whichever a rate of fuel counts.
func volume(rate quantity.Unit) quantity.Unit {
	if rate == fuelRates[0] {
		return quantity.Gallon
	}
	return quantity.Litre
}

// work writes an energy down, and its cost where its price is known; nil without.
func (e energy) work(s *worksheet.Sheet, grain, points *worksheet.Step) (*worksheet.Step, error) {
	if !quantity.Recorded(e.rate) {
		return nil, nil
	}
	used := e.rate.Mul(grain.Value()).Mul(points.Value()).Unit()
	if used != quantity.Gallon && used != quantity.Litre && used != quantity.KWh {
		return nil, message.Invalid.Errorf("a dryer that takes %s is given for another count of grain than %s", e.rate, grain.Value().Unit())
	}
	rate := s.Rate(e.id+".rate", e.rateLabel, e.rate, e.source)
	step := s.Work(e.id, e.label, worksheet.Times(grain, points, rate), tenth, worksheet.Unsourced)
	if !quantity.Recorded(e.price) {
		return nil, nil
	}
	if e.price.Unit() != quantity.Dollar.Per(used) || e.price.Sign() < 0 {
		return nil, message.Invalid.Errorf("a price of %s does not go with %s; give it in %s", e.price, step.Printed(), quantity.Dollar.Per(used).String())
	}
	price := s.Given(e.id+".price", e.priceLabel, e.price, quantity.Unrounded, message.Words("the house"))
	return s.Work(e.id+".cost", e.costLabel, worksheet.Times(step, price), cents, worksheet.Unsourced), nil
}

// labour writes the hours down where the dryer's capacity is known, and their cost
// where an hour's is.
func (d Drying) labour(s *worksheet.Sheet, grain *worksheet.Step) (*worksheet.Step, error) {
	if !quantity.Recorded(d.Capacity) {
		return nil, nil
	}
	if d.Capacity.Unit() != grain.Value().Unit().Per(quantity.Hour) || d.Capacity.Sign() <= 0 {
		return nil, message.Invalid.Errorf("a dryer's capacity of %s is not above zero in %s", d.Capacity, grain.Value().Unit().Per(quantity.Hour).String())
	}
	capacity := s.Given("capacity", message.Words("Dryer's capacity over these points"), d.Capacity, quantity.Unrounded, message.Words("the house"))
	hours := s.Work("hours", message.Words("Time"), worksheet.Over(grain, capacity), tenth, worksheet.Unsourced)
	if !quantity.Recorded(d.Labour) {
		return nil, nil
	}
	if d.Labour.Unit() != quantity.Dollar.Per(quantity.Hour) || d.Labour.Sign() < 0 {
		return nil, message.Invalid.Errorf("labour of %s is not in $/h", d.Labour)
	}
	rate := s.Given("labour.rate", message.Words("Labour"), d.Labour, quantity.Unrounded, message.Words("the house"))
	return s.Work("labour.cost", message.Words("Cost of labour"), worksheet.Times(hours, rate), cents, worksheet.Unsourced), nil
}
