package scalehouse

import (
	"context"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/slipcode"
)

// Issue settles a load and gives its ticket the next number. A load that
// corrects a ticket supersedes it in the same transaction; the void ticket that
// a load reissues learns its number there.
func Issue(ctx context.Context, at Actor, id string) (int64, error) {
	return result(ctx, at, func(w *Batch) (int64, error) {
		if err := MayAct(w.desk, elevator.TicketActs, "issue a ticket"); err != nil {
			return 0, err
		}
		l, err := w.load(id)
		if err != nil {
			return 0, err
		}
		if l.Phase == load.Ticketed || l.Phase == load.Void || l.Phase == load.Corrected || l.Phase == load.TurnedAway {
			return 0, l.Allow(load.Issued{Number: 1, Weigher: w.desk.who.Name})
		}
		if stops := ticketStops(w.desk, l); len(stops) > 0 {
			return 0, message.Errs(message.Refused, stops)
		}
		if _, err := w.settle(l); err != nil {
			return 0, err
		}
		if err := guarded(w, l); err != nil {
			return 0, err
		}
		return w.number(l)
	})
}

// ticketStops are the warnings about a reading that stop a ticket in this elevator until a manager
// lets it through.
func ticketStops(d *Desk, l *load.Load) []message.Text {
	var out []message.Text
	for _, doubt := range entry.Stops(l, d.profile) {
		out = append(out, doubt.Refusal())
	}
	return out
}

// settle settles the load and records the result, with the edition's text if the book does not have
// it yet.
func (w *Batch) settle(l *load.Load) (*settle.Settlement, error) {
	s, problems := office.Preview(w.desk, l)
	if len(problems) > 0 {
		return nil, problems
	}
	if s.Edition != nil {
		e := s.Edition
		if err := w.tx.KeepEdition(e.ID, e.Hash, string(e.Text)); err != nil {
			return nil, err
		}
		if l.Chain {
			if err := remember(w.desk, e); err != nil {
				return nil, err
			}
		}
	}
	law, err := keepLaw(w, office.LawDay(w.desk, l))
	if err != nil {
		return nil, err
	}
	_, err = w.append(l, office.SettledFact(s, law))
	return s, err
}

func (w *Batch) number(l *load.Load) (int64, error) {
	day, err := w.BusinessDay()
	if err != nil {
		return 0, err
	}
	return w.numberOn(l, day)
}

// numberOn issues a load's ticket under the next number, to count on a day.
func (w *Batch) numberOn(l *load.Load, day quantity.Date) (int64, error) {
	number, err := w.tx.NextNumber(numbering.Ticket)
	if err != nil {
		return 0, err
	}
	if err := w.issue(l, load.Issued{Number: number, Day: day}); err != nil || l.InPlaceOf() == 0 {
		return number, err
	}
	old, err := w.ticket(l.InPlaceOf())
	if err != nil {
		return 0, err
	}
	if l.Corrects > 0 {
		if err := endFor(w, old, l, day); err != nil {
			return 0, err
		}
	}
	_, err = w.append(old, supersede(l, day))
	return number, err
}

// endFor lets what rests on a ticket follow the one that corrects it, or refuses where it was to be
// corrected alone.
func endFor(w *Batch, old, next *load.Load, day quantity.Date) error {
	if !next.Chain {
		return mayEnd(w, old)
	}
	return follow(w, old, next, next.Why, day)
}

// issue issues a load's ticket with the number and the day of a fact.
func (w *Batch) issue(l *load.Load, f load.Issued) (err error) {
	if f.Onward, err = onward(w, l); err != nil {
		return err
	}
	f.Weigher, f.SlipCode, f.Letters = w.desk.who.Name, slipCode(w.desk.engine), w.desk.profile.Letters
	if err := enterPad(w, l, f); err != nil {
		return err
	}
	w.tickets[f.Number] = l.ID
	_, err = w.append(l, f)
	return err
}

// PadsIn are the pads of emergency tickets, and those of them that are accounted for.
func PadsIn(w *Batch) (pads []numbering.Pad, used []numbering.Emergency, err error) {
	if pads, err = RecordsIn[numbering.Pad](w); err != nil {
		return nil, nil, err
	}
	used, err = RecordsIn[numbering.Emergency](w)
	return pads, used, err
}

// enterPad writes down that the emergency ticket of a load is entered, once.
func enterPad(w *Batch, l *load.Load, f load.Issued) error {
	on := l.Details.Pad
	if on == nil {
		return nil
	}
	pads, used, err := PadsIn(w)
	if err != nil {
		return err
	}
	if err := numbering.MayEnter(pads, used, on.Number, l.InPlaceOf()); err != nil {
		return err
	}
	e := numbering.Emergency{Number: on.Number, Ticket: f.Number, Day: f.Day}
	return w.putRecord(e.Kind()+" "+e.ID(), e.ID(), e)
}

// IssueAgain issues the ticket of a load under the number it had in a book since lost, if its
// settlement agrees with what the paper says. It counts on its own day, or on the first open one
// after it; the guards asked when the paper was issued.
func IssueAgain(w *Batch, id string, number int64, slip load.Slip, agrees func(*settle.Settlement) error) error {
	l, err := w.load(id)
	if err != nil {
		return err
	}
	s, err := w.settle(l)
	if err != nil {
		return err
	}
	if err := agrees(s); err != nil {
		return err
	}
	day, err := w.openDay(l.Details.Day)
	if err != nil {
		return err
	}
	return w.issue(l, load.Issued{Number: number, Day: day, Slip: &slip})
}

// slipCode is the format of the code on a ticket's slip: tickets of the first engines are from before
// slips carried their facts.
func slipCode(by settle.Engine) int64 {
	if by < settle.Current {
		return 0
	}
	return slipcode.Format
}

// supersede returns the fact that a ticket was replaced by another.
func supersede(l *load.Load, day quantity.Date) load.Fact {
	if l.Reissues > 0 {
		return load.Reissued{By: l.Number, Day: day}
	}
	return load.Superseded{By: l.Number, Reason: l.Why, Day: day}
}

// RecordPrint records that a copy of a ticket was printed, once there is paper, and returns its number: 0 is the
// original, then reprints.
func RecordPrint(ctx context.Context, at Actor, number int64) (copyNo int64, err error) {
	return result(ctx, at, func(w *Batch) (copyNo int64, err error) {
		if err := w.desk.somebody("print a ticket"); err != nil {
			return 0, err
		}
		l, err := w.ticket(number)
		if err != nil {
			return 0, err
		}
		copyNo = l.Copies
		_, err = w.append(l, load.Printed{Copy: copyNo})
		return copyNo, err
	})
}

// Void cancels a ticket. Its number and every copy stay. One that something rests on is not voided
// alone: see [VoidWithChain].
func Void(ctx context.Context, at Actor, number int64, reason string) error {
	return at.do(ctx, func(w *Batch) error { return voidIn(w, number, reason, false) })
}

// voidIn cancels a ticket, alone or with what rests on it.
func voidIn(w *Batch, number int64, reason string, chain bool) error {
	if err := w.desk.MayManage("Voiding a ticket"); err != nil {
		return err
	}
	l, err := w.ticket(number)
	if err != nil {
		return err
	}
	day, err := w.BusinessDay()
	if err != nil {
		return err
	}
	end := load.Voided{Reason: reason, Day: day}
	if err := l.Allow(end); err != nil {
		return err
	}
	if chain {
		err = follow(w, l, nil, reason, day)
	} else {
		err = mayEnd(w, l)
	}
	if err != nil {
		return err
	}
	_, err = w.append(l, end)
	return err
}
