package elevator

import (
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// ContractTerms are a contract with a grower, whole: what was agreed, and what happened to
// it since. Each change is a fact of its own, which writes the record anew.
type ContractTerms struct {
	Number    string          `json:"number"`
	Grower    string          `json:"grower"`
	Commodity string          `json:"commodity"`
	Quantity  quantity.Amount `json:"quantity"` // bu, cwt or t
	// Price is the price of all of it; the zero amount where the form leaves it open.
	Price quantity.Amount `json:"price"`
	Until quantity.Date   `json:"until"`

	// Form is the type of contract; empty is a forward sale at a price.
	Form ContractForm  `json:"form,omitempty"`
	From quantity.Date `json:"from,omitzero"` // first day of delivery
	// Tolerance is the percent of the quantity that may come more, or stay away.
	Tolerance *quantity.Amount `json:"tolerance,omitempty"`
	Quality   string           `json:"quality,omitempty"` // the base it is priced on, in the parties' words
	Month     string           `json:"month,omitempty"`   // the futures month, in the market's words
	Basis     *quantity.Amount `json:"basis,omitempty"`
	Futures   *quantity.Amount `json:"futures,omitempty"`
	// Sellers are all who sell on it, with their shares; nobody is the grower alone.
	Sellers []Share          `json:"sellers,omitempty"`
	Parts   []PricedPart     `json:"parts,omitempty"`
	Changes []ContractChange `json:"changes,omitempty"`
}

// PricedPart is a part of a contract that got its price later.
type PricedPart struct {
	Day      quantity.Date    `json:"day"`
	Quantity quantity.Amount  `json:"quantity"`
	Futures  *quantity.Amount `json:"futures,omitempty"`
	Basis    *quantity.Amount `json:"basis,omitempty"`
	Price    quantity.Amount  `json:"price"`
	By       string           `json:"by"`
}

// ContractChange is a change of a contract after it was made.
type ContractChange struct {
	What  ChangeOf         `json:"what"`
	Day   quantity.Date    `json:"day"`
	By    string           `json:"by"`
	Until quantity.Date    `json:"until,omitzero"`  // the last day before, of one extended or rolled
	Month string           `json:"month,omitempty"` // the futures month before, of one rolled
	Money *quantity.Amount `json:"money,omitempty"` // $/bu of spread of one rolled; $ of one bought out
	Note  string           `json:"note,omitempty"`
}

// ChangeOf is a kind of change.
type ChangeOf string

// A contract is signed, extended, rolled to another futures month, bought out where it was not
// delivered, or cancelled.
const (
	Signed    ChangeOf = "signed"
	Extended  ChangeOf = "extended"
	Rolled    ChangeOf = "rolled"
	BoughtOut ChangeOf = "bought-out"
	Cancelled ChangeOf = "cancelled"
)

// Kind names the fact in the journal.
func (ContractTerms) Kind() string { return "house.contract" }

// Closed is the change that ended the contract; false while it is open.
func (c ContractTerms) Closed() (ContractChange, bool) {
	for _, change := range c.Changes {
		if change.What == BoughtOut || change.What == Cancelled {
			return change, true
		}
	}
	return ContractChange{}, false
}

// IsSigned reports whether both parties have signed.
func (c ContractTerms) IsSigned() bool {
	for _, change := range c.Changes {
		if change.What == Signed {
			return true
		}
	}
	return false
}

// SellerIDs are the growers whose grain may be delivered on the contract.
func (c ContractTerms) SellerIDs() []string {
	if len(c.Sellers) == 0 {
		return []string{c.Grower}
	}
	ids := make([]string, len(c.Sellers))
	for i, s := range c.Sellers {
		ids[i] = s.GrowerID
	}
	return ids
}

// IsSeller reports whether grain of a grower may be delivered on the contract.
func (c ContractTerms) IsSeller(grower string) bool {
	if len(c.Sellers) == 0 {
		return c.Grower == grower
	}
	for _, s := range c.Sellers {
		if s.GrowerID == grower {
			return true
		}
	}
	return false
}

// HasPrice reports whether all of the contract has one price.
func (c ContractTerms) HasPrice() bool { return c.Price.Sign() > 0 }

// PriceText is the price as lists say it; of an open one, what is fixed of it.
func (c ContractTerms) PriceText() message.Text {
	switch {
	case c.HasPrice() && c.Form == MinimumPrice:
		return message.New("at least %s", c.Price)
	case c.HasPrice():
		return message.New("%s", c.Price)
	case c.Basis != nil:
		return message.New("basis %s", *c.Basis)
	case c.Futures != nil:
		return message.New("futures %s", *c.Futures)
	}
	return message.New("price open")
}

// Check returns what is wrong with the contract, or nil.
func (c ContractTerms) Check() error {
	unit := c.Quantity.Unit()
	switch {
	case strings.TrimSpace(c.Number) == "" || c.Grower == "" || c.Commodity == "":
		return message.Invalid.Errorf("a contract has a number, a grower and a commodity; one of them is empty")
	case unit != quantity.Bushel && unit != quantity.Cwt && unit != quantity.Tonne || c.Quantity.Sign() <= 0:
		return message.Invalid.Errorf("contract %s is for %s; it is for bushels, hundredweight or tonnes above zero", c.Number, c.Quantity)
	case !c.Form.IsKnown():
		return message.Invalid.Errorf("contract %s is a %q, which is no sort of contract", c.Number, string(c.Form))
	case !c.From.IsZero() && !c.Until.IsZero() && c.Until.Before(c.From):
		return message.Invalid.Errorf("contract %s is delivered from %s to %s, which ends before it begins", c.Number, c.From, c.Until)
	case c.Tolerance != nil && (c.Tolerance.Unit() != quantity.Percent || c.Tolerance.Sign() < 0 || c.Tolerance.More(mostTolerance)):
		return message.Invalid.Errorf("the tolerance of contract %s is %s; it is a percent from 0 to %s", c.Number, c.Tolerance, mostTolerance)
	}
	if len(c.Sellers) > 0 {
		if err := (Grower{ID: c.Number, Name: c.Number, Shares: c.Sellers}).Check(); err != nil {
			return err
		}
	}
	return c.checkPrices(quantity.Dollar.Per(unit))
}

var mostTolerance = quantity.Int(20, quantity.Percent)

// checkPrices holds the money of a contract against its form.
func (c ContractTerms) checkPrices(per quantity.Unit) error {
	needs := contractForms[c.Form]
	for _, one := range []struct {
		is    bool
		money *quantity.Amount
		said  message.Text
	}{
		{needs.basis, c.Basis, message.Words("basis")}, {needs.futures, c.Futures, message.Words("futures price")},
	} {
		switch {
		case one.is && one.money == nil:
			return message.Invalid.Errorf("contract %s has no %s, which a contract of its form fixes", c.Number, one.said)
		case !one.is && one.money != nil:
			return message.Invalid.Errorf("contract %s has a %s, which a contract of its form does not fix", c.Number, one.said)
		case one.money != nil && one.money.Unit() != per:
			return message.Invalid.Errorf("the %s of contract %s is %s; it is money per %s", one.said, c.Number, *one.money, c.Quantity.Unit())
		}
	}
	switch {
	case needs.price && (c.Price.Unit() != per || c.Price.Sign() <= 0):
		return message.Invalid.Errorf("the price of contract %s is %s; it is money above zero per %s", c.Number, c.Price, c.Quantity.Unit())
	case !needs.price && !c.Price.IsZero():
		return message.Invalid.Errorf("contract %s has a price, which a contract of its form leaves open", c.Number)
	}
	return nil
}
