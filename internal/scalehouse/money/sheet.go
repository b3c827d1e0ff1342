package money

import (
	"context"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/office/money"
	"tenthpoint/internal/opening"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/receipt"
	"tenthpoint/internal/scalehouse"
)

// Settle makes a settlement sheet: a manager's act, whole or not at all.
func Settle(ctx context.Context, d *scalehouse.Desk, o paysheet.Order) (s paysheet.Sheet, worked paysheet.Worked, err error) {
	if err := d.MayManage("Settling up"); err != nil {
		return s, worked, err
	}
	err = d.Batch(ctx, func(w *scalehouse.Batch) error {
		if err := scalehouse.OpenDay(w, o.Day); err != nil {
			return err
		}
		around, err := aroundIn(w, o)
		if err != nil {
			return err
		}
		if s, worked, err = money.Draft(ctx, d, o, around); err != nil {
			return err
		}
		if s.Number, err = scalehouse.NextIn(w, numbering.Sheet); err != nil {
			return err
		}
		if err := keepRules(w, o); err != nil {
			return err
		}
		return scalehouse.PutOwned(ctx, w, s.ID(), nil, s)
	})
	return s, worked, err
}

// aroundIn reads what a sheet is drafted from, inside the transaction.
func aroundIn(w *scalehouse.Batch, o paysheet.Order) (money.Around, error) {
	var around money.Around
	for _, chosen := range o.Tickets {
		l, err := scalehouse.TicketIn(w, chosen.Number)
		if err != nil {
			return around, err
		}
		around.Tickets = append(around.Tickets, l)
	}
	var err error
	if around.Sheets, around.Payments, err = moneyIn(w); err != nil {
		return around, err
	}
	if around.Receipts, err = scalehouse.RecordsIn[receipt.Receipt](w); err != nil {
		return around, err
	}
	if around.Liens, err = scalehouse.RecordsIn[paysheet.Lien](w); err != nil {
		return around, err
	}
	if around.Openings, err = scalehouse.RecordsIn[opening.Opening](w); err != nil {
		return around, err
	}
	around.Contracts, err = scalehouse.RecordsIn[elevator.ContractTerms](w)
	return around, err
}

// keepRules keeps the texts a sheet is worked by.
func keepRules(w *scalehouse.Batch, o paysheet.Order) error {
	if err := scalehouse.KeepIn(w, o.Tariff.ID, o.Tariff.Hash, o.Tariff.Text); err != nil {
		return err
	}
	for _, l := range o.Levies {
		if err := scalehouse.KeepIn(w, l.ID, l.Hash, l.Text); err != nil {
			return err
		}
	}
	return nil
}

// VoidSheet ends a settlement sheet: a manager's act. Its number stays with it.
func VoidSheet(ctx context.Context, d *scalehouse.Desk, number int64, reason string) error {
	if err := d.MayManage("Voiding a settlement sheet"); err != nil {
		return err
	}
	if reason = strings.TrimSpace(reason); reason == "" {
		return message.Invalid.Errorf("a settlement sheet is voided for a reason; write it")
	}
	return d.Batch(ctx, func(w *scalehouse.Batch) error {
		all, err := scalehouse.RecordsIn[paysheet.Sheet](w)
		if err != nil {
			return err
		}
		for _, s := range all {
			switch {
			case s.Number != number:
				continue
			case !s.InForce():
				return message.Refused.Errorf("settlement sheet %d is void since %s", number, s.Voided.Day)
			}
			if err := unpaid(w, number); err != nil {
				return err
			}
			void := s
			void.Voided = &paysheet.Voided{Day: d.Today(), By: d.Signature(), Reason: reason}
			return scalehouse.PutOwned(ctx, w, s.ID(), s, void)
		}
		return message.NotFound.Errorf("there is no settlement sheet %d here", number)
	})
}
