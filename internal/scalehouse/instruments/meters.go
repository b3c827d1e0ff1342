package instruments

import (
	"context"
	"errors"
	"slices"
	"strings"

	"tenthpoint/internal/fault"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
)

// SetMeter records a moisture meter.
func SetMeter(ctx context.Context, at scalehouse.Actor, m meter.Meter) error {
	if wrong := errors.Join(m.Check()...); wrong != nil {
		return wrong
	}
	return scalehouse.SetRecord(ctx, at, m.ID, office.MeterRecord{Meter: m})
}

// CheckMeter records a round of reference samples read on a meter, all of them or none. Where a check
// leaves them out, the day is today, the person the one signed in, the calibration the meter's, and
// the reading what the chart makes of the dial.
func CheckMeter(ctx context.Context, d *scalehouse.Desk, round ...meter.Check) error {
	if err := scalehouse.MaySample(d); err != nil {
		return err
	}
	for i := range round {
		if err := completeCheck(ctx, d, &round[i]); err != nil {
			return err
		}
	}
	return d.Batch(ctx, func(w *scalehouse.Batch) error {
		for _, c := range round {
			all, _, err := checksOf(w, c.Meter)
			if err != nil {
				return err
			}
			c.Seq = len(all) + 1
			if err := writeOfMeter(w, office.MeterCheckKind, c.Meter, c); err != nil {
				return err
			}
		}
		return nil
	})
}

// completeCheck fills in what a check leaves out, and refuses one that cannot be.
func completeCheck(ctx context.Context, d *scalehouse.Desk, c *meter.Check) error {
	m, err := office.MeterByID(ctx, d, c.Meter)
	if err != nil {
		return err
	}
	if c.Day.IsZero() {
		c.Day = d.Today()
	}
	if c.By == "" {
		c.By = d.Who().Name
	}
	if c.Calibration == "" {
		c.Calibration = m.Calibration
	}
	if quantity.Recorded(c.Dial) {
		tools, err := office.Equipment(ctx, d)
		if err != nil {
			return err
		}
		if *c, err = tools.DialCheck(*c); err != nil {
			return err
		}
	}
	if wrong := wrongCheck(d, m, *c); wrong != nil {
		return wrong
	}
	return nil
}

// checksOf are the checks of a meter and those of them withdrawn, this write included.
func checksOf(w *scalehouse.Batch, meterID string) ([]meter.Check, []meter.Withdrawal, error) {
	facts, err := scalehouse.FactsIn(w, meterSubject(meterID))
	if err != nil {
		return nil, nil, err
	}
	return office.ReadChecks(facts)
}

// writeOfMeter appends a fact about a meter.
func writeOfMeter(w *scalehouse.Batch, kind, meterID string, f any) error {
	return scalehouse.AppendIn(w, kind, meterSubject(meterID), f)
}

func meterSubject(meterID string) string { return "meter " + meterID }

// WithdrawCheck takes a check of a meter back that was written down by mistake: a manager's act, with a
// reason. The check stays in the book and counts nowhere.
func WithdrawCheck(ctx context.Context, d *scalehouse.Desk, meterID string, seq int, reason string) error {
	if err := d.MayManage("Withdrawing a check of a meter"); err != nil {
		return err
	}
	if strings.TrimSpace(reason) == "" {
		return message.Invalid.Errorf("a check is withdrawn for a reason; write what was wrong with it")
	}
	return d.Batch(ctx, func(w *scalehouse.Batch) error {
		all, withdrawn, err := checksOf(w, meterID)
		if err != nil {
			return err
		}
		if !slices.ContainsFunc(meter.InForce(all, withdrawn), func(c meter.Check) bool { return c.Seq == seq }) {
			return message.NotFound.Errorf("meter %s has no check %d that stands. Look its number up in the log of the meter", meterID, seq)
		}
		return writeOfMeter(w, office.MeterWithdrawnKind, meterID, meter.Withdrawal{
			Meter: meterID, Seq: seq, Day: d.Today(), By: d.Who().Name, Reason: strings.TrimSpace(reason),
		})
	})
}

// StartMeter records the check of a meter before the first test of a day; day and person default to
// today and the person signed in.
func StartMeter(ctx context.Context, at scalehouse.Actor, c meter.StartCheck) error {
	return scalehouse.Do(ctx, at, func(w *scalehouse.Batch) error {
		if err := scalehouse.MaySample(w.Desk()); err != nil {
			return err
		}
		if _, err := office.MeterByID(ctx, w.Desk(), c.Meter); err != nil {
			return err
		}
		if c.Day.IsZero() {
			c.Day = w.Desk().Today()
		}
		if c.By == "" {
			c.By = w.Desk().Who().Name
		}
		if wrong := errors.Join(c.Faults()...); wrong != nil {
			return wrong
		}
		if today := w.Desk().Today(); c.Day.After(today) {
			return message.Refused.Errorf("the check is of %s, and today is %s. Write the day the meter was read", c.Day, today)
		}
		return writeOfMeter(w, office.MeterStartKind, c.Meter, c)
	})
}

// wrongCheck is everything wrong with a check of a meter.
func wrongCheck(d *scalehouse.Desk, m meter.Meter, c meter.Check) error {
	faults := fault.List(c.Faults())
	faults.Unless(!c.Day.After(d.Today()), "the check is of %s, and today is %s. Write the day the meter was read", c.Day, d.Today())
	faults.Unless(c.Calibration == m.Calibration,
		"the check is of calibration %q and meter %v is set to %q. Enter the meter's new calibration first, or mend the check", c.Calibration, m.ID, m.Calibration)
	if _, err := grain.ByID(c.Crop); c.Crop != "" && err != nil {
		faults = append(faults, err)
	}
	return errors.Join(faults...)
}
