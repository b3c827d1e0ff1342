package desk

import (
	"context"
	"fmt"

	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/store"
)

// Issue settles a load and gives its ticket the next number. A load that
// corrects a ticket supersedes it in the same transaction; the void ticket that
// a load reissues learns its number there.
func (d *Desk) Issue(ctx context.Context, id string) (number int64, err error) {
	err = d.one(ctx, func(w *Work) error {
		number, err = w.Issue(id)
		return err
	})
	return number, err
}

// Issue is [Desk.Issue] as part of the work.
func (w *Work) Issue(id string) (int64, error) {
	if err := w.desk.mayWeigh("issue a ticket"); err != nil {
		return 0, err
	}
	l, err := w.load(id)
	if err != nil {
		return 0, err
	}
	if l.Phase == load.Ticketed || l.Phase == load.Void || l.Phase == load.Corrected || l.Phase == load.TurnedAway {
		return 0, l.Allow(load.Issued{Number: 1, Weigher: w.desk.who.Name})
	}
	if stops := w.desk.stops(l); len(stops) > 0 {
		return 0, sentences(stops)
	}
	if err := w.settle(l); err != nil {
		return 0, err
	}
	return w.number(l)
}

// settle works the load out and writes the result down, with the edition's
// text if the book does not have it yet.
func (w *Work) settle(l *load.Load) error {
	s, problems := w.desk.Preview(l)
	if len(problems) > 0 {
		return problems
	}
	if s.Edition != nil {
		e := s.Edition
		if err := w.tx.KeepEdition(e.ID, e.Hash, string(e.Text)); err != nil {
			return err
		}
	}
	_, err := w.happen(l, settledFact(s))
	return err
}

func (w *Work) number(l *load.Load) (int64, error) {
	day, err := w.businessDay()
	if err != nil {
		return 0, err
	}
	return w.numberOn(l, day)
}

// numberOn gives a load's ticket the next number, to count on a day.
func (w *Work) numberOn(l *load.Load, day quantity.Date) (int64, error) {
	number, err := w.tx.NextNumber("ticket")
	if err != nil {
		return 0, err
	}
	if _, err := w.happen(l, load.Issued{Number: number, Weigher: w.desk.who.Name, Day: day}); err != nil {
		return 0, err
	}
	w.tickets[number] = l.ID
	if l.InPlaceOf() == 0 {
		return number, nil
	}
	old, err := w.ticket(l.InPlaceOf())
	if err != nil {
		return 0, err
	}
	_, err = w.happen(old, gaveWay(l, day))
	return number, err
}

// gaveWay is what happens to the ticket whose place a load's ticket takes.
func gaveWay(l *load.Load, day quantity.Date) load.Fact {
	if l.Reissues > 0 {
		return load.Reissued{By: l.Number, Day: day}
	}
	return load.Superseded{By: l.Number, Reason: l.Why, Day: day}
}

// ticket finds a load by its ticket number inside the transaction.
func (w *Work) ticket(number int64) (*load.Load, error) {
	if id, ok := w.tickets[number]; ok {
		return w.load(id)
	}
	var id string
	if err := w.tx.QueryRow("SELECT id FROM loads WHERE ticket = ?", number).Scan(&id); err != nil {
		return nil, noTicket(number)
	}
	return w.load(id)
}

func noTicket(number int64) error {
	return fmt.Errorf("there is no ticket %d in this book. Look the number up on the slip, or find the load by grower, truck or day", number)
}

// Ticket finds the load of a ticket.
func (d *Desk) Ticket(ctx context.Context, number int64) (*load.Load, error) {
	rows, err := d.book.Loads(ctx, store.LoadFilter{Ticket: number})
	if err != nil {
		return nil, err
	}
	if len(rows) == 0 {
		return nil, noTicket(number)
	}
	return d.Load(ctx, rows[0].ID)
}

// Printed writes down that a copy of a ticket is being printed, and tells which:
// 0 is the original, then reprints.
func (d *Desk) Printed(ctx context.Context, number int64) (copyNo int64, err error) {
	err = d.one(ctx, func(w *Work) error {
		copyNo, err = w.Printed(number)
		return err
	})
	return copyNo, err
}

// Printed is [Desk.Printed] as part of the work.
func (w *Work) Printed(number int64) (copyNo int64, err error) {
	if err := w.desk.somebody("print a ticket"); err != nil {
		return 0, err
	}
	l, err := w.ticket(number)
	if err != nil {
		return 0, err
	}
	copyNo = l.Copies
	_, err = w.happen(l, load.Printed{Copy: copyNo})
	return copyNo, err
}

// Void cancels a ticket. Its number and every copy stay.
func (d *Desk) Void(ctx context.Context, number int64, reason string) error {
	return d.one(ctx, func(w *Work) error { return w.Void(number, reason) })
}

// Void is [Desk.Void] as part of the work.
func (w *Work) Void(number int64, reason string) error {
	if err := w.desk.mayManage("Voiding a ticket"); err != nil {
		return err
	}
	l, err := w.ticket(number)
	if err != nil {
		return err
	}
	day, err := w.businessDay()
	if err != nil {
		return err
	}
	_, err = w.happen(l, load.Voided{Reason: reason, Day: day})
	return err
}
