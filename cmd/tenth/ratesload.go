package main

import (
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// trialFlags are the facts of a load that has not come, to try rates on.
type trialFlags struct {
	Weight string   `help:"Net weight, in the unit of the rates unless it says lb or kg. Without it, 56,000 lb or 25,000 kg." placeholder:"WEIGHT"`
	Factor []string `sep:"none" help:"A result of the sample; may be repeated." placeholder:"FACTOR=RESULT"`
	Price  string   `help:"Price per bushel, hundredweight or tonne, as the rates settle. Without it, price later." placeholder:"MONEY"`
	Accept []string `sep:"none" help:"A limit to settle beyond, by its id; may be repeated." placeholder:"LIMIT"`
}

// usualLoads are a truck of corn in each unit of weight.
var usualLoads = map[quantity.Unit]string{quantity.Lb: "56000", quantity.Kg: "25000"}

// facts are the load as an edition takes it, but for its moisture. Rates know
// nothing of the truck, so one empty unit of weight stands for it.
func (f trialFlags) facts(e *rates.Edition) (settle.Facts, error) {
	text := orElse(f.Weight, usualLoads[e.Units.Weight])
	net, err := weightIn("Weight", text, e.Units.Weight)
	if err != nil {
		return settle.Facts{}, err
	}
	if net.Sign() <= 0 {
		return settle.Facts{}, refusal("Give a weight above nought, or leave it out", "a load of %s has nothing to settle", net)
	}
	truck := quantity.Int(1, net.Unit())
	load := sum{edition: e, facts: settle.Facts{
		Drafts:   []settle.Draft{{Gross: net.Add(truck), Tare: truck}},
		Accepted: f.Accept,
	}}
	if f.Price != "" {
		price, err := priceIn(f.Price, e.Units.Settle)
		if err != nil {
			return settle.Facts{}, err
		}
		load.facts.Price = &settle.Price{Amount: price, Source: "as given"}
	}
	for _, text := range f.Factor {
		found, err := finding(e.Commodity, e, text)
		if err != nil {
			return settle.Facts{}, err
		}
		load.find(found)
	}
	return load.facts, nil
}
