package office

import (
	"context"
	"encoding/json"
	"fmt"

	"tenthpoint/internal/bench"
	"tenthpoint/internal/book"
	"tenthpoint/internal/working"
)

// MeterRecord is a moisture meter as a standing thing.
type MeterRecord struct{ bench.Meter }

// Kind names the fact in the journal.
func (MeterRecord) Kind() string { return "bench.meter" }

const MeterCheckKind = "bench.check"

// Meters are the elevator's moisture meters by id.
func Meters(ctx context.Context, d Desk) ([]bench.Meter, error) {
	all, err := RecordsOf[MeterRecord](ctx, d.Reader())
	out := make([]bench.Meter, len(all))
	for i, m := range all {
		out[i] = m.Meter
	}
	return out, err
}

// MeterChecks are all reference samples read on a meter, in the order written down.
func MeterChecks(ctx context.Context, d Desk, meterID string) ([]bench.Check, error) {
	var out []bench.Check
	for f, err := range d.Reader().Facts(ctx, book.FactFilter{Subject: "meter " + meterID, Kind: MeterCheckKind}) {
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
func MeterStatus(ctx context.Context, d Desk, m bench.Meter) (bench.Standing, error) {
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
func MeterBias(ctx context.Context, d Desk, m bench.Meter, last int) (bench.Bias, *working.Sheet, error) {
	checks, err := MeterChecks(ctx, d, m.ID)
	if err != nil {
		return bench.Bias{}, nil, err
	}
	s := &working.Sheet{}
	bias, err := bench.WorkBias(s, bench.ChecksOf(m, checks, d.Today()), last)
	return bias, s, err
}
