package audit

import (
	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/office/money"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
)

// sheets works every settlement sheet out again, and looks whether anything was settled twice or
// rests on a ticket that does not count.
func sheets(v *walk) error {
	taken := map[paidPart]quantity.Amount{}
	numbers := map[int64]bool{}
	for f, err := range v.book.Facts(v.ctx, book.FactFilter{Kind: paysheet.Sheet{}.Kind()}) {
		if err != nil {
			return err
		}
		if f.Seq > v.lastSeq {
			continue
		}
		s, err := journal.ReadBody[paysheet.Sheet](f.Body)
		if err != nil {
			v.found(message.New("Fact %d: %v.", f.Seq, err))
			continue
		}
		numbers[s.Number] = true
		v.lastSheet = max(v.lastSheet, s.Number)
	}
	for n := int64(1); n <= v.lastSheet; n++ {
		if !numbers[n] && !v.passed.covers(numbering.Sheet, n) {
			v.found(message.New("Settlement sheet number %d is missing.", n))
		}
	}
	all, err := money.Sheets(v.ctx, v.desk)
	if err != nil {
		return err
	}
	for _, s := range all {
		workedAgain(v, s)
		if s.InForce() {
			settledOnce(v, s, taken)
		}
	}
	return nil
}

// workedAgain compares a sheet with its working.
func workedAgain(v *walk, s paysheet.Sheet) {
	worked, _, err := money.ReworkFromBook(v.ctx, v.desk, s)
	if err != nil {
		v.found(message.New("Settlement sheet %d cannot be worked out again: %v.", s.Number, err))
	} else if problem := money.Differs(s, worked); !problem.IsZero() {
		v.found(problem)
	}
}

// paidPart is a grower's part of a ticket.
type paidPart struct {
	ticket int64
	grower string
}

// settledOnce adds up what the sheets in force took of each ticket.
func settledOnce(v *walk, s paysheet.Sheet, taken map[paidPart]quantity.Amount) {
	for _, line := range s.Lines {
		key := paidPart{line.Ticket, s.Grower}
		sum, known := taken[key]
		if !known {
			sum = quantity.Zero(line.Quantity.Unit())
		}
		sum = sum.Add(line.Quantity)
		taken[key] = sum
		if sum.More(line.Whole) {
			v.found(message.New("Of ticket %d %s was delivered by %v, and settlement sheets took %s.", line.Ticket, line.Whole, s.Grower, sum))
		}
		if v.ended[line.Ticket] {
			v.found(message.New("Settlement sheet %d rests on ticket %d, which does not count.", s.Number, line.Ticket))
		}
	}
}
