package rates

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/discount"
	"tenthpoint/internal/rates/handling"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/rates/shrink"
	"tenthpoint/internal/tomlfile"
)

// UnderGrainAct lists the rules of an edition that are illegal for an elevator licensed under the
// Canada Grain Act, each at its line. By C.R.C., c. 889, s. 30 nothing may be taken for handling;
// by the Order (SOR/2018-176) weight is taken off wet grain by the formula alone, on the weight
// recorded when it is delivered, down to no less than the lowest tough moisture less 0.1. Grain not
// listed in the Order is not checked.
func (e *Edition) UnderGrainAct() tomlfile.Problems {
	names := e.Commodity.MoistureGrains()
	if len(names) == 0 {
		return nil
	}
	o := orderCheck{e: e}
	o.handling()
	o.shrink()
	o.floor(names)
	o.discounts()
	return o.problems
}

type orderCheck struct {
	e        *Edition
	problems tomlfile.Problems
}

func (o *orderCheck) breaks(key string, what, remedy message.Text) {
	o.problems = append(o.problems, tomlfile.Locate(o.e.File, o.e.Text).Problem(key, what, remedy))
}

func (o *orderCheck) handling() {
	if h := o.e.Handling; h.Method != handling.None && h.Rate.Amount.Sign() > 0 {
		o.breaks("handling.rate", message.New("handling of %s is taken, and the shrinkage allowance of a licensed elevator in Canada is zero (C.R.C., c. 889, s. 30)", h.Rate.Amount.Written()), message.New("Write method = \"none\"."))
	}
}

func (o *orderCheck) shrink() {
	s := o.e.Shrink
	if s.Method == shrink.None {
		return
	}
	if s.Method != shrink.Water {
		o.breaks("shrink.method", message.New("weight is not taken off by the formula of the Order (SOR/2018-176), the only one allowed in a licensed elevator in Canada"), message.New("Write method = \"water\"."))
	}
	if s.Basis != rule.Net {
		o.breaks("shrink.basis", message.New("shrink is taken on the %s; the Order (SOR/2018-176, s. 1(3)) takes it on the weight recorded when the grain is delivered", s.Basis), message.New("Write basis = \"net\"."))
	}
}

// floor compares the shrink-to with the class the edition names; where it names none, against the
// lowest of all classes of the grain.
func (o *orderCheck) floor(names []string) {
	s := o.e.Shrink
	if s.Method == shrink.None || !s.To.Given() {
		return
	}
	if s.FloorGrain != "" {
		names = []string{s.FloorGrain}
	}
	lowest, found := lowestFloor(names)
	if found && s.To.Amount.Less(lowest) {
		o.breaks("shrink.to", message.New("shrink-to %s is below %s, the lowest tough moisture less 0.1 (SOR/2018-176)", s.To.Amount.Written(), lowest.FixedString(1)), message.New("Write %s or more.", lowest.FixedString(1)))
	}
}

func lowestFloor(names []string) (lowest quantity.Amount, found bool) {
	for _, name := range names {
		floor, ok, err := grain.ShrinkFloor(name)
		if err == nil && ok && (!found || floor.Less(lowest)) {
			lowest, found = floor, true
		}
	}
	return lowest, found
}

// discounts looks for weight that is taken for moisture by another name.
func (o *orderCheck) discounts() {
	for i, d := range o.e.Discounts {
		if d.Factor.ID == grain.Moisture && d.Of == discount.OfWeight {
			o.breaks(rule.Nth("discount", i)+".of", message.New("weight is taken for moisture beside the shrink, and the Order (SOR/2018-176) allows its formula alone"), message.New("Let the rule be of money, or take it out."))
		}
	}
}
