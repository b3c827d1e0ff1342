package desk

import (
	"context"
	"encoding/json"
	"fmt"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/store"
	"tenthpoint/internal/working"
)

// meterRecord is a moisture meter as a standing thing.
type meterRecord struct{ meter.Meter }

// Kind names the fact in the journal.
func (meterRecord) Kind() string { return "bench.meter" }

const checkKind = "bench.check"

// SetMeter writes a moisture meter down.
func (d *Desk) SetMeter(ctx context.Context, m meter.Meter) error {
	if wrong := inWords(m.Check()); len(wrong) > 0 {
		return sentences(wrong)
	}
	return d.setStanding(ctx, m.ID, meterRecord{m})
}

// Meters are the elevator's moisture meters by id.
func (d *Desk) Meters(ctx context.Context) ([]meter.Meter, error) {
	all, err := standing[meterRecord](ctx, d.book)
	out := make([]meter.Meter, len(all))
	for i, m := range all {
		out[i] = m.Meter
	}
	return out, err
}

// CheckMeter writes a reference sample read on a meter down. Day and person
// are today and whoever is signed in, and the calibration is the meter's, where
// the check does not say.
func (d *Desk) CheckMeter(ctx context.Context, c meter.Check) error {
	if err := d.maySample(); err != nil {
		return err
	}
	m, err := d.Meter(ctx, c.Meter)
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
	if wrong := d.wrongCheck(m, c); len(wrong) > 0 {
		return wrong
	}
	known, err := d.Checks(ctx, c.Meter)
	if err != nil {
		return err
	}
	c.Seq = len(known) + 1
	body, err := journal.Canonical(c)
	if err != nil {
		return err
	}
	return d.one(ctx, func(w *Work) error {
		_, err := w.tx.Append(w.draft(checkKind, "meter "+c.Meter, body))
		return err
	})
}

// wrongCheck lists everything wrong with a check of a meter.
func (d *Desk) wrongCheck(m meter.Meter, c meter.Check) sentences {
	wrong := sentences(inWords(c.Faults()))
	if c.Day.After(d.Today()) {
		wrong = append(wrong, fmt.Sprintf("the check is of %s, and today is %s. Write the day the meter was read", c.Day, d.Today()))
	}
	if c.Calibration != m.Calibration {
		wrong = append(wrong, fmt.Sprintf("the check is of calibration %q and meter %s is set to %q. Enter the meter's new calibration first, or mend the check", c.Calibration, m.ID, m.Calibration))
	}
	if _, err := grain.ByID(c.Crop); c.Crop != "" && err != nil {
		wrong = append(wrong, err.Error())
	}
	return wrong
}

// Checks are all reference samples read on a meter, in the order written down.
func (d *Desk) Checks(ctx context.Context, meterID string) ([]meter.Check, error) {
	var out []meter.Check
	for f, err := range d.book.Facts(ctx, store.Filter{Subject: "meter " + meterID, Kind: checkKind}) {
		if err != nil {
			return nil, err
		}
		var c meter.Check
		if err := json.Unmarshal(f.Body, &c); err != nil {
			return nil, fmt.Errorf("fact %d, a check of meter %s, cannot be read: %w", f.Seq, meterID, err)
		}
		out = append(out, c)
	}
	return out, nil
}

// MeterStands is how a meter stands with its checks today.
func (d *Desk) MeterStands(ctx context.Context, m meter.Meter) (meter.Status, error) {
	checks, err := d.Checks(ctx, m.ID)
	if err != nil {
		return meter.Status{}, err
	}
	setup, err := d.BenchSetup(ctx)
	if err != nil {
		return meter.Status{}, err
	}
	authority, err := setup.authority()
	if err != nil {
		return meter.Status{}, err
	}
	rule := meter.CheckRule{Authority: authority, EveryDays: setup.EveryDays, WarnDays: setup.WarnDays}
	return meter.StatusOn(m, checks, rule, d.Today()), nil
}

// MeterBias works out how far off a meter reads, over its last so many checks.
func (d *Desk) MeterBias(ctx context.Context, m meter.Meter, last int) (meter.Bias, *working.Sheet, error) {
	checks, err := d.Checks(ctx, m.ID)
	if err != nil {
		return meter.Bias{}, nil, err
	}
	s := &working.Sheet{}
	bias, err := meter.WorkBias(s, meter.ChecksOf(m, checks, d.Today()), last)
	return bias, s, err
}
