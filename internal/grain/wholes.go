package grain

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Whole is a factor that holds other factors: heat damage is part of total
// damage, and defects are damage, foreign material and shrunken and broken
// kernels together.
type Whole struct {
	Factor FactorID
	Parts  []FactorID
	// Complete: the parts are all of it, so their sum is the whole.
	Complete bool
}

func sumOf(whole FactorID, parts ...FactorID) Whole {
	return Whole{Factor: whole, Parts: parts, Complete: true}
}

func includes(whole FactorID, parts ...FactorID) Whole {
	return Whole{Factor: whole, Parts: parts}
}

// result returns the recorded result of a factor, or the one derived from its parts. settled is
// false when the parts give only a lower bound.
func (t *GradeTable) result(r results, id FactorID) (a quantity.Amount, known, settled bool) {
	if a, known = r.recorded[id]; known {
		return a, true, true
	}
	for _, w := range t.Wholes {
		if w.Factor == id {
			least, tested := w.least(r)
			return r.factor(id).Recorded(least), tested > 0, w.Complete && tested == len(w.Parts)
		}
	}
	return quantity.Amount{}, false, false
}

// least is the least a whole can be, as measured, and how many of its parts
// were tested: their sum where they are all of it, else the largest of them.
func (w Whole) least(r results) (least quantity.Amount, tested int) {
	least = quantity.Zero(r.factor(w.Factor).Unit)
	for _, id := range w.Parts {
		part, ok := r.measured[id]
		switch {
		case !ok:
			continue
		case w.Complete:
			least = least.Add(part)
		default:
			least = quantity.Max(least, part)
		}
		tested++
	}
	return least, tested
}

// ceiling is the most an untested part can be: all of its whole.
func (t *GradeTable) ceiling(r results, id FactorID) (a quantity.Amount, known bool) {
	for _, w := range t.Wholes {
		if !slices.Contains(w.Parts, id) {
			continue
		}
		if whole, _, settled := t.result(r, w.Factor); settled {
			return whole, true
		}
	}
	return quantity.Amount{}, false
}

// misfits finds wholes recorded as less than the sum of their parts, or as more when every part was
// tested.
func (t *GradeTable) misfits(r results) []error {
	var problems []error
	for _, w := range t.Wholes {
		whole, tested := r.measured[w.Factor]
		if !tested {
			continue
		}
		least, parts := w.least(r)
		slack := w.slack(r, parts)
		switch {
		case least.Sub(whole).More(slack):
			problems = append(problems, w.misfit(r, message.New("less than its parts")))
		case w.Complete && parts == len(w.Parts) && whole.Sub(least).More(slack):
			problems = append(problems, w.misfit(r, message.New("more than its parts together")))
		}
	}
	return problems
}

func (w Whole) misfit(r results, how message.Text) error {
	return message.Invalid.Errorf("%s %s is %s: %s; check the figures",
		r.name(w.Factor), r.show(w.Factor, r.recorded[w.Factor]), how, w.listed(r))
}

// slack returns the greatest difference rounding alone can make between a whole and the sum of its
// parts: half a step for each of them and for the whole. A single part has none, nor have counts.
func (w Whole) slack(r results, parts int) quantity.Amount {
	f := r.factor(w.Factor)
	if !w.Complete {
		return quantity.Zero(f.Unit)
	}
	halfStep := quantity.New(f.Record.Step, f.Unit).Mul(half)
	return halfStep.Mul(quantity.Int(int64(parts+1), quantity.Plain))
}

var half = quantity.Of("0.5", quantity.Plain)

// listed writes the tested parts out: "Damaged kernels, total 2.0 %, ...".
func (w Whole) listed(r results) message.Text {
	var parts []message.Text
	for _, id := range w.Parts {
		if part, ok := r.recorded[id]; ok {
			parts = append(parts, message.List(" ", r.name(id), r.show(id, part)))
		}
	}
	return message.Texts(", ", parts)
}
