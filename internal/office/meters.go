package office

import (
	"context"
	"encoding/json"

	"tenthpoint/internal/book"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/meter"
)

// MeterRecord is a moisture meter as master data.
type MeterRecord struct{ meter.Meter }

// Kind names the fact in the journal.
func (MeterRecord) Kind() string { return "bench.meter" }

const MeterCheckKind = "bench.check"

// Meters are the elevator's moisture meters by id.
func Meters(ctx context.Context, d Desk) ([]meter.Meter, error) {
	all, err := RecordsOf[MeterRecord](ctx, d.Reader())
	out := make([]meter.Meter, len(all))
	for i, m := range all {
		out[i] = m.Meter
	}
	return out, err
}

// MeterChecks are all reference samples read on a meter, in the order written down.
func MeterChecks(ctx context.Context, d Desk, meterID string) ([]meter.Check, error) {
	var out []meter.Check
	for f, err := range d.Reader().Facts(ctx, book.FactFilter{Subject: "meter " + meterID, Kind: MeterCheckKind}) {
		if err != nil {
			return nil, err
		}
		var c meter.Check
		if err := json.Unmarshal(f.Body, &c); err != nil {
			return nil, message.Errorf("fact %d, a check of meter %s, cannot be read: %w", f.Seq, meterID, err)
		}
		out = append(out, c)
	}
	return out, nil
}

// MeterStatus is how a meter stands with its checks today.
func MeterStatus(ctx context.Context, d Desk, m meter.Meter) (meter.Status, error) {
	checks, err := MeterChecks(ctx, d, m.ID)
	if err != nil {
		return meter.Status{}, err
	}
	setup, err := BenchSetup(ctx, d)
	if err != nil {
		return meter.Status{}, err
	}
	authority, err := setup.authority(d.Laws().On(d.Today()))
	if err != nil {
		return meter.Status{}, err
	}
	rule := meter.CheckRule{Authority: authority, EveryDays: setup.EveryDays, WarnDays: setup.WarnDays}
	return meter.StatusOn(m, checks, rule, d.Today()), nil
}
