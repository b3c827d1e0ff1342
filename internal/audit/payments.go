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
	for _, s := range sheets {
		paid := paysheet.PaidOn(all, s.Number)
		switch {
		case paid.Sign() > 0 && !s.InForce():
			v.found(message.New("%s was paid on settlement sheet %d, which does not count.", paid, s.Number))
		case paid.Sign() > 0 && paid.More(s.Figures["payable"]):
			v.found(message.New("%s was paid on settlement sheet %d, more than the %s on it.", paid, s.Number, s.Figures["payable"]))
		}
	}
	return nil
}
