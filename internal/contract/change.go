package contract

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// open refuses a change to a contract that has ended.
func open(c elevator.ContractTerms) error {
	if end, closed := c.Closed(); closed {
		return message.Refused.Errorf("contract %s was ended on %s: %s. Nothing of it changes any more", c.Number, end.Day, ChangeName(end.What))
	}
	return nil
}

var changeNames = map[elevator.ChangeOf]message.Text{
	elevator.Signed: message.Words("signed"), elevator.Extended: message.Words("extended"), elevator.Rolled: message.Words("rolled"),
	elevator.BoughtOut: message.Words("bought out"), elevator.Cancelled: message.Words("cancelled"),
}

// ChangeName is the name of a change on papers.
func ChangeName(what elevator.ChangeOf) message.Text { return changeNames[what] }

// changed is a contract with one more change; slices of the old one stay as they are.
func changed(c elevator.ContractTerms, change elevator.ContractChange) elevator.ContractTerms {
	c.Changes = append(c.Changes[:len(c.Changes):len(c.Changes)], change)
	return c
}

// Sign writes down that both parties have signed.
func Sign(c elevator.ContractTerms, day quantity.Date, by string) (elevator.ContractTerms, error) {
	if c.IsSigned() {
		return c, message.Refused.Errorf("contract %s is signed already", c.Number)
	}
	return changed(c, elevator.ContractChange{What: elevator.Signed, Day: day, By: by}), open(c)
}

// Extend moves the last day of delivery.
func Extend(c elevator.ContractTerms, until, day quantity.Date, by, why string) (elevator.ContractTerms, error) {
	if !until.After(c.Until) {
		return c, message.Refused.Errorf("contract %s runs until %s already; extend it to a later day than that", c.Number, c.Until)
	}
	change := elevator.ContractChange{What: elevator.Extended, Day: day, By: by, Until: c.Until, Note: why}
	next := changed(c, change)
	next.Until = until
	return next, open(c)
}

// Roll moves a contract to another futures month. The spread, above or below zero, goes onto what
// was fixed of the price.
func Roll(c elevator.ContractTerms, month string, spread quantity.Amount, until, day quantity.Date, by string) (elevator.ContractTerms, error) {
	switch {
	case c.Form != elevator.Basis && c.Form != elevator.HedgeToArrive:
		return c, message.Refused.Errorf("contract %s is a contract of another form: %s. Basis and hedge to arrive are rolled", c.Number, c.Form.Name())
	case month == "" || month == c.Month:
		return c, message.Invalid.Errorf("contract %s is rolled to another futures month; name it", c.Number)
	case spread.Unit() != quantity.Dollar.Per(c.Quantity.Unit()):
		return c, message.Invalid.Errorf("the spread is %s; it is money per %s", spread, c.Quantity.Unit())
	case until.Before(c.Until):
		return c, message.Invalid.Errorf("contract %s runs until %s, and is not rolled to an earlier day, %s", c.Number, c.Until, until)
	}
	next := changed(c, elevator.ContractChange{What: elevator.Rolled, Day: day, By: by, Until: c.Until, Month: c.Month, Money: &spread})
	next.Month, next.Until = month, until
	if c.Form == elevator.Basis {
		next.Basis = sum(*c.Basis, spread)
	} else {
		next.Futures = sum(*c.Futures, spread)
	}
	return next, open(c)
}

func sum(a, b quantity.Amount) *quantity.Amount {
	s := a.Add(b)
	return &s
}

// Cancel ends a contract on which nothing was delivered.
func Cancel(c elevator.ContractTerms, delivered quantity.Amount, day quantity.Date, by, why string) (elevator.ContractTerms, error) {
	switch {
	case delivered.Sign() > 0:
		return c, message.Refused.Errorf("%s is delivered on contract %s; buy out what is still to come instead", delivered, c.Number)
	case why == "":
		return c, message.Invalid.Errorf("contract %s is cancelled for a reason; write it", c.Number)
	}
	return changed(c, elevator.ContractChange{What: elevator.Cancelled, Day: day, By: by, Note: why}), open(c)
}

// BuyOut ends a contract that was not delivered whole, for the money that [BuyOutWorking] works out.
func BuyOut(c elevator.ContractTerms, money quantity.Amount, day quantity.Date, by, why string) (elevator.ContractTerms, error) {
	return changed(c, elevator.ContractChange{What: elevator.BoughtOut, Day: day, By: by, Money: &money, Note: why}), open(c)
}
