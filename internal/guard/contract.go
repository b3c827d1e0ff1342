package guard

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Contract is the room left on a contract.
type Contract struct {
	Number       string
	Agreed, Left quantity.Amount
	// Parts of Of of the load are delivered on it.
	Parts, Of quantity.Amount
}

// findOverfilled compares a load with what its contract has left. What is settled is not known before
// the sample is, so the net is compared, in the unit of the contract: nothing settles higher.
func findOverfilled(c *check) {
	net, known := c.Net()
	if !known || net.Sign() <= 0 {
		return
	}
	for _, k := range c.Contracts {
		comes, known := amountOf(c.Details.Commodity, net.Mul(k.Parts).Div(k.Of), k.Left.Unit())
		if !known || !comes.More(k.Left) {
			continue
		}
		comes = wholeUnits.Apply(comes)
		id := string(Overfilled)
		if len(c.Contracts) > 1 { // of several owners each contract is a question of its own
			id += "-" + k.Number
		}
		c.say(Finding{
			ID: id, Field: "terms", About: about(k.Number, k.Left.String(), comes.String()),
			Said: message.New("Contract %v: %s of %s are left, and this load brings about %s. Say what becomes of the rest; Shares give it terms of its own.",
				k.Number, atLeastNone(k.Left), k.Agreed, comes),
		}, c.limits(""))
	}
}

// wholeUnits shows what is only estimated.
var wholeUnits = quantity.To("1", quantity.HalfUp)

func atLeastNone(a quantity.Amount) quantity.Amount { return quantity.Max(a, quantity.Zero(a.Unit())) }

// amountOf is a weight of grain in bushels, or in a unit of weight.
func amountOf(commodity string, weight quantity.Amount, unit quantity.Unit) (quantity.Amount, bool) {
	if unit != quantity.Bushel {
		factor, err := quantity.MassFactor(weight.Unit(), unit)
		if err != nil {
			return quantity.Amount{}, false
		}
		return weight.Mul(factor), true
	}
	known, err := grain.ByID(commodity)
	pounds, wrong := quantity.MassFactor(weight.Unit(), quantity.Lb)
	if err != nil || wrong != nil || known.Bushel.IsZero() {
		return quantity.Amount{}, false
	}
	return weight.Mul(pounds).Div(known.Bushel), true
}
