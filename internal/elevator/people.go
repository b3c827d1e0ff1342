package elevator

import (
	"slices"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Grower is a person or firm that delivers grain.
type Grower struct {
	ID      string `json:"id"`
	Name    string `json:"name"`
	Address string `json:"address,omitempty"`
	Phone   string `json:"phone,omitempty"`
	// Shares split this grower's loads unless the ticket says otherwise; none means the grower owns
	// all of it.
	Shares []Share `json:"shares,omitempty"`
	// Farms are the splits of single farms and fields, which go before Shares.
	Farms []Farm `json:"farms,omitempty"`
	// Former are names this card had before, Into the card that has taken its place. Old papers keep
	// the name they print, and the grower is found by all of them.
	Former []string  `json:"former,omitempty"`
	Into   *Takeover `json:"into,omitempty"`
}

// Share is Parts of Of for the grower named.
type Share struct {
	GrowerID string          `json:"grower"`
	Parts    quantity.Amount `json:"parts"`
	Of       quantity.Amount `json:"of"`
	// Drying is the part of the drying charge, where that is not the part of the grain.
	Drying *quantity.Portion `json:"drying,omitempty"`
}

// Kind names the fact in the journal.
func (Grower) Kind() string { return "house.grower" }

// Check returns what is wrong with the grower, or nil.
func (g Grower) Check() error {
	if strings.TrimSpace(g.ID) == "" || strings.TrimSpace(g.Name) == "" {
		return message.Invalid.Errorf("a grower has a short code and a name; got %q and %q", g.ID, g.Name)
	}
	if err := checkShares(g.Name, g.Shares); err != nil {
		return err
	}
	for i, f := range g.Farms {
		if err := f.check(); err != nil {
			return err
		}
		if slices.ContainsFunc(g.Farms[:i], f.isSame) {
			return message.Invalid.Errorf("the farm %v has two splits of the same grain and year; keep one", f.Name)
		}
	}
	return nil
}

// checkShares returns what is wrong with the shares of a grower or farm, or nil.
func checkShares(of string, shares []Share) error {
	if len(shares) == 0 {
		return nil
	}
	total, drying, apart := quantity.Zero(quantity.Plain), quantity.Zero(quantity.Plain), false
	for _, s := range shares {
		if s.Parts.Sign() <= 0 || s.Of.Sign() <= 0 {
			return message.Invalid.Errorf("the share of %s in the loads of %s is %s of %s; every share is above zero", s.GrowerID, of, s.Parts, s.Of)
		}
		total = total.Add(s.Parts.Div(s.Of))
		if d := s.Drying; d != nil {
			if !d.IsPart() {
				return message.Invalid.Errorf("the part of %s in the drying of %s is %s of %s; it is not below zero", s.GrowerID, of, d.Parts, d.Of)
			}
			drying, apart = drying.Add(d.Fraction()), true
		}
	}
	whole := quantity.Int(1, quantity.Plain)
	if !total.Equal(whole) {
		return message.Invalid.Errorf("the shares of %s add to %s %%, not to 100 %%", of, total.Mul(quantity.Int(100, quantity.Plain)).Figure())
	}
	if apart && !drying.Equal(whole) {
		return message.Invalid.Errorf("the parts in the drying of %s add to %s %%, not to 100 %%", of, drying.Mul(quantity.Int(100, quantity.Plain)).Figure())
	}
	return nil
}

// Truck is a truck that comes again, with its stored tare if it has one.
type Truck struct {
	ID      string           `json:"id"`
	Plate   string           `json:"plate,omitempty"`
	Trailer string           `json:"trailer,omitempty"`
	Grower  string           `json:"grower,omitempty"` // id of the usual grower
	Tare    *quantity.Amount `json:"tare,omitempty"`
	Taken   quantity.Date    `json:"taken"` // when the tare was weighed
}

// Kind names the fact in the journal.
func (Truck) Kind() string { return "house.truck" }

// Check returns what is wrong with the truck, or nil.
func (t Truck) Check() error {
	switch {
	case strings.TrimSpace(t.ID) == "":
		return message.Invalid.Errorf("a truck has a number or a plate; it is empty")
	case t.Tare != nil && (!t.Tare.Unit().IsMass() || t.Tare.Sign() <= 0):
		return message.Invalid.Errorf("the stored tare of truck %s is %s; it is a weight above zero", t.ID, t.Tare)
	case t.Tare != nil && t.Taken.IsZero():
		return message.Invalid.Errorf("the stored tare of truck %s has no day; say when it was weighed", t.ID)
	}
	return nil
}

// Role is the permission level of a person at the desk.
type Role string

// A clerk weighs and issues, a tester works the bench, a manager may also
// void, correct, accept beyond a limit, close the day and change the set-up.
const (
	Clerk   Role = "clerk"
	Tester  Role = "tester"
	Manager Role = "manager"
)

// Person is one who works at the desk. Name is the full name that a ticket
// prints as its weigher.
type Person struct {
	Name string `json:"name"`
	Role Role   `json:"role"`
	Gone bool   `json:"gone,omitempty"` // no longer here; kept for old tickets
}

// Kind names the fact in the journal.
func (Person) Kind() string { return "house.person" }

// Check returns what is wrong with the person, or nil.
func (p Person) Check() error {
	if strings.TrimSpace(p.Name) == "" {
		return message.Invalid.Errorf("a person at the desk has a full name; it is empty")
	}
	switch p.Role {
	case Clerk, Tester, Manager:
		return nil
	}
	return message.Invalid.Errorf("%s is %q; a person is clerk, tester or manager", p.Name, p.Role)
}
