package tickets

import (
	"context"
	"fmt"

	"tenthpoint/internal/entry/shipping"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office/shipments"
	acts "tenthpoint/internal/scalehouse/shipments"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/ask"
)

// HasLeft reports whether the chosen ticket is of grain that left and stands.
func (t *Ticket) HasLeft() bool {
	return t.load != nil && t.load.Phase == load.Ticketed && t.load.Details.Direction == load.Outbound
}

// Lading prints the bill of lading of the chosen ticket.
func (t *Tickets) Lading() {
	f := t.session
	number := t.Ticket.load.Number
	one, err := shipments.Numbered(context.Background(), f.Desk, number)
	if err != nil {
		f.Fail(err)
		return
	}
	session.PrintDocument(f, shipments.Lading(one, f.Desk.Profile()), fmt.Sprintf("bill-of-lading-%d", number), f.Say("the bill of lading of ticket %d", number), false)
}

// Arrived asks what the destination of the chosen ticket found, and writes it down.
func (t *Tickets) Arrived() {
	f, number := t.session, t.Ticket.load.Number
	one, err := shipments.Numbered(context.Background(), f.Desk, number)
	if err != nil {
		f.Fail(err)
		return
	}
	left, err := shipments.Left(f.Desk, one)
	if err != nil {
		f.Fail(err)
		return
	}
	f.Put(model.Ask{
		Draft: "arrived", Of: fmt.Sprint("ticket ", number), Title: f.Say("What did the destination of ticket %d find?", number), Yes: f.Say("Write down"),
		Text:   f.Say("It left with %s. What was written down before stays in the book; the last one counts.", one.Origin.Weight),
		Fields: ask.Fields(f, shipping.Fields(), ask.Filled{}),
		Check: func(values map[string]string) map[string]string {
			_, problems := shipping.Read(values, left)
			return ask.Sentences(f, problems)
		},
		Then: func(values map[string]string) {
			arrived, _ := shipping.Read(values, left)
			if err := acts.Arrive(context.Background(), f.Desk, arrived); err != nil {
				f.Fail(err)
				return
			}
			t.tellArrived(number)
		},
	})
}

// tellArrived says by how much the destination differs.
func (t *Tickets) tellArrived(number int64) {
	f := t.session
	f.Changed()
	one, err := shipments.Numbered(context.Background(), f.Desk, number)
	if err != nil {
		f.Fail(err)
		return
	}
	f.Notify(model.OK, f.Say("ticket %d left with %s and arrived with %s: %s, %s.", number, one.Origin.Weight, one.Arrived.Weight, one.Weight, one.Percent.FixedString(2)))
}
