// Package openings has the acts by which a house begins its books here: the opening with its balances,
// the act that takes it back, and the numbers with which the series begin. Each is a manager's, whole
// or not at all. The ideas are in package opening.
package openings

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/office/rests"
	"tenthpoint/internal/opening"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/receipt"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/money"
	"tenthpoint/internal/scalehouse/restoring"
)

// Enter opens the books: grain goes into the bins, lots get their numbers, receipts that are out stand
// in the series, and the owners of the grain in their lines.
func Enter(ctx context.Context, d *scalehouse.Desk, o opening.Opening) (opening.Opening, error) {
	if err := d.MayManage("Opening the books"); err != nil {
		return o, err
	}
	err := d.Batch(ctx, func(w *scalehouse.Batch) error {
		all, err := scalehouse.RecordsIn[opening.Opening](w)
		if err != nil {
			return err
		}
		if was, open := opening.InForce(all); open {
			return message.Refused.Errorf("the books were opened on %s by %v. Take that opening back before another is entered", was.Day, was.By)
		}
		if err := scalehouse.OpenDay(w, o.Day); err != nil {
			return err
		}
		o, err = enter(ctx, w, o, int64(len(all)+1))
		return err
	})
	return o, err
}

// enter enters an opening under its number. It leaves the caller's value as it is: an act may run again.
func enter(ctx context.Context, w *scalehouse.Batch, o opening.Opening, number int64) (opening.Opening, error) {
	o.Number, o.By = number, w.Desk().Signature()
	o.Lying, o.Lots = slices.Clone(o.Lying), slices.Clone(o.Lots)
	o.Advances, o.Liens = slices.Clone(o.Advances), slices.Clone(o.Liens)
	if err := o.Check(); err != nil {
		return o, err
	}
	for i := range o.Lots {
		n, err := scalehouse.NextIn(w, numbering.Opening)
		if err != nil {
			return o, err
		}
		o.Lots[i].Number = opening.First - 1 + n
	}
	for i := range o.Advances {
		n, err := scalehouse.NextIn(w, numbering.Opening)
		if err != nil {
			return o, err
		}
		o.Advances[i].Number = opening.First - 1 + n
	}
	if err := enterLiens(ctx, w, &o); err != nil {
		return o, err
	}
	for i, l := range o.Lying {
		m, err := scalehouse.MoveGrain(ctx, w, o.Puts(l))
		if err != nil {
			return o, err
		}
		o.Lying[i].Movement = m.Number
	}
	if err := scalehouse.PutOwned(ctx, w, o.ID(), nil, o); err != nil {
		return o, err
	}
	return o, issue(ctx, w, o)
}

// enterLiens writes the notices of lien into the register.
func enterLiens(ctx context.Context, w *scalehouse.Batch, o *opening.Opening) error {
	for i, n := range o.Liens {
		made, err := money.AddLien(ctx, w, paysheet.Lien{
			Grower: n.Grower, Holder: n.Holder, Commodity: n.Commodity, Filed: n.Since, Until: n.Until, Reference: n.Paper,
		})
		if err != nil {
			return err
		}
		o.Liens[i].Number = made.Number
	}
	return nil
}

// issue writes the receipts that are out, and moves the series of receipts on behind them. One whose
// number the book has, because an opening was taken back, is replaced by another.
func issue(ctx context.Context, w *scalehouse.Batch, o opening.Opening) error {
	old, err := scalehouse.RecordsIn[receipt.Receipt](w)
	if err != nil {
		return err
	}
	out := o.Receipts()
	for _, r := range out {
		if slices.ContainsFunc(old, func(was receipt.Receipt) bool { return was.Number == r.Number && was.InForce() }) {
			return message.Refused.Errorf("warehouse receipt %d is in force in this book already. Look at its number again", r.Number)
		}
	}
	if len(out) > 0 {
		if err := passReceipts(ctx, w, out[len(out)-1].Number, o.Reason, old); err != nil {
			return err
		}
	}
	for _, r := range out {
		if slices.ContainsFunc(old, func(was receipt.Receipt) bool { return was.Number == r.Number }) {
			r.Replaces = r.Number
			if r.Number, err = scalehouse.NextIn(w, numbering.Receipt); err != nil {
				return err
			}
		}
		if err := scalehouse.PutOwned(ctx, w, r.ID(), nil, r); err != nil {
			return err
		}
	}
	return nil
}

// passReceipts moves the series of receipts on behind the last one that is out; where it is there
// already it stays.
func passReceipts(ctx context.Context, w *scalehouse.Batch, last int64, reason string, old []receipt.Receipt) error {
	passed, err := scalehouse.RecordsIn[numbering.Passed](w)
	if err != nil {
		return err
	}
	given := int64(0)
	for _, r := range old {
		given = max(given, r.Number)
	}
	for _, p := range passed {
		if p.Series == numbering.Receipt {
			given = max(given, p.Last)
		}
	}
	if last <= given {
		return nil
	}
	_, err = restoring.PassIn(ctx, w, numbering.Passed{Series: numbering.Receipt, Last: last, Reason: reason, Earlier: true})
	return err
}

// TakeBack takes the opening in force back on today's business day: the grain leaves the bins, the
// owners their lines, the receipts are cancelled. Nothing else may rest on its lots.
func TakeBack(ctx context.Context, d *scalehouse.Desk, reason string) (o opening.Opening, err error) {
	if err := d.MayManage("Taking the opening back"); err != nil {
		return o, err
	}
	if reason = strings.TrimSpace(reason); reason == "" {
		return o, message.Incomplete.Errorf("the opening is taken back for a reason; write it")
	}
	err = d.Batch(ctx, func(w *scalehouse.Batch) error {
		all, err := scalehouse.RecordsIn[opening.Opening](w)
		if err != nil {
			return err
		}
		was, open := opening.InForce(all)
		if !open {
			return message.NotFound.Errorf("the books were opened without balances; there is nothing to take back")
		}
		day, err := w.BusinessDay()
		if err != nil {
			return err
		}
		o, err = takeBack(ctx, w, was, opening.Ended{Day: day, By: d.Signature(), Reason: reason})
		return err
	})
	return o, err
}

func takeBack(ctx context.Context, w *scalehouse.Batch, was opening.Opening, e opening.Ended) (opening.Opening, error) {
	if err := mayEnd(w, was); err != nil {
		return was, err
	}
	if err := cancel(ctx, w, was, e); err != nil {
		return was, err
	}
	for _, n := range was.Liens {
		if err := money.EndLien(ctx, w, n.Number, e.Reason); err != nil && !errors.Is(err, message.Refused) { // it may have ended since
			return was, err
		}
	}
	for _, l := range slices.Backward(was.Lying) { // what lies on top leaves first
		if _, err := scalehouse.UndoOpened(ctx, w, l.Movement, e.Reason); err != nil {
			return was, err
		}
	}
	is := was
	is.Ended = &e
	return is, scalehouse.PutOwned(ctx, w, is.ID(), was, is)
}

// mayEnd refuses an opening on whose lots anything rests beside the receipts it came with.
func mayEnd(w *scalehouse.Batch, o opening.Opening) error {
	own, err := cameWith(w, o)
	if err != nil {
		return err
	}
	sheets, err := scalehouse.RecordsIn[paysheet.Sheet](w)
	if err != nil {
		return err
	}
	for _, a := range o.Advances {
		if s, taken := paysheet.AdvanceTakenBy(sheets, a.Number); taken {
			return message.Refused.Errorf("the advance %d of %v was taken by settlement sheet %d. Void that sheet first", a.Number, a.Name, s.Number)
		}
	}
	for _, l := range o.Lots {
		all, err := scalehouse.RestsIn(w, o.Load(l))
		if err != nil {
			return err
		}
		all = slices.DeleteFunc(all, func(r rests.Rest) bool {
			return r.Kind == rests.Receipt && slices.ContainsFunc(own, func(one receipt.Receipt) bool { return r.Number == fmt.Sprint(one.Number) })
		})
		if err := rests.Refusal(l.Number, all); err != nil {
			return err
		}
	}
	return nil
}

// cameWith are the receipts in force that an opening wrote: on its lots, from the day of the opening.
func cameWith(w *scalehouse.Batch, o opening.Opening) ([]receipt.Receipt, error) {
	all, err := scalehouse.RecordsIn[receipt.Receipt](w)
	out := o.Receipts()
	return slices.DeleteFunc(all, func(r receipt.Receipt) bool {
		return !r.InForce() || !slices.ContainsFunc(out, func(was receipt.Receipt) bool {
			return r.Day == was.Day && (r.Number == was.Number || r.Replaces == was.Number)
		})
	}), err
}

// cancel cancels the receipts that an opening came with.
func cancel(ctx context.Context, w *scalehouse.Batch, o opening.Opening, e opening.Ended) error {
	own, err := cameWith(w, o)
	if err != nil {
		return err
	}
	for _, was := range own {
		is, err := was.End(receipt.Ended{How: receipt.Cancelled, Day: e.Day, By: e.By, Reason: e.Reason})
		if err != nil {
			return err
		}
		if err := scalehouse.PutOwned(ctx, w, is.ID(), was, is); err != nil {
			return err
		}
	}
	return nil
}

// StartAt lets series begin at stated numbers: the books before gave out all numbers below.
func StartAt(ctx context.Context, d *scalehouse.Desk, first map[string]int64, reason string) (out []numbering.Passed, err error) {
	if err := d.MayManage("Saying where numbers begin"); err != nil {
		return nil, err
	}
	if len(first) == 0 {
		return nil, message.Incomplete.Errorf("no number is given. Give the first one of tickets, samples, settlement sheets, payments or receipts")
	}
	err = d.Batch(ctx, func(w *scalehouse.Batch) error {
		out = nil
		for _, series := range numbering.OnPaper {
			number, given := first[series]
			if !given {
				continue
			}
			p, err := restoring.PassIn(ctx, w, numbering.Passed{Series: series, Last: number - 1, Reason: strings.TrimSpace(reason), Earlier: true})
			if err != nil {
				return err
			}
			out = append(out, p)
		}
		return nil
	})
	return out, err
}
