package office

import (
	"context"
	"fmt"

	"tenthpoint/internal/bench"
	"tenthpoint/internal/working"
)

// MeterLog is all that the checks of one meter say about it.
type MeterLog struct {
	Meter     bench.Meter
	Authority bench.Authority
	Standing  bench.Standing
	// Checks are those under the meter's calibration, of one crop if one was
	// asked for, the last so many of them, oldest first.
	Checks []bench.Check
	// Bias is worked on Sheet from the same checks; it is shown and never taken
	// off a reading. Without checks both are empty.
	Bias  bench.Bias
	Sheet *working.Sheet
	Chart bench.ErrorChart
}

// ReadMeterLog gathers the log of a meter, over the last so many checks (0: all)
// with one crop (empty: with every crop).
func ReadMeterLog(ctx context.Context, d Desk, id, crop string, last int) (MeterLog, error) {
	m, err := MeterByID(ctx, d, id)
	if err != nil {
		return MeterLog{}, err
	}
	setup, err := BenchSetup(ctx, d)
	if err != nil {
		return MeterLog{}, err
	}
	log := MeterLog{Meter: m, Sheet: &working.Sheet{}}
	if log.Authority, err = setup.authority(); err != nil {
		return log, err
	}
	if log.Standing, err = MeterStatus(ctx, d, m); err != nil {
		return log, err
	}
	all, err := MeterChecks(ctx, d, id)
	if err != nil {
		return log, err
	}
	log.Checks = lastChecks(bench.ChecksOf(m, all, d.Today()), crop, last)
	if len(log.Checks) > 0 {
		if log.Bias, err = bench.WorkBias(log.Sheet, log.Checks, 0); err != nil {
			return log, err
		}
	}
	log.Chart = bench.NewErrorChart(log.Checks, log.Authority, log.Bias)
	return log, nil
}

func lastChecks(checks []bench.Check, crop string, last int) []bench.Check {
	if crop != "" {
		checks = bench.OfCrop(checks, crop)
	}
	if last > 0 && len(checks) > last {
		checks = checks[len(checks)-last:]
	}
	return checks
}

// MeterByID finds one of the elevator's meters; the error lists those there are.
func MeterByID(ctx context.Context, d Desk, id string) (bench.Meter, error) {
	meters, err := Meters(ctx, d)
	if err != nil {
		return bench.Meter{}, err
	}
	return bench.Equipment{Meters: meters}.Meter(id)
}

// DueMeter is a meter that wants a check, and why.
type DueMeter struct {
	Meter    bench.Meter
	Standing bench.Standing
}

// MetersDue are the meters that are due for a check today, overdue, failed or
// never checked, the worst first.
func MetersDue(ctx context.Context, d Desk) ([]DueMeter, error) {
	meters, err := Meters(ctx, d)
	if err != nil {
		return nil, err
	}
	byState := map[bench.State][]DueMeter{}
	for _, m := range meters {
		s, err := MeterStatus(ctx, d, m)
		if err != nil {
			return nil, fmt.Errorf("meter %s: %w", m.ID, err)
		}
		byState[s.State] = append(byState[s.State], DueMeter{m, s})
	}
	var out []DueMeter
	for _, state := range []bench.State{bench.Failed, bench.Overdue, bench.Never, bench.Due} {
		out = append(out, byState[state]...)
	}
	return out, nil
}
