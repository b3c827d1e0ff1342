package desk

import (
	"context"
	"encoding/json"
	"fmt"

	"tenthpoint/internal/bench"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/store"
	"tenthpoint/internal/working"
)

// meter is a moisture meter as a standing thing.
type meter struct{ bench.Meter }

// Kind names the fact in the journal.
func (meter) Kind() string { return "bench.meter" }

const checkKind = "bench.check"

// SetMeter writes a moisture meter down.
func SetMeter(ctx context.Context, at Actor, m bench.Meter) error {
	if wrong := inWords(m.Check()); len(wrong) > 0 {
		return sentences(wrong)
	}
	return SetRecord(ctx, at, m.ID, meter{m})
}

// Meters are the elevator's moisture meters by id.
func Meters(ctx context.Context, d *Desk) ([]bench.Meter, error) {
	all, err := standing[meter](ctx, d.book)
	out := make([]bench.Meter, len(all))
	for i, m := range all {
		out[i] = m.Meter
	}
	return out, err
}

// CheckMeter writes a reference sample read on a meter down. Day and person
// are today and whoever is signed in, and the calibration is the meter's, where
// the check does not say.
func CheckMeter(ctx context.Context, d *Desk, c bench.Check) error {
	if err := d.maySample(); err != nil {
		return err
	}
	m, err := MeterByID(ctx, d, c.Meter)
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
	if wrong := wrongCheck(d, m, c); len(wrong) > 0 {
		return wrong
	}
	known, err := MeterChecks(ctx, d, c.Meter)
	if err != nil {
		return err
	}
	c.Seq = len(known) + 1
	body, err := journal.Canonical(c)
	if err != nil {
		return err
	}
	return d.do(ctx, func(w *Batch) error {
		_, err := w.tx.Append(w.draft(checkKind, "meter "+c.Meter, body))
		return err
	})
}

// wrongCheck lists everything wrong with a check of a meter.
func wrongCheck(d *Desk, m bench.Meter, c bench.Check) sentences {
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

// MeterChecks are all reference samples read on a meter, in the order written down.
func MeterChecks(ctx context.Context, d *Desk, meterID string) ([]bench.Check, error) {
	var out []bench.Check
	for f, err := range d.book.Facts(ctx, store.Filter{Subject: "meter " + meterID, Kind: checkKind}) {
		if err != nil {
			return nil, err
		}
		var c bench.Check
		if err := json.Unmarshal(f.Body, &c); err != nil {
			return nil, fmt.Errorf("fact %d, a check of meter %s, cannot be read: %w", f.Seq, meterID, err)
		}
		out = append(out, c)
	}
	return out, nil
}

// MeterStatus is how a meter stands with its checks today.
func MeterStatus(ctx context.Context, d *Desk, m bench.Meter) (bench.Standing, error) {
	checks, err := MeterChecks(ctx, d, m.ID)
	if err != nil {
		return bench.Standing{}, err
	}
	setup, err := BenchSetup(ctx, d)
	if err != nil {
		return bench.Standing{}, err
	}
	authority, err := setup.authority()
	if err != nil {
		return bench.Standing{}, err
	}
	rule := bench.CheckRule{Authority: authority, EveryDays: setup.EveryDays, WarnDays: setup.WarnDays}
	return bench.Stand(m, checks, rule, d.Today()), nil
}

// MeterBias works out how far off a meter reads, over its last so many checks.
func MeterBias(ctx context.Context, d *Desk, m bench.Meter, last int) (bench.Bias, *working.Sheet, error) {
	checks, err := MeterChecks(ctx, d, m.ID)
	if err != nil {
		return bench.Bias{}, nil, err
	}
	s := &working.Sheet{}
	bias, err := bench.WorkBias(s, bench.ChecksOf(m, checks, d.Today()), last)
	return bias, s, err
}
