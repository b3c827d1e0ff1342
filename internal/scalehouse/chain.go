package scalehouse

import (
	"context"
	"errors"
	"slices"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/office/money"
	"tenthpoint/internal/office/receipts"
	"tenthpoint/internal/office/rests"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/receipt"
)

// VoidWithChain cancels a ticket, and what rests on it follows in the same act: settlement sheets are
// void and made anew without it, payments go on to the sheets in place of those they were made on,
// grain that was moved on comes back.
func VoidWithChain(ctx context.Context, at Actor, number int64, reason string) error {
	return at.do(ctx, func(w *Batch) error { return voidIn(w, number, reason, true) })
}

// CorrectWithChain opens a load that corrects a ticket. What rests on the ticket follows when the new
// one is issued, which is a manager's act then.
func CorrectWithChain(ctx context.Context, at Actor, number int64, reason string) (string, error) {
	return result(ctx, at, func(w *Batch) (string, error) { return correctIn(w, number, reason, true) })
}

// RestsIn are the records that rest on a ticket as a batch has left the book so far.
func RestsIn(w *Batch, l *load.Load) ([]rests.Rest, error) {
	if err := w.renewRows(""); err != nil {
		return nil, err
	}
	return rests.On(w.tx, l)
}

// FollowedIn are the settlement sheets that followed a ticket that ended in a batch.
func FollowedIn(w *Batch, number int64) ([]rests.Remade, error) { return rests.Followed(w.tx, number) }

// mayEnd refuses to end a ticket alone that something rests on.
func mayEnd(w *Batch, l *load.Load) error {
	resting, err := RestsIn(w, l)
	if err != nil {
		return err
	}
	return rests.Refusal(l.Number, resting)
}

// follow lets what rests on a ticket follow it: next is the ticket in its place, nil where it is void.
func follow(w *Batch, old, next *load.Load, reason string, day quantity.Date) error {
	resting, err := RestsIn(w, old)
	if err != nil || len(resting) == 0 {
		return err
	}
	if err := w.desk.MayManage("Ending a ticket that others rest on"); err != nil {
		return err
	}
	back, err := rests.Back(w.tx, old, reason)
	if err != nil {
		return err
	}
	for _, m := range back {
		if _, err := MoveGrain(context.Background(), w, m); err != nil {
			return err
		}
	}
	if err := remakeSheets(w, money.Ended{Number: old.Number, Next: next}, reason, day); err != nil {
		return err
	}
	return remakeReceipts(w, old, next, reason, day)
}

// remakeReceipts cancels the warehouse receipts that a ticket is on, and issues others in their place:
// the ticket in its place takes its line, as far as it brings grain for it. A negotiable one may be in
// anybody's hands and is surrendered first.
func remakeReceipts(w *Batch, old, next *load.Load, reason string, day quantity.Date) error {
	all, err := RecordsIn[receipt.Receipt](w)
	if err != nil {
		return err
	}
	for _, was := range receipt.On(all, old.Number, "") {
		if was.Negotiable {
			return message.Refused.Errorf("warehouse receipt %d is negotiable and rests on ticket %d. Whoever holds it surrenders it first", was.Number, old.Number)
		}
		void, err := was.End(receipt.Ended{How: receipt.Cancelled, Day: day, By: w.desk.Signature(), Reason: reason})
		if err != nil {
			return err
		}
		if err := PutOwned(context.Background(), w, void.ID(), was, void); err != nil {
			return err
		}
		if err := reissueReceipt(w, was, old.Number, next, day); err != nil {
			return err
		}
	}
	return nil
}

// reissueReceipt issues a receipt in the place of one that was cancelled, if any line of it remains.
func reissueReceipt(w *Batch, was receipt.Receipt, ended int64, next *load.Load, day quantity.Date) error {
	all, err := RecordsIn[receipt.Receipt](w)
	if err != nil {
		return err
	}
	sheets, err := RecordsIn[paysheet.Sheet](w)
	if err != nil {
		return err
	}
	is := was
	is.Lines, is.Replaces, is.OldDay, is.Day, is.By = nil, was.Number, was.Day, day, w.desk.Signature()
	for _, line := range was.Lines {
		if line.Ticket == ended {
			fits := false
			if line, fits = receipts.LineAfter(line, next, was, receipts.Around{Receipts: all, Sheets: sheets}); !fits {
				continue
			}
		}
		is.Lines = append(is.Lines, line)
	}
	if len(is.Lines) == 0 {
		return nil
	}
	if is.Number, err = w.tx.NextNumber(numbering.Receipt); err != nil {
		return err
	}
	return PutOwned(context.Background(), w, is.ID(), nil, is)
}

// remakeSheets voids the settlement sheets that a ticket is on and makes each anew.
func remakeSheets(w *Batch, of money.Ended, reason string, day quantity.Date) error {
	all, err := RecordsIn[paysheet.Sheet](w)
	if err != nil {
		return err
	}
	around := money.Around{}
	if around.Contracts, err = RecordsIn[elevator.ContractTerms](w); err != nil {
		return err
	}
	resting := rests.Sheets(all, of.Number)
	end := &paysheet.Voided{Day: day, By: w.desk.Signature(), Reason: reason, Ticket: of.Number}
	for i := range all {
		if slices.ContainsFunc(resting, func(s paysheet.Sheet) bool { return s.Number == all[i].Number }) {
			all[i].Voided = end
		}
	}
	around.Sheets = all
	for _, was := range resting {
		made, err := remakeSheet(w, was, end, of, around)
		if err != nil {
			return err
		}
		around.Sheets = append(around.Sheets, made...)
	}
	return nil
}

// remakeSheet voids a sheet and makes it anew, if any line of it remains.
func remakeSheet(w *Batch, was paysheet.Sheet, end *paysheet.Voided, of money.Ended, around money.Around) (made []paysheet.Sheet, err error) {
	void := was
	void.Voided = end
	if err := PutOwned(context.Background(), w, was.ID(), was, void); err != nil {
		return nil, err
	}
	for _, line := range was.Lines {
		if line.Ticket == of.Number {
			continue
		}
		l, err := w.ticket(line.Ticket)
		if err != nil {
			return nil, err
		}
		around.Tickets = append(around.Tickets, l)
	}
	if of.Next != nil {
		around.Tickets = append(around.Tickets, of.Next)
	}
	next, left, err := money.Redraft(context.Background(), w.desk, was, of, end.Day, around)
	if err != nil || !left {
		return nil, err
	}
	if next.Number, err = w.tx.NextNumber(numbering.Sheet); err != nil {
		return nil, err
	}
	if err := PutOwned(context.Background(), w, next.ID(), nil, next); err != nil {
		return nil, err
	}
	return []paysheet.Sheet{next}, payOn(w, was.Number, next.Number)
}

// payOn lets payments go on from a sheet to the one in its place.
func payOn(w *Batch, was, is int64) error {
	payments, err := RecordsIn[paysheet.Payment](w)
	if err != nil {
		return err
	}
	for _, p := range payments {
		if !p.InForce() || p.Sheet != was {
			continue
		}
		p.Before, p.Sheet = was, is
		if err := SetRecord(context.Background(), w, p.ID(), p); err != nil {
			return err
		}
	}
	return nil
}

// PutOwned writes a record that moves grain between its owners, in place of another, or of nil.
func PutOwned(ctx context.Context, w *Batch, id string, was, is journal.Kinded) error {
	if err := SetRecord(ctx, w, id, is); err != nil {
		return err
	}
	return w.tx.MoveOwners(was, is)
}

// Try does acts and takes all of them back: it shows what would come of them.
func Try(ctx context.Context, d *Desk, acts func(*Batch) error) error {
	err := d.Batch(ctx, func(w *Batch) error {
		if err := acts(w); err != nil {
			return err
		}
		return tried{}
	})
	if errors.Is(err, tried{}) {
		return nil
	}
	return err
}

// tried ends acts that were only tried.
type tried struct{}

func (tried) Error() string { return "" }

// ProposeVoid lists the changes that would follow if a ticket were voided with what rests on it. Nothing is written.
func ProposeVoid(ctx context.Context, d *Desk, number int64, reason string) (follows []rests.Remade, err error) {
	err = Try(ctx, d, func(w *Batch) error {
		if err := voidIn(w, number, reason, true); err != nil {
			return err
		}
		follows, err = FollowedIn(w, number)
		return err
	})
	return follows, err
}
