// Package blend finds the mix of lots of grain that meets a target moisture and test
// weight.
//
// Water is a part of the wet weight, so the moisture of a mix is the mean of its lots by weight,
// exactly. Test weight is weight by volume: the volumes of the lots are added, which overlooks how
// kernels of two sizes settle among each other. Both targets are then straight lines in the
// weights taken, and the best mix is a linear program, solved in exact fractions. A mix needs
// mixing: lots laid on each other keep their own moisture for weeks.
package blend

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Lot is grain that may go into the mix.
type Lot struct {
	Name     string
	Weight   quantity.Amount // all there is
	Moisture quantity.Amount // %
	// TestWeight is not needed where the target has none.
	TestWeight quantity.Amount
	// Whole is true for a lot that is to be used up, with the least of the others.
	Whole bool
}

// Target has the limits that the mix must meet.
type Target struct {
	// Moisture is the highest, in percent.
	Moisture quantity.Amount
	// TestWeight is the lowest; not set, any will do.
	TestWeight quantity.Amount
}

// Mix is the weight to take of each lot, in their order: whole units of weight where such
// a mix meets the target, else exact fractions.
type Mix struct {
	Take []quantity.Amount
	// Weight, Moisture and TestWeight are those of the mix, not rounded; TestWeight
	// is not set where a lot has none.
	Weight, Moisture, TestWeight quantity.Amount
}

// Check says what is wrong with the lots or the target.
func Check(lots []Lot, target Target) error {
	if len(lots) < 2 {
		return message.Invalid.Errorf("a blend is made of two lots or more")
	}
	if len(lots) > mostLots {
		return message.Invalid.Errorf("a blend of %d lots is more than a house mixes; give at most %d", len(lots), mostLots)
	}
	unit := lots[0].Weight.Unit()
	for _, l := range lots {
		switch {
		case !unit.IsMass() || l.Weight.Unit() != unit:
			return message.Invalid.Errorf("the lots are not all weighed in one unit")
		case l.Weight.Sign() <= 0:
			return message.Invalid.Errorf("lot %v of %s has nothing to take from", l.Name, l.Weight)
		case !isMoisture(l.Moisture):
			return message.Invalid.Errorf("lot %v has a moisture of %s; it lies above 0 %% and below 100 %%", l.Name, l.Moisture)
		case quantity.Recorded(target.TestWeight) && (l.TestWeight.Unit() != target.TestWeight.Unit() || l.TestWeight.Sign() <= 0):
			return message.Invalid.Errorf("lot %v has no test weight in %s, and the mix is to have one", l.Name, target.TestWeight.Unit().String())
		}
	}
	if !isMoisture(target.Moisture) {
		return message.Invalid.Errorf("a mix of %s cannot be; its moisture lies above 0 %% and below 100 %%", target.Moisture)
	}
	return nil
}

// mostLots keeps a solution quick; no house mixes so many.
const mostLots = 24

func isMoisture(m quantity.Amount) bool {
	return m.Unit() == quantity.Percent && m.Sign() > 0 && m.Less(quantity.Int(100, quantity.Percent))
}

// Best is the mix that meets the target: the most grain there can be, or where lots
// are to be used whole, those with the least of the others. The error says why no
// mix can be.
func Best(lots []Lot, target Target) (Mix, error) {
	if err := Check(lots, target); err != nil {
		return Mix{}, err
	}
	taken := solve(programOf(lots, target))
	for i, l := range lots {
		if l.Whole && taken[i].Less(l.Weight.In(quantity.Plain)) {
			return Mix{}, message.Refused.Errorf("all of %v cannot be used: the other lots bring no mix of it to %s", l.Name, target)
		}
	}
	mix := MixOf(lots, wholeUnits(lots, target, taken))
	if mix.Weight.Sign() == 0 {
		return Mix{}, outOfReach(lots, target)
	}
	return mix, nil
}

// outOfReach says which limit no mix of the lots can meet: a mix lies between its lots.
func outOfReach(lots []Lot, target Target) error {
	driest := slices.MinFunc(lots, func(a, b Lot) int { return a.Moisture.Cmp(b.Moisture) })
	if driest.Moisture.More(target.Moisture) {
		return message.Refused.Errorf("no mix of these lots comes to %s: the driest of them, %v, has %s", target, driest.Name, driest.Moisture)
	}
	heaviest := slices.MaxFunc(lots, func(a, b Lot) int { return a.TestWeight.Cmp(b.TestWeight) })
	if heaviest.TestWeight.Less(target.TestWeight) {
		return message.Refused.Errorf("no mix of these lots comes to %s: the heaviest of them, %v, has %s", target, heaviest.Name, heaviest.TestWeight)
	}
	return message.Refused.Errorf("no mix of these lots comes to %s: what is dry enough is too light", target)
}

// Message is the target for people.
func (t Target) Message() message.Text {
	if !quantity.Recorded(t.TestWeight) {
		return message.New("%s", t.Moisture)
	}
	return message.New("%s and %s", t.Moisture, t.TestWeight)
}

// String is the target in English.
func (t Target) String() string { return t.Message().String() }

// Meets reports whether a mix keeps to the target.
func (t Target) Meets(m Mix) bool {
	return m.Weight.Sign() > 0 && !m.Moisture.More(t.Moisture) && (!quantity.Recorded(t.TestWeight) || !m.TestWeight.Less(t.TestWeight))
}

// MixOf returns the mix of given amounts of each lot.
func MixOf(lots []Lot, take []quantity.Amount) Mix {
	unit := lots[0].Weight.Unit()
	m := Mix{Take: take, Weight: quantity.Zero(unit), Moisture: quantity.Zero(quantity.Percent)}
	water := quantity.Zero(unit.Times(quantity.Percent))
	var volume quantity.Amount
	for i, l := range lots {
		m.Weight = m.Weight.Add(take[i])
		water = water.Add(take[i].Mul(l.Moisture))
		if l.TestWeight.Sign() > 0 {
			v := take[i].Div(l.TestWeight)
			if i == 0 {
				volume = v
			} else if volume.Unit() == v.Unit() {
				volume = volume.Add(v)
			}
		}
	}
	if m.Weight.Sign() > 0 {
		m.Moisture = water.Div(m.Weight)
		if volume.Sign() > 0 && allWeighed(lots) {
			m.TestWeight = m.Weight.Div(volume)
		}
	}
	return m
}

func allWeighed(lots []Lot) bool {
	for _, l := range lots {
		if l.TestWeight.Sign() <= 0 || l.TestWeight.Unit() != lots[0].TestWeight.Unit() {
			return false
		}
	}
	return true
}
