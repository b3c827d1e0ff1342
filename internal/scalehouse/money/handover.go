package money

import (
	"context"
	"slices"
	"strings"

	"tenthpoint/internal/message"
	office "tenthpoint/internal/office/money"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/scalehouse"
)

// HandOn writes down what was handed on of a levy: a manager's act. Without an amount it is all that is
// owed of sheets up to the day it is through.
func HandOn(ctx context.Context, d *scalehouse.Desk, h paysheet.Handover) (paysheet.Handover, error) {
	if err := d.MayManage("Handing a levy on"); err != nil {
		return h, err
	}
	h.By = d.Signature()
	if h.Day.After(d.Today()) {
		return h, message.Refused.Errorf("the payment is of %s, and today is %s. Write it down when it is made", h.Day, d.Today())
	}
	owed, err := office.OwedOf(ctx, d, h.Levy, h.Through)
	if err != nil {
		return h, err
	}
	err = d.Batch(ctx, func(w *scalehouse.Batch) error {
		if err := scalehouse.OpenDay(w, h.Day); err != nil {
			return err
		}
		before, err := scalehouse.RecordsIn[paysheet.Handover](w)
		if err != nil {
			return err
		}
		left := owed.Taken.Sub(paysheet.HandedOn(before, h.Levy))
		if h.Amount.IsZero() {
			h.Amount = left
		}
		if left.Sign() <= 0 || h.Amount.More(left) {
			return message.Refused.Errorf("of the levy %v %s is to be handed on through %s, and %s is more", h.Levy, left, h.Through, h.Amount)
		}
		h.Number = 1
		for _, one := range before {
			if one.Levy == h.Levy {
				h.Number = max(h.Number, one.Number+1)
			}
		}
		if err := h.Check(); err != nil {
			return err
		}
		return scalehouse.SetRecord(ctx, w, h.ID(), h)
	})
	return h, err
}

// VoidHandover ends a handover that was stopped or written down wrongly: a manager's act.
func VoidHandover(ctx context.Context, d *scalehouse.Desk, levy string, number int64, reason string) error {
	if err := d.MayManage("Taking a handover back"); err != nil {
		return err
	}
	if reason = strings.TrimSpace(reason); reason == "" {
		return message.Invalid.Errorf("a handover is taken back for a reason; write it")
	}
	return end(ctx, d, func(d *scalehouse.Desk, all []paysheet.Handover) (paysheet.Handover, error) {
		at := slices.IndexFunc(all, func(h paysheet.Handover) bool { return h.Levy == levy && h.Number == number })
		switch {
		case at < 0:
			return paysheet.Handover{}, message.NotFound.Errorf("there is no handover %d of the levy %v here", number, levy)
		case !all[at].InForce():
			return paysheet.Handover{}, message.Refused.Errorf("handover %d of the levy %v is void since %s", number, levy, all[at].Voided.Day)
		}
		all[at].Voided = &paysheet.Voided{Day: d.Today(), By: d.Signature(), Reason: reason}
		return all[at], nil
	})
}
