package paysheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Payment is money that was paid on a settlement sheet, or a part of it. It is written down here;
// no bank is told.
type Payment struct {
	Number    int64           `json:"number,string"`
	Sheet     int64           `json:"sheet,string"`
	Day       quantity.Date   `json:"day"`
	Amount    quantity.Amount `json:"amount"`
	How       How             `json:"how"`
	Reference string          `json:"reference,omitempty"` // number of the check, of the transfer
	By        string          `json:"by"`
	// Before is the sheet it was made on, of a payment that went on to the sheet in its place.
	Before int64   `json:"before,string,omitempty"`
	Voided *Voided `json:"voided,omitempty"`
}

// How is the method of a payment.
type How string

const (
	Check    How = "check"
	Transfer How = "transfer"
	Cash     How = "cash"
)

var howWords = map[How]message.Text{Check: message.Words("by check"), Transfer: message.Words("by transfer"), Cash: message.Words("in cash")}

// Said is its name on papers.
func (h How) Said() message.Text { return howWords[h] }

// Kind names the fact in the journal.
func (Payment) Kind() string { return "money.payment" }

// ID is the payment's name among the records of the book.
func (p Payment) ID() string { return fmt.Sprint(p.Number) }

// InForce reports whether the payment counts.
func (p Payment) InForce() bool { return p.Voided == nil }

// Check returns what is wrong with the payment, or nil.
func (p Payment) Check() error {
	_, known := howWords[p.How]
	switch {
	case !known:
		return message.Invalid.Errorf("%q is no way to pay; write check, transfer or cash", string(p.How))
	case p.Amount.Unit() != quantity.Dollar || p.Amount.Sign() <= 0 || !Cents.Apply(p.Amount).Equal(p.Amount):
		return message.Invalid.Errorf("%s is no sum to pay; it is whole cents above zero", p.Amount)
	case p.How != Cash && strings.TrimSpace(p.Reference) == "":
		return message.Invalid.Errorf("a payment %s has a number; write it", p.How.Said())
	case p.Day.IsZero() || p.By == "":
		return message.Invalid.Errorf("a payment has a day and a person; one of them is empty")
	}
	return nil
}

// Pay says why a payment cannot be written down on a sheet, or nil. Open is what is left on it.
func (s Sheet) Pay(p Payment, open quantity.Amount) error {
	switch {
	case !s.InForce():
		return message.Refused.Errorf("settlement sheet %d is void, and nothing is paid on it", s.Number)
	case p.Day.Before(s.Day):
		return message.Refused.Errorf("settlement sheet %d is of %s, and is not paid on %s", s.Number, s.Day, p.Day)
	case p.Day.Before(s.PayAfter):
		return message.Refused.Errorf("settlement sheet %d is deferred, and is paid from %s on", s.Number, s.PayAfter)
	case p.Amount.More(open):
		return message.Refused.Errorf("on settlement sheet %d %s is open, and %s is more", s.Number, open, p.Amount)
	}
	return nil
}

// PaidOn is the sum of the payments in force on a sheet.
func PaidOn(payments []Payment, sheet int64) quantity.Amount {
	paid := quantity.Zero(quantity.Dollar)
	for _, p := range payments {
		if p.InForce() && p.Sheet == sheet {
			paid = paid.Add(p.Amount)
		}
	}
	return paid
}

// PayableFrom is the first day a sheet may be paid.
func (s Sheet) PayableFrom() quantity.Date {
	if s.PayAfter.After(s.Day) {
		return s.PayAfter
	}
	return s.Day
}

// Open is a sheet on which money is still to be paid.
type Open struct {
	Sheet
	Paid, Left quantity.Amount
	Due        quantity.Date // the first day it may be paid
}

// OpenSheets are the sheets in force on which something is left, the longest due first.
func OpenSheets(sheets []Sheet, payments []Payment) []Open {
	var out []Open
	balances := BalancesOf(sheets, payments)
	for _, s := range sheets {
		paid, left := PaidOn(payments, s.Number), balances[s.Number]
		if !s.InForce() || left.Sign() <= 0 {
			continue
		}
		out = append(out, Open{Sheet: s, Paid: paid, Left: left, Due: s.PayableFrom()})
	}
	slices.SortFunc(out, func(a, b Open) int { return cmp.Or(a.Due.Cmp(b.Due), cmp.Compare(a.Number, b.Number)) })
	return out
}

// PaymentsInOrder puts payments in the order of their numbers.
func PaymentsInOrder(payments []Payment) {
	slices.SortFunc(payments, func(a, b Payment) int { return cmp.Compare(a.Number, b.Number) })
}
