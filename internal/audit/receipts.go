package audit

import (
	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/receipt"
)

// receipts looks whether warehouse receipts are numbered without a gap, whether any rests on a ticket
// that does not count, and whether more is sold or on receipts of a ticket than was delivered.
func receipts(v *walk) error {
	numbers := map[int64]bool{}
	for f, err := range v.book.Facts(v.ctx, book.FactFilter{Kind: receipt.Receipt{}.Kind()}) {
		if err != nil {
			return err
		}
		if f.Seq > v.lastSeq {
			continue
		}
		r, err := journal.ReadBody[receipt.Receipt](f.Body)
		if err != nil {
			v.found(message.New("Fact %d: %v.", f.Seq, err))
			continue
		}
		numbers[r.Number] = true
		v.lastReceipt = max(v.lastReceipt, r.Number)
	}
	for n := int64(1); n <= v.lastReceipt; n++ {
		if !numbers[n] && !v.passed.covers(numbering.Receipt, n) {
			v.found(message.New("Warehouse receipt number %d is missing.", n))
		}
	}
	if v.lastReceipt == 0 {
		return nil
	}
	all, err := office.RecordsOf[receipt.Receipt](v.ctx, v.book)
	if err != nil {
		return err
	}
	sheets, err := office.RecordsOf[paysheet.Sheet](v.ctx, v.book)
	if err != nil {
		return err
	}
	receiptsRest(v, all, paysheet.TakenBy(sheets), wholes(sheets))
	return nil
}

// wholes are the growers' parts of tickets as settlement sheets have them.
func wholes(sheets []paysheet.Sheet) map[paidPart]quantity.Amount {
	out := map[paidPart]quantity.Amount{}
	for _, s := range sheets {
		for _, l := range s.Lines {
			out[paidPart{l.Ticket, s.Grower}] = l.Whole
		}
	}
	return out
}

func receiptsRest(v *walk, all []receipt.Receipt, taken paysheet.Taken, wholes map[paidPart]quantity.Amount) {
	for _, r := range all {
		if !r.InForce() {
			continue
		}
		for _, l := range r.Lines {
			if v.ended[l.Ticket] {
				v.found(message.New("Warehouse receipt %d rests on ticket %d, which does not count.", r.Number, l.Ticket))
			}
			held, _ := receipt.Held(all, l.Ticket, r.Grower, l.Quantity.Unit(), l.Weight.Unit())
			whole, known := wholes[paidPart{l.Ticket, r.Grower}]
			if both := held.Add(taken.Of(l.Ticket, r.Grower, held.Unit())); known && both.More(whole) {
				v.found(message.New("Of ticket %d %s was delivered by %v, and %s is sold or on warehouse receipts.", l.Ticket, whole, r.Grower, both))
			}
		}
	}
}
