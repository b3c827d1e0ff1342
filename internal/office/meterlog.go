package office

import (
	"context"
	"encoding/json"

	"tenthpoint/internal/book"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/worksheet"
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

// MeterWithdrawnKind is the kind of fact that a check was written down by mistake.
const MeterWithdrawnKind = "bench.check-withdrawn"

// MeterChecks returns the reference samples read on a meter that stand, in the order recorded.
func MeterChecks(ctx context.Context, d Desk, meterID string) ([]meter.Check, error) {
	all, withdrawn, err := MeterCheckFacts(ctx, d, meterID)
	return meter.InForce(all, withdrawn), err
}

// MeterCheckFacts returns every reference sample read on a meter, and which of them were withdrawn.
func MeterCheckFacts(ctx context.Context, d Desk, meterID string) ([]meter.Check, []meter.Withdrawal, error) {
	facts, err := d.Reader().FactsOf(ctx, "meter "+meterID)
	if err != nil {
		return nil, nil, err
	}
	return ReadChecks(facts)
}

// ReadChecks reads the checks among the facts of a meter.
func ReadChecks(facts []journal.Fact) (checks []meter.Check, withdrawn []meter.Withdrawal, err error) {
	for _, f := range facts {
		switch f.Kind {
		case MeterCheckKind:
			var c meter.Check
			err = json.Unmarshal(f.Body, &c)
			checks = append(checks, c)
		case MeterWithdrawnKind:
			var w meter.Withdrawal
			err = json.Unmarshal(f.Body, &w)
			withdrawn = append(withdrawn, w)
		}
		if err != nil {
			return nil, nil, message.Errorf("fact %d, a check of %s, cannot be read: %w", f.Seq, f.Subject, err)
		}
	}
	return checks, withdrawn, nil
}

// MeterStartKind is the kind of fact of a meter's check before the first test.
const MeterStartKind = "bench.start"

// MeterStarts returns the checks of a meter before the first test of each day, in the order
// recorded.
func MeterStarts(ctx context.Context, d Desk, meterID string) ([]meter.StartCheck, error) {
	var out []meter.StartCheck
	for f, err := range d.Reader().Facts(ctx, book.FactFilter{Subject: "meter " + meterID, Kind: MeterStartKind}) {
		if err != nil {
			return nil, err
		}
		var c meter.StartCheck
		if err := json.Unmarshal(f.Body, &c); err != nil {
			return nil, message.Errorf("fact %d, a check of meter %s, cannot be read: %w", f.Seq, meterID, err)
		}
		out = append(out, c)
	}
	return out, nil
}

// IsStarted reports whether a meter had its check before the first test of today.
func IsStarted(ctx context.Context, d Desk, meterID string) (bool, error) {
	checks, err := MeterStarts(ctx, d, meterID)
	_, started := meter.StartedOn(checks, d.Today())
	return started, err
}

// MeterStatus returns the status of a meter's checks today.
func MeterStatus(ctx context.Context, d Desk, m meter.Meter) (meter.Status, error) {
	checks, err := MeterChecks(ctx, d, m.ID)
	if err != nil {
		return meter.Status{}, err
	}
	setup, err := BenchSetup(ctx, d)
	if err != nil {
		return meter.Status{}, err
	}
	rule, err := setup.checkRule(d.Laws().On(d.Today()))
	if err != nil {
		return meter.Status{}, err
	}
	return meter.StatusOn(m, checks, rule, d.Today()), nil
}

// MeterLog is all that the checks of one meter say about it.
type MeterLog struct {
	Meter     meter.Meter
	Authority meter.CheckTolerance
	Standing  meter.Status
	// Withdrawn are the checks that were taken back, and why.
	Withdrawn []meter.Withdrawal
	// Checks are those under the meter's current calibration, of one crop if one was asked for,
	// oldest first.
	Checks []meter.Check
	// Biases are calculated by grain from the same checks, since a calibration belongs to one
	// grain; they are shown and never subtracted from a reading.
	Biases []GrainBias
	Chart  meter.ErrorLog
	// Starts are the checks before the first test of each day.
	Starts []meter.StartCheck
}

// GrainBias is the bias of a meter with one grain, and the working of it.
type GrainBias struct {
	meter.Bias
	Crop  string // its id
	Grain string // its name
	Sheet *worksheet.Sheet
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
	log := MeterLog{Meter: m}
	if log.Authority, err = setup.authority(d.Laws().On(d.Today())); err != nil {
		return log, err
	}
	if log.Standing, err = MeterStatus(ctx, d, m); err != nil {
		return log, err
	}
	all, withdrawn, err := MeterCheckFacts(ctx, d, id)
	if err != nil {
		return log, err
	}
	log.Withdrawn = withdrawn
	all = meter.InForce(all, withdrawn)
	log.Checks = lastChecks(meter.ChecksOf(m, all, d.Today()), crop, last)
	if log.Starts, err = MeterStarts(ctx, d, id); err != nil {
		return log, err
	}
	if log.Biases, err = grainBiases(log.Checks); err != nil {
		return log, err
	}
	var biases []meter.Bias
	for _, b := range log.Biases {
		biases = append(biases, b.Bias)
	}
	log.Chart = meter.NewErrorLog(log.Checks, log.Authority, biases...)
	return log, nil
}

func grainBiases(checks []meter.Check) ([]GrainBias, error) {
	var out []GrainBias
	for _, crop := range meter.CropsOf(checks) {
		one := GrainBias{Crop: crop, Grain: grain.NameOf(crop), Sheet: &worksheet.Sheet{}}
		var err error
		if one.Bias, err = meter.WorkBias(one.Sheet, meter.OfCrop(checks, crop), 0); err != nil {
			return nil, err
		}
		out = append(out, one)
	}
	return out, nil
}

func lastChecks(checks []meter.Check, crop string, last int) []meter.Check {
	if crop != "" {
		checks = meter.OfCrop(checks, crop)
	}
	if last > 0 && len(checks) > last {
		checks = checks[len(checks)-last:]
	}
	return checks
}

// MeterByID finds one of the elevator's meters; the error lists those there are.
func MeterByID(ctx context.Context, d Desk, id string) (meter.Meter, error) {
	meters, err := Meters(ctx, d)
	if err != nil {
		return meter.Meter{}, err
	}
	return moisture.Equipment{Meters: meters}.Meter(id)
}

// DueMeter is a meter that wants a check, and why.
type DueMeter struct {
	Meter    meter.Meter
	Standing meter.Status
}

// MetersDue are the meters that are due for a check today, overdue, failed or
// never checked, the worst first.
func MetersDue(ctx context.Context, d Desk) ([]DueMeter, error) {
	meters, err := Meters(ctx, d)
	if err != nil {
		return nil, err
	}
	byState := map[meter.State][]DueMeter{}
	for _, m := range meters {
		s, err := MeterStatus(ctx, d, m)
		if err != nil {
			return nil, message.Errorf("meter %s: %w", m.ID, err)
		}
		byState[s.State] = append(byState[s.State], DueMeter{m, s})
	}
	var out []DueMeter
	for _, state := range []meter.State{meter.Failed, meter.Overdue, meter.Never, meter.Due} {
		out = append(out, byState[state]...)
	}
	return out, nil
}
