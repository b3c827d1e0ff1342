package contracting

import (
	"slices"

	"tenthpoint/internal/contract"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/entry/typed"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Act is a change of a contract. The words are those of the terminal's commands.
type Act string

const (
	Sign   Act = "sign"
	Price  Act = "price"
	Extend Act = "extend"
	Roll   Act = "roll"
	BuyOut Act = "buy-out"
	Cancel Act = "cancel"
)

// Around is the contract that an act is about, and today.
type Around struct {
	Contract elevator.ContractTerms
	Today    quantity.Date
}

// Change is an act that was read, to be done on the contract as it then stands, with what is delivered
// on it, in the name of whoever acts.
type Change func(c contract.Filled, by string) (elevator.ContractTerms, error)

// acting is an act while its fields are read.
type acting struct {
	Around
	quantity *quantity.Amount // nil for all that has no price
	money    quantity.Amount
	until    quantity.Date
	day      quantity.Date
	month    string
	why      string
}

type field = typed.Reader[*acting]

var (
	part   = typed.As(typed.Field{ID: "quantity", Label: message.New("Quantity"), Hint: message.New("without it, all that has no price")}, readPart)
	at     = typed.As(typed.Field{ID: "at", Label: message.New("At"), Form: typed.Figure, Required: true, Hint: message.New("futures price of a basis contract, basis of one hedged to arrive")}, readMoney("At"))
	spread = typed.As(typed.Field{ID: "spread", Label: message.New("Spread"), Form: typed.Figure, Required: true, Hint: message.New("may be below zero")}, readMoney("Spread"))
	market = typed.As(typed.Field{ID: "market", Label: message.New("Market price"), Form: typed.Figure, Required: true, Hint: message.New("of the day")}, readMarket)
	until  = typed.As(typed.Field{ID: "until", Label: message.New("Until"), Form: typed.OneDate, Hint: message.New("last day of delivery")}, readUntil)
	month  = typed.As(typed.Field{ID: "month", Label: message.New("Futures month"), Required: true},
		func(a *acting, text string) error { a.month = text; return nil })
	why = typed.As(typed.Field{ID: "why", Label: message.New("Reason")},
		func(a *acting, text string) error { a.why = text; return nil })
	agreed = typed.As(typed.Field{ID: "day", Label: message.New("Day"), Form: typed.OneDate, Hint: message.New("it was agreed; without it, today")}, readAgreed)
)

// acts are the fields of each act, and what it does; the day follows in all of them.
var acts = map[Act]struct {
	fields []field
	do     func(a *acting, c contract.Filled, by string) (elevator.ContractTerms, error)
}{
	Sign: {nil, func(a *acting, c contract.Filled, by string) (elevator.ContractTerms, error) {
		return contract.Sign(c.ContractTerms, a.day, by)
	}},
	Price: {[]field{part, at}, price},
	Extend: {[]field{until.Must(), why}, func(a *acting, c contract.Filled, by string) (elevator.ContractTerms, error) {
		return contract.Extend(c.ContractTerms, a.until, a.day, by, a.why)
	}},
	Roll:   {[]field{month, spread, until.Hinted(message.New("without it, as before"))}, roll},
	BuyOut: {[]field{market, why}, buyOut},
	Cancel: {[]field{why.Must()}, func(a *acting, c contract.Filled, by string) (elevator.ContractTerms, error) {
		return contract.Cancel(c.ContractTerms, c.Delivered, a.day, by, a.why)
	}},
}

func table(act Act) []field { return append(slices.Clone(acts[act].fields), agreed) }

// Fields are the fields of an act.
func Fields(act Act) []typed.Field { return typed.FieldsOf(table(act)) }

// Read makes a change of what is typed, by the ids of the fields.
func Read(act Act, texts map[string]string, around Around) (Change, typed.Problems) {
	a := &acting{Around: around}
	problems := typed.Read(a, table(act), texts)
	return func(c contract.Filled, by string) (elevator.ContractTerms, error) { return acts[act].do(a, c, by) }, problems
}

func price(a *acting, c contract.Filled, by string) (elevator.ContractTerms, error) {
	p := contract.Pricing{Quantity: contract.Unpriced(c.ContractTerms), Money: a.money, Day: a.day, By: by}
	if a.quantity != nil {
		p.Quantity = *a.quantity
	}
	return contract.Price(c.ContractTerms, p)
}

func roll(a *acting, c contract.Filled, by string) (elevator.ContractTerms, error) {
	to := a.until
	if to.IsZero() {
		to = c.Until
	}
	return contract.Roll(c.ContractTerms, a.month, a.money, to, a.day, by)
}

func buyOut(a *acting, c contract.Filled, by string) (elevator.ContractTerms, error) {
	_, owed, err := contract.BuyOutWorking(c, a.money)
	if err != nil {
		return c.ContractTerms, err
	}
	return contract.BuyOut(c.ContractTerms, owed.Value(), a.day, by, a.why)
}

func readPart(a *acting, text string) error {
	if text == "" {
		return nil
	}
	unit := a.Contract.Quantity.Unit()
	q, err := quantity.Field{Name: "Quantity", Unit: unit, Places: 2, Min: quantity.Of("0.01", unit), Max: a.Contract.Quantity}.Parse(text)
	a.quantity = &q
	return err
}

// readMoney reads money per unit, which may be below zero.
func readMoney(name string) func(*acting, string) error {
	return func(a *acting, text string) (err error) {
		a.money, err = entry.ParseBasis(name, text, a.Contract.Quantity.Unit())
		return err
	}
}

func readMarket(a *acting, text string) (err error) {
	a.money, err = entry.ParsePrice(text, a.Contract.Quantity.Unit())
	return err
}

func readUntil(a *acting, text string) (err error) {
	a.until, err = entry.ParseDay("Until", text, a.Today)
	return err
}

func readAgreed(a *acting, text string) (err error) {
	if a.day, err = entry.ParseDay("Day", text, a.Today); err == nil && a.day.IsZero() {
		a.day = a.Today
	}
	if err == nil && a.day.After(a.Today) {
		err = message.Refused.Errorf("nothing is agreed on %s yet; give a day up to today", a.day)
	}
	return err
}
