// Package opening has the act by which a house starts its books here in mid-season.
//
// An opening says what lies in the bins, layer on layer, and whose it is: what each depositor is owed
// and under what, which receipts are out, what the house owns. It balances commodity by commodity, or
// it is refused with the difference. Grain in bins goes in by movements like any other.
//
// What a depositor is owed has no ticket here: its ticket is in the books before. It is a lot, with a
// number of a series of its own that begins at [First], far above any ticket. Settlement sheets and
// receipts name a lot by that number where they would name a ticket.
//
// An opening is never changed. Another act takes it back, as long as nothing rests on its lots, and
// then another may be entered.
package opening

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/position"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/receipt"
	"tenthpoint/internal/title"
)

// First is the number of the first lot of a book.
const First = 900_000_001

// IsLot reports whether a number is that of a lot and not of a ticket.
func IsLot(number int64) bool { return number >= First }

// Opening is the act, whole, as the journal keeps it.
type Opening struct {
	Number int64         `json:"number,string"`
	Day    quantity.Date `json:"day"` // the evening whose balances these are
	By     string        `json:"by"`
	Reason string        `json:"reason"`
	// List is the name of the file it was read from, Hash the SHA-256 of it.
	List  string  `json:"list,omitempty"`
	Hash  string  `json:"hash,omitempty"`
	Lying []Lying `json:"lying,omitempty"`
	Lots  []Lot   `json:"lots,omitempty"`
	Owned []Owned `json:"owned,omitempty"`
	// Advances are what depositors were paid before and still owe, Liens the notices in force.
	Advances []Advance `json:"advances,omitempty"`
	Liens    []Notice  `json:"liens,omitempty"`
	Ended    *Ended    `json:"ended,omitempty"`
}

// Lying is a layer of grain in a bin; layers of one bin stand in the order of filling, the lowest first.
type Lying struct {
	Bin        string           `json:"bin"`
	Commodity  string           `json:"commodity"`
	Weight     quantity.Amount  `json:"weight"`
	Moisture   *quantity.Amount `json:"moisture,omitempty"`
	TestWeight *quantity.Amount `json:"test_weight,omitempty"`
	Since      quantity.Date    `json:"since,omitzero"` // the first day any of it was received
	Movement   int64            `json:"movement,string,omitempty"`
}

// Lot is what one depositor is owed under one paper of the books before.
type Lot struct {
	Number    int64           `json:"number,string"`
	Grower    string          `json:"grower"`
	Name      string          `json:"name"`
	Commodity string          `json:"commodity"`
	Quantity  quantity.Amount `json:"quantity"` // in the unit of the settlement
	Weight    quantity.Amount `json:"weight"`   // as settled
	title.Terms
	// Price is that of grain that is sold and not paid yet.
	Price *quantity.Amount `json:"price,omitempty"`
	Since quantity.Date    `json:"since"`           // the day of delivery
	Paper string           `json:"paper,omitempty"` // its ticket in the books before
	// Receipt is the warehouse receipt that is out for it.
	Receipt *OnReceipt `json:"receipt,omitempty"`
}

// OnReceipt is a warehouse receipt that the books before issued.
type OnReceipt struct {
	Number     int64         `json:"number,string"`
	Day        quantity.Date `json:"day"`
	Negotiable bool          `json:"negotiable,omitempty"`
}

// Advance is money that a depositor was paid on grain not settled yet. The next settlement sheet takes
// it, with interest since its day.
type Advance struct {
	Number int64           `json:"number,string"`
	Grower string          `json:"grower"`
	Name   string          `json:"name"`
	Amount quantity.Amount `json:"amount"`
	Since  quantity.Date   `json:"since"`           // the day it was paid
	Paper  string          `json:"paper,omitempty"` // of the books before
}

// Notice is a lender's notice of lien that came in before.
type Notice struct {
	Grower    string        `json:"grower"`
	Holder    string        `json:"holder"`
	Commodity string        `json:"commodity,omitempty"` // empty for every grain
	Since     quantity.Date `json:"since"`
	Until     quantity.Date `json:"until"`
	Paper     string        `json:"paper,omitempty"`
	Number    int64         `json:"number,string,omitempty"` // in the register of this book
}

// Owned is grain in the house that is no depositor's: the house's own, or water that was settled off
// and is not dried out yet.
type Owned struct {
	Line      position.Line   `json:"line"`
	Commodity string          `json:"commodity"`
	Weight    quantity.Amount `json:"weight"`
}

// Ended is the act that took an opening back.
type Ended struct {
	Day    quantity.Date `json:"day"`
	By     string        `json:"by"`
	Reason string        `json:"reason"`
}

// Kind names the fact in the journal.
func (Opening) Kind() string { return "house.opening" }

// ID is the opening's name among the records of the book.
func (o Opening) ID() string { return fmt.Sprint(o.Number) }

// InForce reports whether it counts.
func (o Opening) InForce() bool { return o.Ended == nil }

// InForce is the opening that counts; false where a book was opened empty.
func InForce(all []Opening) (Opening, bool) {
	at := slices.IndexFunc(all, Opening.InForce)
	if at < 0 {
		return Opening{}, false
	}
	return all[at], true
}

// Puts is the movement that puts a layer into its bin.
func (o Opening) Puts(l Lying) bin.Movement {
	since := l.Since
	if since.IsZero() {
		since = o.Day
	}
	found := bin.Of(l.Weight, since)
	if l.Moisture != nil {
		found = found.With(grain.Moisture, *l.Moisture)
	}
	if l.TestWeight != nil {
		found = found.With(grain.TestWeight, *l.TestWeight)
	}
	return bin.Movement{
		What: bin.Open, Day: o.Day, Commodity: l.Commodity, By: o.By, Reason: o.Reason,
		Into: []bin.Weighed{{Bin: l.Bin, Weight: l.Weight}}, Found: &found,
	}
}

// Load is a lot as the load that settling, receipts and accounts ask for: grain that came under a
// ticket of the books before. It has no weights and no sample, but a balance.
func (o Opening) Load(l Lot) *load.Load {
	out := &load.Load{
		Phase: load.Ticketed, Number: l.Number, Weigher: o.By, IssuedDay: o.Day,
		Balance: &load.Balance{Quantity: l.Quantity, Settled: l.Weight},
		Details: load.Details{
			Direction: load.Inbound, Day: l.Since, Commodity: l.Commodity, Grower: load.Party{ID: l.Grower, Name: l.Name},
			Terms: l.Terms, Price: l.Price, OldTicket: l.Paper,
		},
	}
	if o.Ended != nil {
		out.Phase, out.Ended = load.Void, load.Ending{Reason: o.Ended.Reason, Day: o.Ended.Day}
	}
	return out
}

// LoadNumbered is the lot of a number among all openings, as a load; nil where there is none.
func LoadNumbered(all []Opening, number int64) *load.Load {
	for _, o := range all {
		for _, l := range o.Lots {
			if l.Number == number {
				return o.Load(l)
			}
		}
	}
	return nil
}

// Receipts are the warehouse receipts that are out for its lots, by number. Lots on one receipt are
// its lines. A receipt counts from the day of the opening, and bears its own day as the old one.
func (o Opening) Receipts() []receipt.Receipt {
	at := map[int64]int{}
	var out []receipt.Receipt
	for _, l := range o.Lots {
		if l.Receipt == nil {
			continue
		}
		i, known := at[l.Receipt.Number]
		if !known {
			i = len(out)
			at[l.Receipt.Number] = i
			out = append(out, receipt.Receipt{
				Number: l.Receipt.Number, Day: o.Day, By: o.By, Grower: l.Grower, Name: l.Name, Commodity: l.Commodity,
				Negotiable: l.Receipt.Negotiable, OldDay: l.Receipt.Day,
			})
		}
		out[i].Lines = append(out[i].Lines, receipt.Line{Ticket: l.Number, Quantity: l.Quantity, Weight: l.Weight, Held: position.LineOf(l.Terms)})
	}
	receipt.InOrder(out)
	return out
}

// Posting is what an opening adds to one line of owners.
type Posting struct {
	Commodity string
	Line      position.Line
	Weight    quantity.Amount
}

// Postings are what an opening adds to the lines of owners.
func (o Opening) Postings() []Posting {
	var out []Posting
	for _, l := range o.Lots {
		out = append(out, Posting{l.Commodity, position.LineOf(l.Terms), l.Weight})
	}
	for _, own := range o.Owned {
		out = append(out, Posting{own.Commodity, own.Line, own.Weight})
	}
	return out
}

// Balance is one commodity of an opening.
type Balance struct {
	Commodity string
	// Lying is what the bins hold, Owed what depositors are owed, Company what the house owns with what
	// it has bought and not paid, Between the water not dried out.
	Lying, Owed, Company, Between quantity.Amount
}

// Off is by how much the bins hold more than the owners account for.
func (b Balance) Off() quantity.Amount {
	return b.Lying.Sub(b.Owed).Sub(b.Company).Sub(b.Between)
}

// Balances are the balances of every commodity, by name.
func (o Opening) Balances() []Balance {
	at := map[string]*Balance{}
	of := func(commodity string, unit quantity.Unit) *Balance {
		if at[commodity] == nil {
			none := quantity.Zero(unit)
			at[commodity] = &Balance{commodity, none, none, none, none}
		}
		return at[commodity]
	}
	for _, l := range o.Lying {
		b := of(l.Commodity, l.Weight.Unit())
		b.Lying = b.Lying.Add(l.Weight)
	}
	for _, p := range o.Postings() {
		b := of(p.Commodity, p.Weight.Unit())
		switch p.Line.Group() {
		case position.Owed:
			b.Owed = b.Owed.Add(p.Weight)
		case position.Company:
			b.Company = b.Company.Add(p.Weight)
		default:
			b.Between = b.Between.Add(p.Weight)
		}
	}
	out := make([]Balance, 0, len(at))
	for _, b := range at {
		out = append(out, *b)
	}
	slices.SortFunc(out, func(a, b Balance) int { return cmp.Compare(a.Commodity, b.Commodity) })
	return out
}

// Check returns what is wrong with an opening, or nil; one that does not balance says by how much not.
func (o Opening) Check() error {
	switch {
	case o.Number < 1 || o.Day.IsZero() || o.By == "":
		return message.Invalid.Errorf("an opening has a number, a day and a person; one of them is empty")
	case o.Reason == "":
		return message.Incomplete.Errorf("say why the books are opened with balances; it is kept in the book")
	case len(o.Lying) == 0:
		return message.Invalid.Errorf("an opening says what lies in at least one bin")
	}
	if err := o.oneUnit(); err != nil {
		return err
	}
	if err := errors.Join(o.checkReceipts(), o.checkAdvances()); err != nil {
		return err
	}
	var off []message.Text
	for _, b := range o.Balances() {
		if !b.Off().IsZero() {
			off = append(off, message.New("of %s %s lie in the bins and the owners account for %s: %s apart", message.Words(b.Commodity), b.Lying, b.Lying.Sub(b.Off()), b.Off()))
		}
	}
	if len(off) > 0 {
		return message.Refused.Errorf("the opening does not balance: %s. Correct the list, or say what the house owns", message.Texts("; ", off))
	}
	return nil
}

// oneUnit asks that all weights are in one unit of weight and above zero.
func (o Opening) oneUnit() error {
	unit := o.Lying[0].Weight.Unit()
	weights := make([]quantity.Amount, 0, len(o.Lying)+len(o.Lots)+len(o.Owned))
	for _, l := range o.Lying {
		weights = append(weights, l.Weight)
	}
	for _, p := range o.Postings() {
		weights = append(weights, p.Weight)
	}
	for _, w := range weights {
		if w.Unit() != unit || !unit.IsMass() || w.Sign() <= 0 {
			return message.Invalid.Errorf("%s cannot stand in an opening in %s; write a weight above zero", w, unit.String())
		}
	}
	return nil
}

// checkReceipts asks that lots on one receipt are one depositor's, of one grain, and in open storage.
func (o Opening) checkReceipts() error {
	first := map[int64]Lot{}
	for _, l := range o.Lots {
		if l.Receipt == nil {
			continue
		}
		was, known := first[l.Receipt.Number]
		switch {
		case l.Under != title.OpenStorage:
			return message.Invalid.Errorf("receipt %d is for grain in open storage, and %v's is %s", l.Receipt.Number, l.Name, l.Said())
		case known && (was.Grower != l.Grower || was.Commodity != l.Commodity || *was.Receipt != *l.Receipt):
			return message.Invalid.Errorf("receipt %d stands twice in the list, of %v and of %v; it is one depositor's, of one grain and one day", l.Receipt.Number, was.Name, l.Name)
		}
		first[l.Receipt.Number] = l
	}
	return nil
}

// checkAdvances asks that advances are dollars above zero.
func (o Opening) checkAdvances() error {
	for _, a := range o.Advances {
		if a.Amount.Unit() != quantity.Dollar || a.Amount.Sign() <= 0 || a.Since.IsZero() {
			return message.Invalid.Errorf("an advance is dollars above zero and has its day; that of %v is %s", a.Name, a.Amount)
		}
	}
	return nil
}

// Last is how far the series of lots has gone with it; 0 for an opening without lots.
func (o Opening) Last() int64 {
	last := int64(0)
	for _, l := range o.Lots {
		last = max(last, l.Number-First+1)
	}
	for _, a := range o.Advances {
		last = max(last, a.Number-First+1)
	}
	return last
}
