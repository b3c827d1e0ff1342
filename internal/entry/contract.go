package entry

import (
	"errors"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// ContractTexts are the terms of a contract as they are typed.
type ContractTexts struct {
	Number, Grower, Commodity, Quantity, Price, Until string
	// What a contract of another form than forward has, or may have.
	Form, From, Tolerance, Quality, Month, Basis, Futures string
	Sellers                                               []string // "102=2/3"
}

// ContractTaken is a number that another contract has.
type ContractTaken struct{ Old elevator.ContractTerms }

// Error says what to do about it.
func (e ContractTaken) Error() string { return e.Message().String() }

// Message says what to do about it.
func (e ContractTaken) Message() message.Text {
	return message.New("Contract %v is there already, for %s. Choose another number", e.Old.Number, e.Old.Commodity)
}

// ReadContract reads the terms of a new contract. The error joins a [Fault] for every invalid text.
func ReadContract(h House, t ContractTexts) (c elevator.ContractTerms, err error) {
	var faults []error
	fault := func(field string, err error) {
		if err != nil {
			faults = append(faults, Fault{field, err})
		}
	}
	c.Number = strings.TrimSpace(t.Number)
	fault("number", numberIsFree(h, c.Number))
	grower, err := Grower(h, t.Grower)
	fault("grower", err)
	crop, err := CommodityHere(h.Profile(), t.Commodity)
	fault("commodity", err)
	c.Grower, c.Commodity = grower.ID, crop.ID
	unit := settlesBy(h, crop.ID)
	c.Quantity, err = contractQuantity(unit).Parse(t.Quantity)
	fault("quantity", err)
	c.Quality, c.Month = strings.TrimSpace(t.Quality), strings.TrimSpace(t.Month)
	readPrices(&c, t, unit, fault)
	if t.Tolerance != "" {
		tolerance, err := Percent("Tolerance").Parse(t.Tolerance)
		fault("tolerance", err)
		c.Tolerance = &tolerance
	}
	c.Sellers, err = sellers(h, t.Sellers)
	fault("sellers", err)
	c.From, err = ParseDay("From", t.From, h.Today())
	fault("from", err)
	c.Until, err = ParseDay("Until", t.Until, h.Today())
	if err == nil && c.Until.IsZero() {
		err = message.Invalid.Errorf("A contract has a last day. Type it as year-month-day")
	}
	fault("until", err)
	return c, errors.Join(faults...)
}

// numberIsFree refuses the number of another contract.
func numberIsFree(h House, number string) error {
	all, err := h.Contracts()
	if err != nil {
		return err
	}
	for _, old := range all {
		if old.Number == number {
			return ContractTaken{old}
		}
	}
	return nil
}

func contractQuantity(unit quantity.Unit) quantity.Field {
	return quantity.Field{Name: "Quantity", Unit: unit, Places: 2, Min: quantity.Of("0.01", unit), Max: quantity.Int(100_000_000, unit)}
}

// settlesBy is the unit that a grain is settled by under the rates of the day.
func settlesBy(h House, commodity string) quantity.Unit {
	schedule, _ := h.Profile().Schedule(commodity)
	e, err := h.Rates().On(schedule, commodity, h.Today())
	if err != nil {
		return quantity.Bushel
	}
	return e.Units.Settle
}

// readPrices reads the form and the money that a contract of that form fixes.
func readPrices(c *elevator.ContractTerms, t ContractTexts, unit quantity.Unit, fault func(string, error)) {
	form, known := elevator.ReadContractForm(strings.TrimSpace(t.Form))
	if !known {
		fault("form", message.Invalid.Errorf("%q is no sort of contract; write one of forward, cash, basis, hedge-to-arrive, minimum-price, delayed-price, deferred-payment, grain-bank", t.Form))
		return
	}
	c.Form = form
	if form.FixesPrice() || t.Price != "" {
		price, err := ParsePrice(t.Price, unit)
		fault("price", err)
		c.Price = price
	}
	if t.Futures != "" {
		futures, err := ParsePrice(t.Futures, unit)
		fault("futures", err)
		c.Futures = &futures
	}
	if t.Basis != "" {
		basis, err := ParseBasis("Basis", t.Basis, unit)
		fault("basis", err)
		c.Basis = &basis
	}
}

// ParseBasis reads what a price is above or below the futures price; the sign that people put
// before money may stay.
func ParseBasis(name, text string, settle quantity.Unit) (quantity.Amount, error) {
	per := quantity.Dollar.Per(settle)
	return quantity.Field{Name: name, Unit: per, Places: pricePlaces, Min: quantity.Int(-1000, per), Max: quantity.Int(1000, per)}.Parse(text)
}

// sellers reads the shares of those who sell on a contract.
func sellers(h House, texts []string) ([]elevator.Share, error) {
	var out []elevator.Share
	for _, text := range texts {
		one, err := ParseOwnerShare(text)
		if err != nil {
			return nil, err
		}
		grower, err := Grower(h, one.Owner)
		if err != nil {
			return nil, err
		}
		out = append(out, elevator.Share{GrowerID: grower.ID, Parts: one.Parts, Of: one.Of})
	}
	return out, nil
}
