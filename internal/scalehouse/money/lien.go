package money

import (
	"context"
	"slices"
	"strings"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/scalehouse"
)

// AddLien writes down a notice of lien that was received: a manager's act.
func AddLien(ctx context.Context, at scalehouse.Actor, l paysheet.Lien) (paysheet.Lien, error) {
	err := scalehouse.Do(ctx, at, func(w *scalehouse.Batch) error {
		if err := w.Desk().MayManage("Writing a lien down"); err != nil {
			return err
		}
		l.By = w.Desk().Signature()
		before, err := scalehouse.RecordsIn[paysheet.Lien](w)
		if err != nil {
			return err
		}
		l.Number = 1
		for _, one := range before {
			l.Number = max(l.Number, one.Number+1)
		}
		if err := l.Check(); err != nil {
			return err
		}
		return scalehouse.SetRecord(ctx, w, l.ID(), l)
	})
	return l, err
}

// EndLien ends a notice that was released or written down wrongly: a manager's act.
func EndLien(ctx context.Context, at scalehouse.Actor, number int64, reason string) error {
	if reason = strings.TrimSpace(reason); reason == "" {
		return message.Invalid.Errorf("a notice of lien is ended for a reason; write it")
	}
	return end(ctx, at, func(d *scalehouse.Desk, all []paysheet.Lien) (paysheet.Lien, error) {
		if err := d.MayManage("Ending a lien"); err != nil {
			return paysheet.Lien{}, err
		}
		at := slices.IndexFunc(all, func(l paysheet.Lien) bool { return l.Number == number })
		switch {
		case at < 0:
			return paysheet.Lien{}, message.NotFound.Errorf("there is no notice of lien %d here", number)
		case all[at].Ended != nil:
			return paysheet.Lien{}, message.Refused.Errorf("notice of lien %d ended on %s", number, all[at].Ended.Day)
		}
		all[at].Ended = &paysheet.Voided{Day: d.Today(), By: d.Signature(), Reason: reason}
		return all[at], nil
	})
}

// record is a fact that is kept by its name.
type record interface {
	journal.Kinded
	ID() string
}

// end writes the one among all records of a kind that a function picks and ends.
func end[F record](ctx context.Context, at scalehouse.Actor, ended func(d *scalehouse.Desk, all []F) (F, error)) error {
	return scalehouse.Do(ctx, at, func(w *scalehouse.Batch) error {
		all, err := scalehouse.RecordsIn[F](w)
		if err != nil {
			return err
		}
		one, err := ended(w.Desk(), all)
		if err != nil {
			return err
		}
		return scalehouse.SetRecord(ctx, w, one.ID(), one)
	})
}
