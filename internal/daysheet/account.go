package daysheet

import (
	"cmp"
	"slices"

	"tenthpoint/internal/contract"
	"tenthpoint/internal/quantity"
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
	Tickets []Ticket
	// Contracts are the grower's, as all tickets in force fill them, in any season.
	Contracts []contract.Filled
	Example   bool
}

// Account is a grower's deliveries in a season, only the grower's own part of them.
type Account struct {
	AccountFacts
	Parts []AccountPart
	// Out are tickets of grain the grower took out again.
	Out []Ticket
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
