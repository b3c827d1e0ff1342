package scalehouse

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/office"
	"tenthpoint/internal/worksheet"
)

// Testing is a load's moisture test: what the bench would record.
type Testing struct {
	Result moisture.Result
	Sheet  *worksheet.Sheet
	Record load.Bench
}

// TestSample evaluates tests of a load's sample without writing anything. The error has every fault
// that prevents a figure; what makes it doubtful is in the result's flags.
func TestSample(ctx context.Context, d *Desk, l *load.Load, tests moisture.Tests) (Testing, error) {
	equipment, err := office.Equipment(ctx, d)
	if err != nil {
		return Testing{}, err
	}
	setup, err := office.BenchSetup(ctx, d)
	if err != nil {
		return Testing{}, err
	}
	if err := d.mayOverride(l, tests.Overrides); err != nil {
		return Testing{}, err
	}
	t := Testing{Sheet: &worksheet.Sheet{}, Record: load.Bench{
		Tests: tests, Meters: equipment.Meters, Standings: equipment.Statuses,
		House: moisture.Procedure{Policy: moisture.PolicyFor(setup.Policies, l.Details.Commodity), Limits: office.MoistureLimits(d, l), Trust: setup.Trust},
	}}
	t.Record.Charts, err = chartTexts(tests, d.charts)
	if err != nil {
		return Testing{}, err
	}
	t.Result, err = tests.Determine(t.Sheet, equipment, t.Record.House)
	return t, err
}

// mayOverride allows overrides by the manager signed in, in their own name, and keeps those of an
// earlier test of the same sample.
func (d *Desk) mayOverride(l *load.Load, overrides []moisture.Override) error {
	var before []moisture.Override
	if m := l.Sample.Moisture; m != nil && m.Bench != nil {
		before = m.Bench.Tests.Overrides
	}
	for _, o := range overrides {
		if slices.Contains(before, o) {
			continue
		}
		if err := d.MayManage(fmt.Sprintf("Overriding %q", o.Code)); err != nil {
			return err
		}
		if o.By != d.who.Name {
			return message.Refused.Errorf("%q is overridden in the name of %s, and %s is signed in. Whoever overrides it signs in", o.Code, o.By, d.who.Name)
		}
	}
	return nil
}

func chartTexts(tests moisture.Tests, set *chart.Set) ([]load.ChartText, error) {
	var out []load.ChartText
	for _, r := range tests.Readings {
		if r.Chart == "" || slices.ContainsFunc(out, func(c load.ChartText) bool { return c.ID == r.Chart }) {
			continue
		}
		chart, err := set.ByID(r.Chart)
		if err != nil {
			return nil, err
		}
		out = append(out, load.ChartText{ID: chart.ID, Hash: chart.Hash})
	}
	return out, nil
}

// RecordTest records a sample whose moisture was tested at the bench. A sample without a number
// takes the next of the book.
func RecordTest(ctx context.Context, d *Desk, id string, s load.Sample, t Testing) error {
	return d.do(ctx, func(w *Batch) error {
		for _, c := range t.Record.Charts {
			chart, err := d.charts.ByID(c.ID)
			if err != nil {
				return err
			}
			if err := w.tx.KeepEdition(chart.ID, chart.Hash, string(chart.Text)); err != nil {
				return err
			}
		}
		s := tested(s, t)
		if s.Number == "" {
			var err error
			if s.Number, err = w.sampleNumber(id, ""); err != nil {
				return err
			}
		}
		return RecordSample(ctx, w, id, s)
	})
}

// tested is the sample with the bench's result in it.
func tested(s load.Sample, t Testing) load.Sample {
	s.Moisture = &load.Moisture{Percent: t.Result.Moisture.Value(), Bench: &t.Record}
	var methods, meters, calibrations, testers []string
	for _, r := range t.Record.Tests.Readings {
		methods = addOnce(methods, r.Method.String())
		meters = addOnce(meters, r.Meter)
		calibrations = addOnce(calibrations, r.Calibration)
		testers = addOnce(testers, r.Tester)
	}
	s.Tester = strings.Join(testers, ", ")
	s.Moisture.Method = strings.Join(methods, ", ")
	s.Moisture.Meter = strings.Join(meters, ", ")
	s.Moisture.Calibration = strings.Join(calibrations, ", ")
	s.Flags, s.Stops = nil, nil
	for _, f := range t.Result.Flags {
		s = flagged(s, f)
	}
	return s
}

// Sample returns a sample as it would be recorded with this result, for a preview.
func (t Testing) Sample(s load.Sample) load.Sample { return tested(s, t) }

func addOnce(list []string, s string) []string {
	if s == "" || slices.Contains(list, s) {
		return list
	}
	return append(list, s)
}

// SetBench changes how the elevator tests.
func SetBench(ctx context.Context, at Actor, b office.Bench) error {
	return at.do(ctx, func(w *Batch) error {
		if wrong := b.Faults(w.desk.Laws().On(w.desk.Today())); wrong != nil {
			return wrong
		}
		return SetRecord(ctx, w, office.BenchID, b)
	})
}
