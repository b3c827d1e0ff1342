package daysheet

import (
	"cmp"
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/title"
)

// AccountFacts are the input of a grower's account.
type AccountFacts struct {
	GrowerID, Name, Address string
	// From and To bound the season by the days the tickets count on; no date is
	// no bound.
	From, To quantity.Date
	AsOf     quantity.Date
	// Tickets are all the grower has a part in, of the season and before, for a
	// contract may be older than the season.
	Tickets   []Ticket
	Contracts []Contract
	Example   bool
}

// Contract is the quantity a grower has agreed to deliver.
type Contract struct {
	Number, Commodity, Name string
	Quantity, Price         quantity.Amount
	Priced                  message.Text // the price, or what is fixed of one that is open
	Until                   quantity.Date
}

// Account is a grower's deliveries in a season, only the grower's own part of them.
type Account struct {
	AccountFacts
	Parts []AccountPart
	// Out are tickets of grain the grower took out again.
	Out   []Ticket
	Fills []Fill
}

// AccountPart is one commodity in one pair of units.
type AccountPart struct {
	Commodity, Name string
	Tickets         []Ticket // in force
	Struck          []Ticket // void or corrected since
	Sum             Sum      // of Tickets
	ByDisposition   []DispositionSum
	units           units
}

// Fill is the quantity delivered on a contract, by the grower's part of all tickets in force that
// name it, in any season.
type Fill struct {
	Contract
	Loads           int
	Delivered, Left quantity.Amount // Left is below zero when too much came
}

// MakeAccount adds a grower's season up.
func MakeAccount(f AccountFacts) Account {
	a := Account{AccountFacts: f}
	own := ownTickets(f)
	for _, t := range own {
		if t.Day.Between(f.From, f.To) {
			a.list(t)
		}
	}
	for i := range a.Parts {
		p := &a.Parts[i]
		p.Sum = newSum(p.units)
		for _, t := range p.Tickets {
			p.Sum.join(sumOfOne(t))
		}
		p.ByDisposition = byDisposition([]Part{{Name: p.Name, Tickets: p.Tickets, units: p.units}})
	}
	slices.SortStableFunc(a.Parts, func(x, y AccountPart) int { return cmp.Compare(x.Name, y.Name) })
	for _, c := range f.Contracts {
		a.Fills = append(a.Fills, fill(c, own))
	}
	return a
}

// ownTickets are the tickets by number, each as far as the grower owns it.
func ownTickets(f AccountFacts) []Ticket {
	var own []Ticket
	for _, t := range f.Tickets {
		if t.Number == 0 {
			continue
		}
		if mine, ok := t.PartOf(f.GrowerID); ok {
			own = append(own, mine)
		}
	}
	slices.SortFunc(own, func(a, b Ticket) int { return cmp.Compare(a.Number, b.Number) })
	return own
}

func (a *Account) list(t Ticket) {
	if t.Outbound {
		a.Out = append(a.Out, t)
		return
	}
	p := a.part(t)
	if t.InForce() {
		p.Tickets = append(p.Tickets, t)
	} else {
		p.Struck = append(p.Struck, t)
	}
}

func (a *Account) part(t Ticket) *AccountPart {
	u := t.units()
	for i := range a.Parts {
		if p := &a.Parts[i]; p.Commodity == t.Commodity && p.units == u {
			return p
		}
	}
	a.Parts = append(a.Parts, AccountPart{Commodity: t.Commodity, Name: t.Name, units: u})
	return &a.Parts[len(a.Parts)-1]
}

func fill(c Contract, own []Ticket) Fill {
	f := Fill{Contract: c, Delivered: quantity.Zero(c.Quantity.Unit())}
	for _, t := range own {
		if terms := t.Terms(); terms.Under == title.Contract && terms.No == c.Number && t.Commodity == c.Commodity && t.InForce() && !t.Outbound {
			if t.Quantity.Unit() == c.Quantity.Unit() {
				f.Delivered = f.Delivered.Add(t.Quantity)
			}
			f.Loads++
		}
	}
	f.Left = c.Quantity.Sub(f.Delivered)
	return f
}
