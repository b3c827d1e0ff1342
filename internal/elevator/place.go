package elevator

import (
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Bin is a receiving pit or a storage bin.
type Bin struct {
	ID        string `json:"id"`
	Name      string `json:"name"`
	Commodity string `json:"commodity,omitempty"`
}

// Kind names the fact in the journal.
func (Bin) Kind() string { return "house.bin" }

// Check returns what is wrong with the bin, or nil.
func (b Bin) Check() error {
	if strings.TrimSpace(b.ID) == "" {
		return message.Invalid.Errorf("a pit or bin has a short name; it is empty")
	}
	return nil
}

// ContractTerms are the terms of a grower's delivery contract.
type ContractTerms struct {
	Number    string          `json:"number"`
	Grower    string          `json:"grower"`
	Commodity string          `json:"commodity"`
	Quantity  quantity.Amount `json:"quantity"` // bu, cwt or t
	Price     quantity.Amount `json:"price"`
	Until     quantity.Date   `json:"until"`
}

// Kind names the fact in the journal.
func (ContractTerms) Kind() string { return "house.contract" }

// Check returns what is wrong with the contract, or nil.
func (c ContractTerms) Check() error {
	unit := c.Quantity.Unit()
	switch {
	case strings.TrimSpace(c.Number) == "" || c.Grower == "" || c.Commodity == "":
		return message.Invalid.Errorf("a contract has a number, a grower and a commodity; one of them is empty")
	case unit != quantity.Bushel && unit != quantity.Cwt && unit != quantity.Tonne || c.Quantity.Sign() <= 0:
		return message.Invalid.Errorf("contract %s is for %s; it is for bushels, hundredweight or tonnes above zero", c.Number, c.Quantity)
	case c.Price.Unit() != quantity.Dollar.Per(unit) || c.Price.Sign() <= 0:
		return message.Invalid.Errorf("the price of contract %s is %s; it is money above zero per %s", c.Number, c.Price, unit)
	}
	return nil
}
