package scalehouse

import (
	"context"
	"errors"

	"tenthpoint/internal/fault"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
)

// SetMeter records a moisture meter.
func SetMeter(ctx context.Context, at Actor, m meter.Meter) error {
	if wrong := errors.Join(m.Check()...); wrong != nil {
		return wrong
	}
	return SetRecord(ctx, at, m.ID, office.MeterRecord{Meter: m})
}

// CheckMeter records a reference sample read on a meter. Where the check leaves them out, the day
// is today, the person the one signed in, and the calibration the meter's.
func CheckMeter(ctx context.Context, d *Desk, c meter.Check) error {
	if err := d.maySample(); err != nil {
		return err
	}
	m, err := office.MeterByID(ctx, d, c.Meter)
	if err != nil {
		return err
	}
	if c.Day.IsZero() {
		c.Day = d.Today()
	}
	if c.By == "" {
		c.By = d.who.Name
	}
	if c.Calibration == "" {
		c.Calibration = m.Calibration
	}
	if wrong := wrongCheck(d, m, c); wrong != nil {
		return wrong
	}
	known, err := office.MeterChecks(ctx, d, c.Meter)
	if err != nil {
		return err
	}
	c.Seq = len(known) + 1
	body, err := journal.Canonical(c)
	if err != nil {
		return err
	}
	return d.do(ctx, func(w *Batch) error {
		_, err := enterFact(w.tx, w.draft(office.MeterCheckKind, "meter "+c.Meter, body))
		return err
	})
}

// StartMeter records the check of a meter before the first test of a day; day and person default to
// today and the person signed in.
func StartMeter(ctx context.Context, at Actor, c meter.StartCheck) error {
	return at.do(ctx, func(w *Batch) error {
		if err := w.desk.maySample(); err != nil {
			return err
		}
		if _, err := office.MeterByID(ctx, w.desk, c.Meter); err != nil {
			return err
		}
		if c.Day.IsZero() {
			c.Day = w.desk.Today()
		}
		if c.By == "" {
			c.By = w.desk.who.Name
		}
		if wrong := errors.Join(c.Faults()...); wrong != nil {
			return wrong
		}
		if today := w.desk.Today(); c.Day.After(today) {
			return message.Refused.Errorf("the check is of %s, and today is %s. Write the day the meter was read", c.Day, today)
		}
		body, err := journal.Canonical(c)
		if err != nil {
			return err
		}
		_, err = enterFact(w.tx, w.draft(office.MeterStartKind, "meter "+c.Meter, body))
		return err
	})
}

// wrongCheck is everything wrong with a check of a meter.
func wrongCheck(d *Desk, m meter.Meter, c meter.Check) error {
	faults := fault.List(c.Faults())
	faults.Unless(!c.Day.After(d.Today()), "the check is of %s, and today is %s. Write the day the meter was read", c.Day, d.Today())
	faults.Unless(c.Calibration == m.Calibration,
		"the check is of calibration %q and meter %v is set to %q. Enter the meter's new calibration first, or mend the check", c.Calibration, m.ID, m.Calibration)
	if _, err := grain.ByID(c.Crop); c.Crop != "" && err != nil {
		faults = append(faults, err)
	}
	return errors.Join(faults...)
}
