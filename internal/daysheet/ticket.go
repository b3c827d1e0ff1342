package daysheet

import (
	"slices"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/title"
)

// Ticket is one load as the sheets read it. Days are business days; times are
// local, "14:05".
type Ticket struct {
	Number      int64 // zero for a load turned away
	Load        string
	Outbound    bool
	Day         quantity.Date // issued, or refused
	Time        string
	Delivered   quantity.Date
	Commodity   string // its id
	Name        string // its name
	GrowerID    string
	Grower      string
	Owners      []string // ids of those who share, in the order of the ticket
	Parts       []string // what each of them has: "1/3"
	Truck       string
	Bin         string
	Disposition string // "sold", "stored", "contract"; empty while undecided
	Contract    string
	// Titles are whose grain it is and under what, owner by owner; none where Taken and
	// Contract say it of all of it.
	Titles  []title.Terms
	Weigher string
	Edition string
	// EditionHash finds the edition's text in the book.
	EditionHash string
	Sample      string
	Kept        string // where the retained sample is
	// Grade is as an inspector gave it, ProteinBasis the moisture that the protein is stated at; both
	// are known in the register of tickets alone.
	Grade        string
	ProteinBasis message.Text
	KeepUntil    quantity.Date
	Refused      bool
	Ended        quantity.Date // voided or corrected on; zero while in force
	EndedBy      int64         // the correcting ticket; zero for a void
	EndedWho     string
	Corrects     int64
	CorrectsOn   quantity.Date // day of the corrected ticket
	Reissues     int64         // the void ticket it reissues
	ReissuesOn   quantity.Date // day of that ticket
	ReissuedBy   int64         // of a void ticket, the one in its place
	ReissuedOn   quantity.Date // the day that one counts in
	Reason       string
	Manual       []message.Text
	Accepted     []message.Text
	Answered     []message.Text // questions of the elevator's guards, with who answered them and why
	Flags        []load.Flag
	// Figures are the lines recorded with the load, which the digest of the day uses. Everything
	// else reads their summary.
	Figures map[string]quantity.Amount
	settle.Summary
}

// units are the units of a ticket's weights and quantities. Tickets in different units are never
// added together.
type units struct{ weight, per quantity.Unit }

// units are the settlement's own.
func (t Ticket) units() units { return units{t.Net.Unit(), t.Quantity.Unit()} }

// moves returns the weight a ticket adds to the stock: the settled weight, or the negative net of a
// load that left.
func (t Ticket) moves() quantity.Amount {
	if t.Outbound {
		return t.Net.Neg()
	}
	return t.Settled
}

// unpriced is printed instead of the payable of a ticket without a price. It is in no digest.
func (t Ticket) unpriced() message.Text {
	if t.isApart() {
		return message.New("by owner")
	}
	return t.Terms().Under.Unpriced()
}

// Terms are whose grain it is and under what, where all owners have the same.
func (t Ticket) Terms() title.Terms {
	if len(t.Titles) > 0 {
		return t.Titles[0]
	}
	return title.Terms{Under: title.Under(t.Disposition), No: t.Contract}
}

// isApart reports whether owners have terms of their own.
func (t Ticket) isApart() bool {
	return slices.ContainsFunc(t.Titles, func(one title.Terms) bool { return one != t.Titles[0] })
}

// byTitle is the ticket as far as each owner has it, where owners have terms of
// their own; else the ticket.
func (t Ticket) byTitle() []Ticket {
	if !t.isApart() {
		return []Ticket{t}
	}
	var out []Ticket
	for i := range t.Titles {
		part := t
		own, err := t.Summary.Of(i + 1)
		if err != nil {
			return []Ticket{t}
		}
		part.Summary, part.Titles = own, t.Titles[i:i+1]
		out = append(out, part)
	}
	return out
}

// asOf is the ticket as it was known in the evening of a day: what happened to
// it later is left out.
func (t Ticket) asOf(day quantity.Date) Ticket {
	if t.Ended.After(day) {
		t.Ended, t.EndedBy, t.EndedWho, t.Reason = quantity.Date{}, 0, "", ""
	}
	if t.ReissuedOn.After(day) {
		t.ReissuedBy, t.ReissuedOn = 0, quantity.Date{}
	}
	return t
}

// InForce reports whether the ticket is neither void nor corrected.
func (t Ticket) InForce() bool { return t.Number > 0 && t.Ended.IsZero() }

// endedSameDay reports whether the ticket was voided or corrected on the day it
// was issued, so that it never counted.
func (t Ticket) endedSameDay() bool { return !t.Ended.IsZero() && t.Ended == t.Day }
