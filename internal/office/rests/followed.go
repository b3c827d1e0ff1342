package rests

import (
	"tenthpoint/internal/bin"
	"tenthpoint/internal/book"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
)

// Sheets are the settlement sheets in force that a ticket is on.
func Sheets(all []paysheet.Sheet, ticket int64) []paysheet.Sheet {
	resting := map[int64]bool{}
	for _, number := range paysheet.RestingOn(all, ticket) {
		resting[number] = true
	}
	var out []paysheet.Sheet
	for _, s := range all {
		if resting[s.Number] {
			out = append(out, s)
		}
	}
	paysheet.InOrder(out)
	return out
}

// Back are the transfers that bring grain back to the bin of a ticket that ends, out of the bins that
// movements took it to, the latest first. Grain that went elsewhere is refused: somebody must say
// where the bin's grain is.
func Back(lists Lists, l *load.Load, reason string) ([]bin.Movement, error) {
	place, lacks, err := missing(lists, l)
	if err != nil || lacks.IsZero() {
		return nil, err
	}
	taken, err := takenOn(lists, place, l.IssuedDay)
	if err != nil || len(taken) == 0 {
		return nil, err
	}
	there := map[string]quantity.Amount{}
	var out []bin.Movement
	for i := len(taken) - 1; i >= 0; i-- {
		for _, into := range taken[i].Into {
			if _, known := there[into.Bin]; !known && into.Bin != place.Bin {
				if there[into.Bin], err = liesAt(lists, bin.Place{Bin: into.Bin, Commodity: place.Commodity, Unit: place.Unit}); err != nil {
					return nil, err
				}
			}
			comes := quantity.Min(lacks, quantity.Min(into.Weight, there[into.Bin]))
			if into.Bin == place.Bin || comes.Sign() <= 0 {
				continue
			}
			lacks, there[into.Bin] = lacks.Sub(comes), there[into.Bin].Sub(comes)
			out = append(out, bin.Movement{What: bin.Transfer, Commodity: place.Commodity, Reason: reason,
				From: []bin.Weighed{{Bin: into.Bin, Weight: comes}}, Into: []bin.Weighed{{Bin: place.Bin, Weight: comes}}})
		}
	}
	if lacks.Sign() > 0 {
		return nil, message.Refused.Errorf("without ticket %d bin %v lacks %s, and it lies in no bin that its grain was moved to. Measure the bin up or undo a movement first", l.Number, place.Bin, lacks)
	}
	return out, nil
}

// Remade is a settlement sheet that followed its ticket: it is void, and another is in its place.
type Remade struct {
	Was paysheet.Sheet
	Is  *paysheet.Sheet // nil where no line of it remained
	// Paid is the amount paid, Left the amount still to be paid; below zero the grower owes it.
	Paid, Left quantity.Amount
}

// Quantity and Payable are the changes of what the sheet settles and pays.
func (r Remade) Quantity() quantity.Amount { return r.more("quantity") }

// Payable is the money of it.
func (r Remade) Payable() quantity.Amount { return r.more("payable") }

func (r Remade) more(figure string) quantity.Amount {
	if r.Is == nil {
		return r.Was.Figures[figure].Neg()
	}
	return r.Is.Figures[figure].Sub(r.Was.Figures[figure])
}

// Followed are the settlement sheets that followed a ticket that ended, by number.
func Followed(lists Lists, ticket int64) ([]Remade, error) {
	all, err := book.RecordsIn[paysheet.Sheet](lists)
	if err != nil {
		return nil, err
	}
	payments, err := book.RecordsIn[paysheet.Payment](lists)
	if err != nil {
		return nil, err
	}
	paysheet.InOrder(all)
	balances := paysheet.BalancesOf(all, payments)
	var out []Remade
	for _, s := range all {
		if s.Voided == nil || s.Voided.Ticket != ticket {
			continue
		}
		r := Remade{Was: s}
		holds := s.Number
		for _, next := range all {
			if next.Corrects == s.Number {
				r.Is, holds = &next, next.Number
			}
		}
		r.Paid, r.Left = paysheet.PaidOn(payments, holds), balances[holds]
		out = append(out, r)
	}
	return out, nil
}
