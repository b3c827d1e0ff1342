package instruments

import (
	"context"

	"tenthpoint/internal/message"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/truckscale"
)

// LogScale adds an entry to the log of a truck scale, signed by the person signed in, and dated
// today where it has no day.
func LogScale(ctx context.Context, at scalehouse.Actor, scale string, entry truckscale.Fact) error {
	return scalehouse.Do(ctx, at, func(w *scalehouse.Batch) error {
		f := truckscale.Signed(entry, w.Desk().Today(), w.Desk().Who().Name)
		if err := mayLog(w, scale, f); err != nil {
			return err
		}
		switch f := f.(type) {
		case truckscale.Certificate:
			f.Scale = scale
			return scalehouse.SetRecord(ctx, w, scale, f)
		case truckscale.Service:
			f.Scale = scale
			return scalehouse.SetRecord(ctx, w, scale, f)
		}
		return scalehouse.AppendIn(w, f.Kind(), truckscale.Subject(scale), f)
	})
}

// mayLog returns why an entry cannot be recorded.
func mayLog(w *scalehouse.Batch, scale string, f truckscale.Fact) error {
	if err := w.Desk().MayWeigh("write into the log of a scale"); err != nil {
		return err
	}
	ours, known := w.Desk().Profile().Scale(scale)
	if !known {
		return message.NotFound.Errorf("there is no scale %s at this elevator. Name one that is set up, or add it in the set-up", scale)
	}
	if c, is := f.(truckscale.Compared); is {
		if _, known := w.Desk().Profile().Scale(c.Other); !known || c.Other == scale {
			return message.NotFound.Errorf("scale %v is not another scale of this elevator. Two scales are compared by one truck", c.Other)
		}
	}
	if today := w.Desk().Today(); f.On().After(today) {
		return message.Refused.Errorf("the entry is of %s, and today is %s. Write the day the scale was looked at", f.On(), today)
	}
	if unit, given := truckscale.UnitOf(f); given && unit != ours.Division.Unit() {
		return message.Invalid.Errorf("scale %s weighs in %s", scale, ours.Division.Unit())
	}
	return f.Check()
}
