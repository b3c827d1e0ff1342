package contracts

import (
	"context"

	"tenthpoint/internal/contract"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry/contracting"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse/money"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/ask"
)

// managerField asks in whose name a contract is written or changed.
const managerField = "who"

// IsOpen reports whether the chosen contract can still change.
func (c *Contracts) IsOpen() bool {
	one, there := c.contract()
	_, closed := one.Closed()
	return there && !closed
}

// CanSign reports whether the chosen contract is still to be signed.
func (c *Contracts) CanSign() bool {
	one, _ := c.contract()
	return c.IsOpen() && !one.IsSigned()
}

// CanPrice reports whether a part of the chosen contract may be priced.
func (c *Contracts) CanPrice() bool {
	one, _ := c.contract()
	return c.IsOpen() && one.Form.PricedLater() && contract.Unpriced(one.ContractTerms).Sign() > 0
}

// CanRoll reports whether the chosen contract is of a sort that is rolled.
func (c *Contracts) CanRoll() bool {
	one, _ := c.contract()
	return c.IsOpen() && (one.Form == elevator.Basis || one.Form == elevator.HedgeToArrive)
}

// Add asks for a new contract, of the grower of the chosen one.
func (c *Contracts) Add() {
	one, _ := c.contract()
	ask.Contract(c.session, one.Grower, func(made elevator.ContractTerms) {
		c.took(made, c.session.Say("contract %s is written down: %s at %s.", made.Number, made.Quantity, made.PriceText()))
	})
}

// asked is the dialog of an act.
type asked struct {
	title, text string // English
	danger      bool
}

var questions = map[contracting.Act]asked{
	contracting.Sign:   {"Contract %s is signed", "That both parties have signed, and on which day.", false},
	contracting.Price:  {"Price contract %s", "A part by itself, or all that has no price yet. A price stays once it is written down.", false},
	contracting.Extend: {"Extend contract %s", "It is delivered until a later day.", false},
	contracting.Roll:   {"Roll contract %s", "To another futures month: the spread goes onto what was fixed of the price.", false},
	contracting.BuyOut: {"Buy contract %s out?", "The market less the contract's price, on what did not come. Above zero the grower owes it. The contract ends.", true},
	contracting.Cancel: {"Cancel contract %s?", "Only a contract on which nothing was delivered is cancelled. It ends, and its number stays.", true},
}

// Act asks for what an act on the chosen contract needs, and does it in a manager's name.
func (c *Contracts) Act(act contracting.Act) {
	one, there := c.contract()
	if !there {
		return
	}
	f, q := c.session, questions[act]
	around := contracting.Around{Contract: one.ContractTerms, Today: c.today()}
	filled := ask.Filled{Unit: quantity.Dollar.Per(one.ContractTerms.Quantity.Unit())}
	question := model.Ask{
		Draft: "contract " + string(act), Of: "contract " + one.Number,
		Title: f.Say(q.title, one.Number), Text: f.Say(q.text), Yes: f.Say("Write down"), Danger: q.danger,
		Fields: append(ask.Fields(f, contracting.Fields(act), filled), managerOf(f)),
		Check: func(values map[string]string) map[string]string {
			_, problems := contracting.Read(act, values, around)
			return ask.Sentences(f, problems)
		},
		Then: func(values map[string]string) {
			change, _ := contracting.Read(act, values, around)
			c.do(values[managerField], one.Number, change)
		},
	}
	if q.danger {
		question.State = model.Stop
	}
	f.Put(question)
}

func managerOf(f *session.Session) model.AskField {
	return model.AskField{ID: managerField, Label: f.Say("Manager"), Options: f.Managers(), Value: f.ManagerHere(), Chars: 24, Required: true}
}

// do does a change on a contract as it then stands.
func (c *Contracts) do(manager, number string, change contracting.Change) {
	f := c.session
	var next elevator.ContractTerms
	err := f.As(manager, func() (err error) {
		next, err = money.Act(context.Background(), f.Desk, number, change)
		return err
	})
	if err != nil {
		f.Fail(err)
		return
	}
	c.took(next, c.done(next))
}

// done is the last event of a contract: its last change or the part priced last.
func (c *Contracts) done(next elevator.ContractTerms) string {
	f := c.session
	if end, closed := next.Closed(); closed && end.Money != nil {
		return f.Say("contract %s is bought out: %s is owed for what did not come.", next.Number, *end.Money)
	}
	return f.Say("contract %s: %s, until %s.", next.Number, next.PriceText(), f.Date(next.Until))
}

// took shows the list after an act, with its contract chosen.
func (c *Contracts) took(one elevator.ContractTerms, done string) {
	c.session.Changed()
	c.chosen = one.Number
	c.Reload()
	c.session.Notify(model.OK, done)
	c.session.Window.Redraw()
}

// Print prints the chosen contract, to be signed.
func (c *Contracts) Print() {
	if one, there := c.contract(); there {
		session.PrintDocument(c.session, c.paper(one), "contract-"+one.Number, c.session.Say("contract %s", one.Number), false)
	}
}

// Settle opens the settlement of the grower of the chosen contract.
func (c *Contracts) Settle() {
	if one, there := c.contract(); there {
		c.session.Open("settle", one.Grower)
	}
}
