package scalehouse

import (
	"context"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/truckscale"
)

// LogScale adds an entry to the log of a truck scale, signed by the person signed in, and dated
// today where it has no day.
func LogScale(ctx context.Context, at Actor, scale string, entry truckscale.Fact) error {
	return at.do(ctx, func(w *Batch) error {
		f := truckscale.Signed(entry, w.desk.Today(), w.desk.who.Name)
		if err := mayLog(w, scale, f); err != nil {
			return err
		}
		switch f := f.(type) {
		case truckscale.Certificate:
			f.Scale = scale
			return SetRecord(ctx, w, scale, f)
		case truckscale.Service:
			f.Scale = scale
			return SetRecord(ctx, w, scale, f)
		}
		body, err := journal.Canonical(f)
		if err != nil {
			return err
		}
		_, err = enterFact(w, w.draft(f.Kind(), truckscale.Subject(scale), body))
		return err
	})
}

// mayLog returns why an entry cannot be recorded.
func mayLog(w *Batch, scale string, f truckscale.Fact) error {
	if err := w.desk.mayWeigh("write into the log of a scale"); err != nil {
		return err
	}
	ours, known := w.desk.profile.Scale(scale)
	if !known {
		return message.NotFound.Errorf("there is no scale %s at this elevator. Name one that is set up, or add it in the set-up", scale)
	}
	if c, is := f.(truckscale.Compared); is {
		if _, known := w.desk.profile.Scale(c.Other); !known || c.Other == scale {
			return message.NotFound.Errorf("scale %v is not another scale of this elevator. Two scales are compared by one truck", c.Other)
		}
	}
	if today := w.desk.Today(); f.On().After(today) {
		return message.Refused.Errorf("the entry is of %s, and today is %s. Write the day the scale was looked at", f.On(), today)
	}
	if unit, given := truckscale.UnitOf(f); given && unit != ours.Division.Unit() {
		return message.Invalid.Errorf("scale %s weighs in %s", scale, ours.Division.Unit())
	}
	return f.Check()
}

// inService refuses a weight from a scale that is out of service. A stored tare was
// taken before.
func inService(w *Batch, weighing load.Weighing) error {
	if weighing.Source == load.StoredTare {
		return nil
	}
	rows, err := w.tx.Records(truckscale.Service{}.Kind())
	if err != nil {
		return err
	}
	all, err := office.ReadRecords[truckscale.Service](rows)
	if err != nil {
		return err
	}
	for _, s := range all {
		if s.Scale == weighing.Scale && s.Out {
			return message.Refused.Errorf("scale %s is out of service since %s: %v. No weight is taken from it; a manager puts it back", s.Scale, s.Day, s.Reason)
		}
	}
	return nil
}
