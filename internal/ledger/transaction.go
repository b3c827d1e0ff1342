package ledger

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
)

// Posting is one line of a transaction; a debit is positive.
type Posting struct {
	Account string
	Amount  quantity.Amount // $
}

// Of is the kind of document that a transaction posts.
type Of string

// The kinds of transaction.
const (
	Settled Of = "sheet"
	Paid    Of = "payment"
)

// Transaction is postings that sum to zero.
type Transaction struct {
	Day      quantity.Date
	Of       Of
	Number   int64 // of the sheet or the payment
	Void     bool  // turns it round
	Grower   string
	Name     string
	Postings []Posting
}

// Taken is a levy of a sheet with its amount.
type Taken struct {
	ID     string
	Amount quantity.Amount
	Borne  bool // by the elevator
}

// Sheet posts a settlement sheet; of a void one also what turns it round.
func (a Accounts) Sheet(s paysheet.Sheet, levies []Taken) ([]Transaction, error) {
	t := Transaction{Day: s.Day, Of: Settled, Number: s.Number, Grower: s.Grower, Name: s.Name}
	t.post(a.grain(s.Commodity), s.Figures["net"])
	t.post(a.of(Services), s.Figures["services"].Neg())
	t.post(a.of(Storage), s.Figures["keeping"].Neg())
	for _, l := range levies {
		t.post(a.levy(l.ID), l.Amount.Neg())
		if l.Borne {
			t.post(a.of(Borne), l.Amount)
		}
	}
	back := takenBack(s)
	t.post(a.of(Advances), s.Figures["advances"].Sub(back).Neg())
	t.post(a.of(Interest), s.Figures["interest"].Neg())
	t.post(a.of(Growers), s.Figures["payable"].Add(back).Neg())
	return t.withVoid(s.Voided)
}

// takenBack is the money a sheet takes back because too much was paid on others: it was never an advance,
// and stands with the grower still.
func takenBack(s paysheet.Sheet) quantity.Amount {
	back := quantity.Zero(quantity.Dollar)
	for _, a := range s.Advances {
		if a.Sheet > 0 {
			back = back.Add(a.Amount)
		}
	}
	return back
}

// Payment posts a payment on a sheet; of a void one also what turns it round.
func (a Accounts) Payment(p paysheet.Payment, s paysheet.Sheet) ([]Transaction, error) {
	t := Transaction{Day: p.Day, Of: Paid, Number: p.Number, Grower: s.Grower, Name: s.Name}
	t.post(a.of(Growers), p.Amount)
	t.post(a.of(paidFrom[p.How]), p.Amount.Neg())
	return t.withVoid(p.Voided)
}

// post adds an amount to its account; nothing is not posted.
func (t *Transaction) post(account string, amount quantity.Amount) {
	if amount.Sign() == 0 {
		return
	}
	for i, p := range t.Postings {
		if p.Account == account {
			t.Postings[i].Amount = p.Amount.Add(amount)
			return
		}
	}
	t.Postings = append(t.Postings, Posting{account, amount})
}

// withVoid is the transaction, and what turns it round if it was void later.
func (t Transaction) withVoid(void *paysheet.Voided) ([]Transaction, error) {
	if left := t.sum(); left.Sign() != 0 {
		return nil, message.Storage.Errorf("the postings of %s %d do not sum to zero: %s is left", message.Words(string(t.Of)), t.Number, left)
	}
	if void == nil {
		return []Transaction{t}, nil
	}
	turned := t
	turned.Day, turned.Void, turned.Postings = void.Day, true, slices.Clone(t.Postings)
	for i := range turned.Postings {
		turned.Postings[i].Amount = turned.Postings[i].Amount.Neg()
	}
	return []Transaction{t, turned}, nil
}

func (t Transaction) sum() quantity.Amount {
	sum := quantity.Zero(quantity.Dollar)
	for _, p := range t.Postings {
		sum = sum.Add(p.Amount)
	}
	return sum
}
