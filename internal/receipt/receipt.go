// Package receipt has warehouse receipts: papers by which a house owes a depositor grain that lies in
// open storage.
//
// Receipts are of one series. Each number is a receipt in force, one that ended, or a blank left on
// purpose. Grain on a receipt is not sold and gets no second receipt until the first is surrendered;
// an error is mended by a cancelled receipt and another in its place, never by a changed one; a lost
// one is replaced by one that bears the old number and day.
package receipt

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/position"
	"tenthpoint/internal/quantity"
)

// Receipt is one number of the series, whole, as the journal keeps it.
type Receipt struct {
	Number    int64         `json:"number,string"`
	Day       quantity.Date `json:"day"`
	By        string        `json:"by"`
	Grower    string        `json:"grower,omitempty"`
	Name      string        `json:"name,omitempty"`
	Commodity string        `json:"commodity,omitempty"`
	// Negotiable tells that the grain is owed to whoever holds the paper.
	Negotiable bool   `json:"negotiable,omitempty"`
	Lines      []Line `json:"lines,omitempty"`
	Grade      string `json:"grade,omitempty"` // as the parties agreed on it
	// Replaces is the receipt in whose place it is, and OldDay its day.
	Replaces int64         `json:"replaces,string,omitempty"`
	OldDay   quantity.Date `json:"old_day,omitzero"`
	// Blank is why the number was left blank on purpose; it is no receipt then.
	Blank string `json:"blank,omitempty"`
	Ended *Ended `json:"ended,omitempty"`
}

// Line is a depositor's part of a ticket, or a part of it, on a receipt.
type Line struct {
	Ticket   int64           `json:"ticket,string"`
	Quantity quantity.Amount `json:"quantity"` // in the unit of the settlement
	Weight   quantity.Amount `json:"weight"`   // as settled
	// Held is the line of the position that the grain stood in before, and stands in again after.
	Held position.Line `json:"held"`
}

// Ended is the end of a receipt.
type Ended struct {
	How    How           `json:"how"`
	Day    quantity.Date `json:"day"`
	By     string        `json:"by"`
	Reason string        `json:"reason,omitempty"`
}

// How a receipt ends.
type How string

const (
	Surrendered How = "surrendered" // handed in: the grain is in open storage again
	Cancelled   How = "cancelled"   // an error; another may be in its place
	Lost        How = "lost"        // replaced by another, which bears its number
)

var howWords = map[How]message.Text{Surrendered: message.Words("surrendered"), Cancelled: message.Words("cancelled"), Lost: message.Words("lost")}

// Said is its name on papers.
func (h How) Said() message.Text { return howWords[h] }

// Kind names the fact in the journal.
func (Receipt) Kind() string { return "house.receipt" }

// ID is the receipt's name among the records of the book.
func (r Receipt) ID() string { return fmt.Sprintf("%08d", r.Number) }

// InForce reports whether grain is owed on it.
func (r Receipt) InForce() bool { return r.Blank == "" && r.Ended == nil }

// Class is the line of the position that its grain stands in.
func (r Receipt) Class() position.Line {
	if r.Negotiable {
		return position.Negotiable
	}
	return position.NonNegotiable
}

// Standing is the state of the number.
func (r Receipt) Standing() message.Text {
	switch {
	case r.Blank != "":
		return message.New("left blank on purpose")
	case r.Ended != nil:
		return r.Ended.How.Said()
	}
	return message.New("in force")
}

// Quantity is all of it, in the unit of the settlement.
func (r Receipt) Quantity() quantity.Amount {
	return sum(r.Lines, func(l Line) quantity.Amount { return l.Quantity })
}

// Weight is all of it, as settled.
func (r Receipt) Weight() quantity.Amount {
	return sum(r.Lines, func(l Line) quantity.Amount { return l.Weight })
}

func sum(lines []Line, of func(Line) quantity.Amount) (total quantity.Amount) {
	for i, l := range lines {
		if i == 0 {
			total = of(l)
			continue
		}
		total = total.Add(of(l))
	}
	return total
}

// Check returns what is wrong with the receipt, or nil.
func (r Receipt) Check() error {
	switch {
	case r.Number < 1 || r.Day.IsZero() || r.By == "":
		return message.Invalid.Errorf("a warehouse receipt has a number, a day and a person; one of them is empty")
	case r.Blank != "" && len(r.Lines) > 0:
		return message.Invalid.Errorf("number %d is left blank, and no grain is on it", r.Number)
	case r.Blank != "":
		return nil
	case r.Grower == "" || len(r.Lines) == 0:
		return message.Invalid.Errorf("a warehouse receipt is of a depositor's grain under at least one ticket")
	}
	for _, l := range r.Lines {
		if l.Quantity.Sign() <= 0 || l.Quantity.Unit() != r.Lines[0].Quantity.Unit() || l.Weight.Unit() != r.Lines[0].Weight.Unit() {
			return message.Invalid.Errorf("%s of ticket %d cannot stand on warehouse receipt %d", l.Quantity, l.Ticket, r.Number)
		}
	}
	return nil
}

// End is the receipt with its end, or why it cannot end so.
func (r Receipt) End(e Ended) (Receipt, error) {
	switch {
	case r.Blank != "":
		return r, message.Refused.Errorf("number %d was left blank on purpose, and is no warehouse receipt", r.Number)
	case r.Ended != nil:
		return r, message.Refused.Errorf("warehouse receipt %d was %s on %s", r.Number, r.Ended.How.Said(), r.Ended.Day)
	case e.Day.Before(r.Day):
		return r, message.Refused.Errorf("warehouse receipt %d is of %s, and does not end on %s", r.Number, r.Day, e.Day)
	case e.How != Surrendered && strings.TrimSpace(e.Reason) == "":
		return r, message.Incomplete.Errorf("a warehouse receipt is cancelled or replaced for a reason; write it")
	}
	r.Ended = &e
	return r, nil
}

// On are the receipts in force that a grower's part of a ticket is on, by number.
func On(all []Receipt, ticket int64, grower string) []Receipt {
	var out []Receipt
	for _, r := range all {
		if r.InForce() && (grower == "" || r.Grower == grower) && slices.ContainsFunc(r.Lines, func(l Line) bool { return l.Ticket == ticket }) {
			out = append(out, r)
		}
	}
	InOrder(out)
	return out
}

// Held is the quantity of a grower's part of a ticket on receipts in force, and its weight.
func Held(all []Receipt, ticket int64, grower string, unit, weight quantity.Unit) (q, w quantity.Amount) {
	q, w = quantity.Zero(unit), quantity.Zero(weight)
	for _, r := range On(all, ticket, grower) {
		for _, l := range r.Lines {
			if l.Ticket == ticket && l.Quantity.Unit() == unit {
				q, w = q.Add(l.Quantity), w.Add(l.Weight)
			}
		}
	}
	return q, w
}

// InOrder puts receipts in the order of their numbers.
func InOrder(all []Receipt) {
	slices.SortFunc(all, func(a, b Receipt) int { return cmp.Compare(a.Number, b.Number) })
}
