package rates

import (
	"cmp"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// trialFlags are the facts of a load that has not come, to try rates on.
type trialFlags struct {
	terminal.LanguageFlag
	Weight string   `help:"Net weight, in the unit of the rates unless it says lb or kg. Without it, 56,000 lb or 25,000 kg." placeholder:"WEIGHT"`
	Factor []string `sep:"none" help:"A result of the sample; may be repeated." placeholder:"FACTOR=RESULT"`
	Price  string   `help:"Price per bushel, hundredweight or tonne, as the rates settle. Without it, no price." placeholder:"MONEY"`
	Accept []string `sep:"none" help:"A limit to settle beyond, by its id; may be repeated." placeholder:"LIMIT"`
	terminal.RuleSetFlags
}

// edition is the one named, its results recorded by today's law: a load that has
// not come has no other day.
func (f trialFlags) edition(t *terminal.Terminal, house terminal.BookFlags, named string) (*rates.Edition, error) {
	e, err := editionNamed(t, house, named)
	if err != nil {
		return nil, err
	}
	laws, err := f.ReadLaws(house.RatesFolder())
	if err != nil {
		return nil, err
	}
	return laws.By(e, t.LocalDate())
}

// usualLoads are a truck of corn in each unit of weight.
var usualLoads = map[quantity.Unit]string{quantity.Lb: "56000", quantity.Kg: "25000"}

// facts are the load as an edition takes it, but for its moisture.
func (f trialFlags) facts(e *rates.Edition) (settle.Facts, error) {
	cells := terminal.Texts{"net": cmp.Or(f.Weight, usualLoads[e.Units.Weight])}
	cells.Put("price", f.Price)
	if err := cells.PutResults(f.Factor); err != nil {
		return settle.Facts{}, err
	}
	facts, err := terminal.TrialFacts(e, cells)
	facts.Accepted = f.Accept
	return facts, err
}
