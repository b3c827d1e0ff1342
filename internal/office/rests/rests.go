// Package rests knows what rests on a ticket: the settlement sheets that paid for it, the payments on
// them, contracts that were bought out with its grain counted, movements that took its grain on. A
// ticket that something rests on is not voided or corrected alone. Whoever ends it either deals with
// what rests on it first, or lets it follow: see [Followed].
package rests

import (
	"fmt"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/book"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/position"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/receipt"
	"tenthpoint/internal/title"
)

// Kind is the kind of record that rests on a ticket.
type Kind string

// The kinds, as programs read them.
const (
	Sheet    Kind = "sheet"
	Payment  Kind = "payment"
	Receipt  Kind = "receipt"
	BuyOut   Kind = "buy-out"
	Movement Kind = "movement"
)

// Rest is one thing that rests on a ticket.
type Rest struct {
	Kind   Kind
	Number string
	Said   message.Text
}

// Lists are the records of a book that can rest on tickets.
type Lists interface {
	Records(kind string) ([]book.Record, error)
	BinBefore(name, day string) ([]bin.Row, error)
}

// On are the records that rest on a ticket.
func On(lists Lists, l *load.Load) ([]Rest, error) {
	return found(lists, l, sheets, receipts, boughtOut, moved)
}

// Papers are the records that rest on a ticket beside its grain: a ticket that is to be corrected brings grain in
// its place, which is known when the new one is issued.
func Papers(lists Lists, l *load.Load) ([]Rest, error) {
	return found(lists, l, sheets, receipts, boughtOut)
}

func found(lists Lists, l *load.Load, all ...func(Lists, *load.Load) ([]Rest, error)) ([]Rest, error) {
	var out []Rest
	for _, find := range all {
		found, err := find(lists, l)
		if err != nil {
			return nil, err
		}
		out = append(out, found...)
	}
	return out, nil
}

// Refusal says why a ticket is not ended alone, naming what rests on it; nil where nothing does.
func Refusal(number int64, all []Rest) error {
	if len(all) == 0 {
		return nil
	}
	said := make([]message.Text, len(all))
	for i, r := range all {
		said[i] = r.Said
	}
	return message.Refused.Errorf("ticket %d is not ended alone, for this rests on it: %s. Take that back first, or let it follow in the same act", number, message.Texts(", ", said))
}

// sheets are the settlement sheets in force that paid for the ticket, with what was paid on them.
func sheets(lists Lists, l *load.Load) ([]Rest, error) {
	all, err := book.RecordsIn[paysheet.Sheet](lists)
	if err != nil {
		return nil, err
	}
	resting := paysheet.RestingOn(all, l.Number)
	if len(resting) == 0 {
		return nil, nil
	}
	payments, err := book.RecordsIn[paysheet.Payment](lists)
	if err != nil {
		return nil, err
	}
	var out []Rest
	for _, number := range resting {
		out = append(out, Rest{Sheet, fmt.Sprint(number), message.New("settlement sheet %d, which paid for it", number)})
		for _, p := range payments {
			if p.InForce() && p.Sheet == number {
				out = append(out, Rest{Payment, fmt.Sprint(p.Number), message.New("payment %d of %s on that sheet", p.Number, p.Amount)})
			}
		}
	}
	return out, nil
}

// receipts are the warehouse receipts in force that its grain is on.
func receipts(lists Lists, l *load.Load) ([]Rest, error) {
	all, err := book.RecordsIn[receipt.Receipt](lists)
	if err != nil {
		return nil, err
	}
	var out []Rest
	for _, r := range receipt.On(all, l.Number, "") {
		out = append(out, Rest{Receipt, fmt.Sprint(r.Number), message.New("warehouse receipt %d of %v", r.Number, r.Name)})
	}
	return out, nil
}

// boughtOut are the contracts the ticket names that were bought out after its grain came: what was
// missing then, and cost money, counted it.
func boughtOut(lists Lists, l *load.Load) ([]Rest, error) {
	named := contractsOf(l)
	if len(named) == 0 {
		return nil, nil
	}
	all, err := book.RecordsIn[elevator.ContractTerms](lists)
	if err != nil {
		return nil, err
	}
	var out []Rest
	for _, c := range all {
		end, closed := c.Closed()
		if named[c.Number] && closed && end.What == elevator.BoughtOut && !end.Day.Before(l.IssuedDay) {
			out = append(out, Rest{BuyOut, c.Number, message.New("contract %v, of which what was missing was bought out on %s", c.Number, end.Day)})
		}
	}
	return out, nil
}

func contractsOf(l *load.Load) map[string]bool {
	out := map[string]bool{}
	for i := range max(1, len(l.Details.Shares)) {
		if deal := l.Details.DealOf(i); deal.Under == title.Contract {
			out[deal.No] = true
		}
	}
	return out
}

// lastOfDays is after every day.
const lastOfDays = "9999-99-99"

// missing is the weight that the bin of a ticket would lack without its grain; zero where it would not.
func missing(lists Lists, l *load.Load) (bin.Place, quantity.Amount, error) {
	if l.Balance != nil { // an opening balance is owed, and brought no grain to a bin of its own
		return bin.Place{}, quantity.Zero(l.Balance.Settled.Unit()), nil
	}
	row := office.RowOf(l)
	brought, err := position.BroughtBy(row.Recorded())
	if err != nil {
		return bin.Place{}, quantity.Amount{}, err
	}
	place := bin.Place{Bin: row.LiesIn(), Commodity: row.Commodity, Unit: brought.Net.Unit()}
	none := quantity.Zero(place.Unit)
	if l.Details.Direction == load.Outbound || l.IssuedDay.IsZero() {
		return place, none, nil
	}
	lies, err := liesAt(lists, place)
	return place, quantity.Max(none, brought.Net.Sub(quantity.Max(none, lies))), err
}

func liesAt(lists Lists, place bin.Place) (quantity.Amount, error) {
	rows, err := lists.BinBefore(place.Bin, lastOfDays)
	if err != nil {
		return quantity.Amount{}, err
	}
	for _, r := range rows {
		if r.Place == place {
			return r.Close.Balance(), nil
		}
	}
	return quantity.Zero(place.Unit), nil
}

// moved are the movements that took grain out of the ticket's bin since it came, where the bin would
// lack something without it.
func moved(lists Lists, l *load.Load) ([]Rest, error) {
	place, lacks, err := missing(lists, l)
	if err != nil || lacks.IsZero() {
		return nil, err
	}
	all, err := takenOn(lists, place, l.IssuedDay)
	var out []Rest
	for _, m := range all {
		out = append(out, Rest{Movement, fmt.Sprint(m.Number), message.New("movement %d, which took its grain on from %v", m.Number, place.Bin)})
	}
	return out, err
}

// takenOn are the movements in force that took grain out of a bin on a day or later.
func takenOn(lists Lists, place bin.Place, since quantity.Date) ([]bin.Movement, error) {
	all, err := book.RecordsIn[bin.Movement](lists)
	var out []bin.Movement
	for _, m := range all {
		if m.UndoneBy != 0 || m.What == bin.Undo || m.Commodity != place.Commodity || m.Unit() != place.Unit || m.Day.Before(since) {
			continue
		}
		for _, from := range m.From {
			if from.Bin == place.Bin {
				out = append(out, m)
				break
			}
		}
	}
	return out, err
}
