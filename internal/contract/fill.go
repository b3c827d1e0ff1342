package contract

import (
	"cmp"
	"slices"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/title"
)

// Order is which contract takes what another one has no room for, or what named none.
type Order string

const (
	ByEnd    Order = "until"  // the one that ends first
	ByNumber Order = "number" // the one written down first
	ByPrice  Order = "price"  // the dearest, open prices last
)

// Orders are all of them.
func Orders() []Order { return []Order{ByEnd, ByNumber, ByPrice} }

// OrderOf is the order that a house chose; the one that ends first, where it chose none.
func OrderOf(house elevator.Profile) Order { return cmp.Or(Order(house.FillOrder), ByEnd) }

// NumberIn is the contract that grain held under some terms is delivered on; empty under others.
func NumberIn(t title.Terms) string {
	if t.Under == title.Contract || t.Under == title.DelayedPrice {
		return t.No
	}
	return ""
}

// Part is an owner's part of a ticket in force.
type Part struct {
	Ticket    int64
	Owner     string
	Commodity string
	Day       quantity.Date // of delivery
	Quantity  quantity.Amount
	// Contract is the number the ticket names; the empty one is of grain that is not on contract.
	Contract string
}

// Applied is the quantity that one part delivers on one contract. Contract is empty for spot: no contract had room.
type Applied struct {
	Part
	Contract string
	Quantity quantity.Amount
	// Why tells of grain that went elsewhere than its ticket says.
	Why message.Text
}

// Filled is the outcome for one contract.
type Filled struct {
	elevator.ContractTerms
	Applied   []Applied
	Delivered quantity.Amount
	// Left is the quantity still to come, never below zero; Short the shortfall beyond the tolerance.
	Left, Short quantity.Amount
	// NoRoom came for it when it was full, and no other contract took it.
	NoRoom quantity.Amount
}

// Over is the quantity delivered beyond the quantity agreed, within the tolerance or not.
func (f Filled) Over() quantity.Amount {
	return quantity.Max(f.Delivered.Sub(f.Quantity), quantity.Zero(f.Quantity.Unit())).Add(f.NoRoom)
}

// Loads is the number of tickets delivered on a contract.
func (f Filled) Loads() int {
	tickets := map[int64]bool{}
	for _, a := range f.Applied {
		tickets[a.Ticket] = true
	}
	return len(tickets)
}

// Filling is the outcome for all.
type Filling struct {
	Contracts []Filled
	Spot      []Applied
}

// Fill applies parts to contracts. Parts that name no contract are left out; parts and contracts may
// come in any order, the outcome is the same.
func Fill(contracts []elevator.ContractTerms, parts []Part, order Order) Filling {
	f := filling{most: map[string]quantity.Amount{}}
	f.contracts = slices.Clone(contracts)
	slices.SortFunc(f.contracts, func(a, b elevator.ContractTerms) int { return compare(order, a, b) })
	f.out.Contracts = make([]Filled, len(f.contracts))
	for i, c := range f.contracts {
		none := quantity.Zero(c.Quantity.Unit())
		f.out.Contracts[i] = Filled{ContractTerms: c, Delivered: none, NoRoom: none}
		f.most[c.Number] = most(c)
	}
	parts = slices.Clone(parts)
	slices.SortStableFunc(parts, func(a, b Part) int {
		return cmp.Or(cmp.Compare(a.Ticket, b.Ticket), cmp.Compare(a.Owner, b.Owner))
	})
	for _, p := range parts {
		if p.Contract != "" {
			f.apply(p)
		}
	}
	for i := range f.out.Contracts {
		c := &f.out.Contracts[i]
		c.Left = quantity.Max(c.Quantity.Sub(c.Delivered), quantity.Zero(c.Quantity.Unit()))
		c.Short = quantity.Max(least(c.ContractTerms).Sub(c.Delivered), quantity.Zero(c.Quantity.Unit()))
	}
	return f.out
}

func compare(order Order, a, b elevator.ContractTerms) int {
	first := 0
	switch order {
	case ByEnd:
		first = a.Until.Cmp(b.Until)
	case ByPrice:
		first = dearest(a, b)
	}
	return cmp.Or(first, cmp.Compare(a.Number, b.Number))
}

// dearest puts the higher price first, and open prices last. Prices in two units are not compared.
func dearest(a, b elevator.ContractTerms) int {
	switch {
	case a.HasPrice() && b.HasPrice() && a.Price.Unit() == b.Price.Unit():
		return b.Price.Cmp(a.Price)
	case a.HasPrice() && !b.HasPrice():
		return -1
	case b.HasPrice() && !a.HasPrice():
		return 1
	}
	return 0
}

// filling is the work under way.
type filling struct {
	contracts []elevator.ContractTerms
	most      map[string]quantity.Amount
	out       Filling
}

// most is the largest quantity a contract takes, and least the smallest that must come.
func most(c elevator.ContractTerms) quantity.Amount  { return c.Quantity.Add(tolerance(c)) }
func least(c elevator.ContractTerms) quantity.Amount { return c.Quantity.Sub(tolerance(c)) }

func tolerance(c elevator.ContractTerms) quantity.Amount {
	if c.Tolerance == nil {
		return quantity.Zero(c.Quantity.Unit())
	}
	return c.Quantity.Mul(c.Tolerance.Div(quantity.Int(100, quantity.Percent)))
}

// apply puts a part onto the contract its ticket names and what has no room there onto the next.
func (f *filling) apply(p Part) {
	left := p.Quantity
	named := f.at(p.Contract)
	why := message.Text{}
	switch {
	case named < 0:
		why = message.New("contract %v is not in the list", p.Contract)
	case !f.takes(named, p):
		why = message.New("contract %v is not one of this owner for this grain", p.Contract)
	default:
		left = f.put(named, p, left, message.Text{})
		why = message.New("more than contract %v takes", p.Contract)
	}
	for i := range f.contracts {
		if left.Sign() <= 0 {
			return
		}
		if i != named && f.takes(i, p) && p.Day.Between(f.contracts[i].From, f.contracts[i].Until) {
			left = f.put(i, p, left, why)
		}
	}
	if left.Sign() > 0 {
		f.out.Spot = append(f.out.Spot, Applied{Part: p, Quantity: left, Why: why})
		if named >= 0 && f.takes(named, p) {
			full := &f.out.Contracts[named]
			full.NoRoom = full.NoRoom.Add(left)
		}
	}
}

func (f *filling) at(number string) int {
	return slices.IndexFunc(f.contracts, func(c elevator.ContractTerms) bool { return c.Number == number })
}

// takes reports whether a part can be delivered on a contract at all.
func (f *filling) takes(i int, p Part) bool {
	c := f.contracts[i]
	end, closed := c.Closed()
	return (!closed || !p.Day.After(end.Day)) && c.Commodity == p.Commodity && c.IsSeller(p.Owner) && c.Quantity.Unit() == p.Quantity.Unit()
}

// put delivers as much of what is left as the contract has room for.
func (f *filling) put(i int, p Part, left quantity.Amount, why message.Text) quantity.Amount {
	c := &f.out.Contracts[i]
	room := f.most[c.Number].Sub(c.Delivered)
	if room.Sign() <= 0 {
		return left
	}
	goes := quantity.Min(room, left)
	c.Applied = append(c.Applied, Applied{Part: p, Contract: c.Number, Quantity: goes, Why: why})
	c.Delivered = c.Delivered.Add(goes)
	return left.Sub(goes)
}
