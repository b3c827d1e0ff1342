package daysheet

import (
	"strings"

	"tenthpoint/internal/quantity"
)

// Ticket is one load as the sheets read it. Days are business days; times are
// local, "14:05".
type Ticket struct {
	Number    int64 // nought for a load turned away
	Load      string
	Outbound  bool
	Day       quantity.Date // issued, or refused
	Time      string
	Delivered quantity.Date
	Commodity string // its id
	Name      string // its name
	GrowerID  string
	Grower    string
	Owners    []string // ids of those who share, in the order of the ticket
	Parts     []string // what each of them has: "1/3"
	Truck     string
	Bin       string
	Taken     string // "sold", "stored", "contract"; empty while undecided
	Contract  string
	Weigher   string
	Edition   string
	// EditionHash finds the edition's text in the book.
	EditionHash string
	Sample      string
	Kept        string // where the retained sample is
	KeepUntil   quantity.Date
	Refused     bool
	Ended       quantity.Date // voided or corrected on; zero while in force
	EndedBy     int64         // the correcting ticket; nought for a void
	EndedWho    string
	Corrects    int64
	CorrectsOn  quantity.Date // day of the corrected ticket
	Reissues    int64         // the void ticket whose grain this is
	ReissuesOn  quantity.Date // day of that ticket
	ReissuedBy  int64         // of a void ticket, the one in its place
	ReissuedOn  quantity.Date // the day that one counts in
	Reason      string
	Manual      []string
	Accepted    []string
	Flags       []string
	Figures     map[string]quantity.Amount
}

// units are what a ticket's weights and quantities are counted in. Tickets of
// unlike units are never added together.
type units struct{ weight, per quantity.Unit }

// figure is a line of the settlement, or nought in the unit given.
func (t Ticket) figure(id string, unit quantity.Unit) quantity.Amount {
	if a, ok := t.Figures[id]; ok && a.Unit() == unit {
		return a
	}
	return quantity.Zero(unit)
}

func (t Ticket) money(id string) quantity.Amount { return t.figure(id, quantity.Dollar) }

// units are the settlement's own: pounds and bushels unless it says otherwise.
func (t Ticket) units() units {
	u := units{quantity.Lb, quantity.Bushel}
	for _, id := range []string{"net", "net.converted", "settled"} {
		if a, ok := t.Figures[id]; ok {
			u.weight = a.Unit()
		}
	}
	if a, ok := t.Figures["quantity"]; ok {
		u.per = a.Unit()
	}
	return u
}

// net is the net weight in the unit the ticket was settled in.
func (t Ticket) net() quantity.Amount {
	if a, ok := t.Figures["net.converted"]; ok {
		return a
	}
	return t.figure("net", t.units().weight)
}

// moves is the weight that a ticket brings into the house: what it was settled
// for, or below nought what it carried away.
func (t Ticket) moves() quantity.Amount {
	if t.Outbound {
		return t.net().Neg()
	}
	return t.figure("settled", t.units().weight)
}

// quality is the weight taken off by discounts: what the ticket's other weight
// lines leave unexplained between net and settled.
func (t Ticket) quality() quantity.Amount {
	weight := t.units().weight
	if t.Outbound {
		return quantity.Zero(weight)
	}
	left := t.net().Sub(t.figure("dockage", weight)).Sub(t.figure("shrink.water", weight)).Sub(t.figure("handling", weight))
	return left.Sub(t.figure("settled", weight))
}

var half = quantity.Of("0.5", quantity.Plain)

// adjusted are the discounts and the premiums in money. A ticket keeps the size
// of each and, in its charges, their difference; sum and difference give both.
func (t Ticket) adjusted() (discounts, premiums quantity.Amount) {
	sum := quantity.Zero(quantity.Dollar)
	for id, a := range t.Figures {
		if strings.HasPrefix(id, "discount.") && a.Unit() == quantity.Dollar {
			sum = sum.Add(a)
		}
	}
	difference := t.money("charges").Sub(t.money("drying"))
	return sum.Add(difference).Mul(half), sum.Sub(difference).Mul(half)
}

// priced reports whether the ticket has its price.
func (t Ticket) priced() bool { _, ok := t.Figures["price"]; return ok }

// unpriced stands where what is payable would, on a ticket without a price. It is
// in no digest.
func (t Ticket) unpriced() string {
	if t.Taken == "stored" {
		return "no price: stored"
	}
	return "price not set"
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
