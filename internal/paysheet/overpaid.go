package paysheet

import (
	"cmp"
	"slices"

	"tenthpoint/internal/quantity"
)

// Balances are the amounts left to pay on sheets, by number: what is payable on those in force, less what
// was paid, and more by what later sheets took back. Below zero the grower owes it.
type Balances map[int64]quantity.Amount

// BalancesOf adds up what is left on all sheets.
func BalancesOf(sheets []Sheet, payments []Payment) Balances {
	left, next := Balances{}, map[int64]int64{}
	for _, s := range sheets {
		left[s.Number] = quantity.Zero(quantity.Dollar)
		if s.InForce() {
			left[s.Number] = s.Figures["payable"]
		}
		next[s.Corrects] = max(s.Number, next[s.Corrects])
	}
	for _, p := range payments {
		if p.InForce() {
			left.add(p.Sheet, p.Amount.Neg())
		}
	}
	for _, s := range sheets {
		for _, a := range s.Advances {
			if s.InForce() && a.Sheet > 0 {
				left.add(inPlaceOf(a.Sheet, next), a.Amount)
			}
		}
	}
	return left
}

func (b Balances) add(sheet int64, money quantity.Amount) {
	if left, known := b[sheet]; known {
		b[sheet] = left.Add(money)
	}
}

// inPlaceOf is the last sheet in the place of one that was corrected, perhaps more than once. What was
// paid on one of them went on to it.
func inPlaceOf(sheet int64, next map[int64]int64) int64 {
	for after, corrected := next[sheet]; corrected; after, corrected = next[sheet] {
		sheet = after
	}
	return sheet
}

// Overpaid is a sheet on which more was paid than it says, after one of its tickets was corrected or
// voided, or whose charges are more than its grain is worth. The next sheet of the grower takes it.
type Overpaid struct {
	Sheet
	Back quantity.Amount // $ that the grower owes
}

// OverpaidSheets are the sheets on which a grower owes something, by number.
func OverpaidSheets(sheets []Sheet, payments []Payment) []Overpaid {
	left := BalancesOf(sheets, payments)
	var out []Overpaid
	for _, s := range sheets {
		if back := left[s.Number].Neg(); back.Sign() > 0 {
			out = append(out, Overpaid{s, back})
		}
	}
	slices.SortFunc(out, func(a, b Overpaid) int { return cmp.Compare(a.Number, b.Number) })
	return out
}

// TakenBack are the advances by which a sheet of a grower takes what was paid too much before.
func TakenBack(owed []Overpaid, grower string, day quantity.Date) []Advance {
	var out []Advance
	for _, o := range owed {
		if o.Grower == grower {
			out = append(out, Advance{Day: day, Amount: o.Back, Sheet: o.Number})
		}
	}
	return out
}
