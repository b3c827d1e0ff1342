package audit

import (
	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/office/money"
	"tenthpoint/internal/paysheet"
)

// payments looks whether payments are numbered without a gap, whether more was paid on a settlement
// sheet than it says, and whether anything was paid on one that does not count.
func payments(v *walk) error {
	numbers := map[int64]bool{}
	for f, err := range v.book.Facts(v.ctx, book.FactFilter{Kind: paysheet.Payment{}.Kind()}) {
		if err != nil {
			return err
		}
		if f.Seq > v.lastSeq {
			continue
		}
		p, err := journal.ReadBody[paysheet.Payment](f.Body)
		if err != nil {
			v.found(message.New("Fact %d: %v.", f.Seq, err))
			continue
		}
		numbers[p.Number] = true
		v.lastPayment = max(v.lastPayment, p.Number)
	}
	if v.lastPayment == 0 {
		return nil
	}
	for n := int64(1); n <= v.lastPayment; n++ {
		if !numbers[n] && !v.passed.covers(numbering.Payment, n) {
			v.found(message.New("Payment number %d is missing.", n))
		}
	}
	return paidRightly(v)
}

func paidRightly(v *walk) error {
	sheets, err := money.Sheets(v.ctx, v.desk)
	if err != nil {
		return err
	}
	all, err := money.Payments(v.ctx, v.desk)
	if err != nil {
		return err
	}
	left := paysheet.BalancesOf(sheets, all)
	for _, s := range sheets {
		paid := paysheet.PaidOn(all, s.Number)
		switch {
		case !s.InForce() && left[s.Number].Sign() > 0:
			v.found(message.New("%s more was taken back of settlement sheet %d than was paid on it.", left[s.Number], s.Number))
		case paid.Sign() > 0 && !s.InForce() && s.Voided.Ticket == 0:
			v.found(message.New("%s was paid on settlement sheet %d, which does not count.", paid, s.Number))
		case s.InForce() && paid.Sign() > 0 && paid.More(s.Figures["payable"]) && !cameWithItsSheet(all, s.Number):
			v.found(message.New("%s was paid on settlement sheet %d, more than the %s on it.", paid, s.Number, s.Figures["payable"]))
		}
	}
	return nil
}

// cameWithItsSheet reports whether a payment was made on the sheet that this one corrects: more may
// be paid then than is payable, and the next sheet takes it back.
func cameWithItsSheet(all []paysheet.Payment, sheet int64) bool {
	for _, p := range all {
		if p.InForce() && p.Sheet == sheet && p.Before > 0 {
			return true
		}
	}
	return false
}
