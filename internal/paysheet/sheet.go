package paysheet

import (
	"cmp"
	"fmt"
	"slices"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/title"
)

// Sheet is a settlement sheet as the journal keeps it.
type Sheet struct {
	Number    int64         `json:"number,string"`
	Day       quantity.Date `json:"day"`
	Grower    string        `json:"grower"`
	Name      string        `json:"name"`
	Commodity string        `json:"commodity"`
	Lines     []Line        `json:"lines"`
	Tariff    string        `json:"tariff"` // SHA-256 of its text, which the book keeps
	Levies    []string      `json:"levies,omitempty"`
	Advances  []Advance     `json:"advances,omitempty"`
	Payees    []string      `json:"payees,omitempty"` // beside the grower, on one payment
	// Release says why a lender with a notice of lien is not among them.
	Release string `json:"release,omitempty"`
	// PayAfter is the first day it is paid, of a payment deferred to another year.
	PayAfter quantity.Date              `json:"pay_after,omitzero"`
	By       string                     `json:"by"`
	Figures  map[string]quantity.Amount `json:"figures"`
	Working  string                     `json:"working"` // SHA-256 of every figure of the working
	Corrects int64                      `json:"corrects,string,omitempty"`
	// RunsTo is the day to which charges and interest run, of a sheet made anew after one of its
	// tickets was corrected: that of the sheet it corrects.
	RunsTo quantity.Date `json:"runs_to,omitzero"`
	Voided *Voided       `json:"voided,omitempty"`
}

// ChargedTo is the day to which charges and interest run.
func (s Sheet) ChargedTo() quantity.Date {
	if s.RunsTo.IsZero() {
		return s.Day
	}
	return s.RunsTo
}

// Bid says when a price was posted and by whom. A bid posted again later changes no sheet.
type Bid struct {
	At  string `json:"at"` // UTC, as in the journal
	Who string `json:"who"`
}

// Line is a ticket, or a part of one, at a price.
type Line struct {
	Ticket int64 `json:"ticket,string"`
	Owner  int   `json:"owner,string"` // counted from 1; 0 where one has all of it
	// Whole is the grower's part of the ticket; From is the quantity that earlier sheets took.
	Whole    quantity.Amount `json:"whole"`
	From     quantity.Amount `json:"from"`
	Quantity quantity.Amount `json:"quantity"`
	Price    quantity.Amount `json:"price"`
	Source   string          `json:"source"`
	// Bid is the posted bid that the price is; nil for any other price, and on older sheets.
	Bid   *Bid        `json:"bid,omitempty"`
	Under title.Under `json:"under,omitempty"` // what it was held under until now
	Whose title.Whose `json:"whose,omitempty"` // and whose it was, where that does not follow
	// Weight is the settled weight of it, which is the elevator's from now on; older sheets did not
	// say it.
	Weight    *quantity.Amount `json:"weight,omitempty"`
	Delivered quantity.Date    `json:"delivered"`
}

// Takes is the weight that a line takes of the settled weight of the grower's part of its ticket:
// what lies between its two marks, in whole units, so that the parts of a ticket add up to it.
func (l Line) Takes(settled quantity.Amount) quantity.Amount {
	return l.upTo(settled, l.From.Add(l.Quantity)).Sub(l.upTo(settled, l.From))
}

func (l Line) upTo(settled, mark quantity.Amount) quantity.Amount {
	if mark.Equal(l.Whole) {
		return settled
	}
	return wholeUnits.Apply(settled.Mul(mark).Div(l.Whole))
}

var wholeUnits = quantity.To("1", quantity.HalfUp)

// Advance is money paid out before, with interest since.
type Advance struct {
	Day    quantity.Date   `json:"day"`
	Amount quantity.Amount `json:"amount"`
	// Sheet is the settlement sheet on which it was paid too much; such money bears no interest.
	Sheet int64 `json:"sheet,string,omitempty"`
	// Opening is the number of an advance that the books before paid, among the opening balances.
	Opening int64 `json:"opening,string,omitempty"`
}

// Voided is the end of a sheet that does not count.
type Voided struct {
	Day    quantity.Date `json:"day"`
	By     string        `json:"by"`
	Reason string        `json:"reason"`
	// Ticket is the ticket whose end took the sheet with it. What was paid on the sheet then stands,
	// on the sheet in its place or as paid too much.
	Ticket int64 `json:"ticket,string,omitempty"`
}

// Kind names the fact in the journal.
func (Sheet) Kind() string { return "money.sheet" }

// InForce reports whether the sheet counts.
func (s Sheet) InForce() bool { return s.Voided == nil }

// Check returns what is wrong with the sheet, or nil.
func (s Sheet) Check() error {
	switch {
	case len(s.Lines) == 0:
		return message.Invalid.Errorf("a settlement sheet has at least one ticket")
	case s.Grower == "" || s.By == "" || s.Day.IsZero():
		return message.Invalid.Errorf("a settlement sheet has a grower, a day and a person; one of them is empty")
	}
	for _, l := range s.Lines {
		switch {
		case l.Quantity.Sign() <= 0:
			return message.Invalid.Errorf("%s of ticket %d is nothing to settle", l.Quantity, l.Ticket)
		case l.From.Add(l.Quantity).More(l.Whole):
			return message.Refused.Errorf("of ticket %d %s was delivered, %s of it is settled already, and %s more is too much", l.Ticket, l.Whole, l.From, l.Quantity)
		case l.Price.Sign() <= 0 || l.Price.Unit() != quantity.Dollar.Per(l.Quantity.Unit()):
			return message.Invalid.Errorf("the price of ticket %d is %s; it is money above zero per %s", l.Ticket, l.Price, l.Quantity.Unit())
		}
	}
	return nil
}

// Taken holds the quantities of growers' parts of tickets that the sheets in force have taken.
type Taken map[takenPart]quantity.Amount

type takenPart struct {
	ticket int64
	grower string
}

// TakenBy adds up what sheets have taken, to be asked for many parts.
func TakenBy(sheets []Sheet) Taken {
	taken := Taken{}
	for _, s := range sheets {
		if !s.InForce() {
			continue
		}
		for _, l := range s.Lines {
			of := takenPart{l.Ticket, s.Grower}
			if before, some := taken[of]; some {
				taken[of] = before.Add(l.Quantity)
			} else {
				taken[of] = l.Quantity
			}
		}
	}
	return taken
}

// Of is the quantity taken of a grower's part of a ticket, nothing in a unit where none is.
func (t Taken) Of(ticket int64, grower string, unit quantity.Unit) quantity.Amount {
	if taken, some := t[takenPart{ticket, grower}]; some {
		return taken
	}
	return quantity.Zero(unit)
}

// SettledOf is the quantity of one grower's part of a ticket that the sheets in force have taken.
func SettledOf(sheets []Sheet, ticket int64, grower string, unit quantity.Unit) quantity.Amount {
	return TakenBy(sheets).Of(ticket, grower, unit)
}

// RestingOn are the numbers of the sheets in force that a ticket is on.
func RestingOn(sheets []Sheet, ticket int64) []int64 {
	var out []int64
	for _, s := range sheets {
		for _, l := range s.Lines {
			if s.InForce() && l.Ticket == ticket {
				out = append(out, s.Number)
				break
			}
		}
	}
	return out
}

// ID is the sheet's name among the records of the book.
func (s Sheet) ID() string { return fmt.Sprint(s.Number) }

// InOrder puts sheets in the order of their numbers.
func InOrder(sheets []Sheet) {
	slices.SortFunc(sheets, func(a, b Sheet) int { return cmp.Compare(a.Number, b.Number) })
}
