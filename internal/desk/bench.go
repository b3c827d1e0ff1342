package desk

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/load"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/working"
)

// Equipment is what stands at the bench today: charts, meters, and how each
// meter stands with its checks.
func (d *Desk) Equipment(ctx context.Context) (moisture.Equipment, error) {
	e := moisture.Equipment{Charts: d.charts, Statuses: map[string]meter.Status{}}
	meters, err := d.Meters(ctx)
	if err != nil {
		return e, err
	}
	e.Meters = meters
	for _, m := range meters {
		if e.Statuses[m.ID], err = d.MeterStands(ctx, m); err != nil {
			return e, err
		}
	}
	return e, nil
}

// Testing is a load's moisture under test: what the bench would write down.
type Testing struct {
	Result moisture.Result
	Sheet  *working.Sheet
	Record load.Bench
}

// Test works tests of a load's sample out without writing anything. The error
// names every fault that leaves no figure; what makes it doubtful is in the
// result's flags.
func (d *Desk) Test(ctx context.Context, l *load.Load, tests moisture.Tests) (Testing, error) {
	equipment, err := d.Equipment(ctx)
	if err != nil {
		return Testing{}, err
	}
	setup, err := d.BenchSetup(ctx)
	if err != nil {
		return Testing{}, err
	}
	if err := d.mayOverride(l, tests.Overrides); err != nil {
		return Testing{}, err
	}
	t := Testing{Sheet: &working.Sheet{}, Record: load.Bench{
		Tests: tests, Meters: equipment.Meters, Standings: equipment.Statuses,
		House: moisture.Procedure{Policy: moisture.PolicyFor(setup.Policies, l.Details.Commodity), Limits: d.limits(l), Trust: setup.Trust},
	}}
	t.Record.Charts, err = chartTexts(tests, d.charts)
	if err != nil {
		return Testing{}, err
	}
	t.Result, err = tests.Determine(t.Sheet, equipment, t.Record.House)
	return t, err
}

// mayOverride lets a manager who is signed in decide in their own name, and
// takes over what was decided at an earlier test of the same sample.
func (d *Desk) mayOverride(l *load.Load, overrides []moisture.Override) error {
	var before []moisture.Override
	if m := l.Sample.Moisture; m != nil && m.Bench != nil {
		before = m.Bench.Tests.Overrides
	}
	for _, o := range overrides {
		if slices.Contains(before, o) {
			continue
		}
		if err := d.mayManage(fmt.Sprintf("Letting %q through", o.Code)); err != nil {
			return err
		}
		if o.By != d.who.Name {
			return fmt.Errorf("%q is let through in the name of %s, and %s is signed in. Whoever lets it through signs in", o.Code, o.By, d.who.Name)
		}
	}
	return nil
}

func chartTexts(tests moisture.Tests, shelf *chart.Set) ([]load.ChartText, error) {
	var out []load.ChartText
	for _, r := range tests.Readings {
		if r.Chart == "" || slices.ContainsFunc(out, func(c load.ChartText) bool { return c.ID == r.Chart }) {
			continue
		}
		chart, err := shelf.ByID(r.Chart)
		if err != nil {
			return nil, err
		}
		out = append(out, load.ChartText{ID: chart.ID, Hash: chart.Hash})
	}
	return out, nil
}

// SampleTested writes down a sample whose moisture was worked at the bench. A
// sample without a number takes the next of the book.
func (d *Desk) SampleTested(ctx context.Context, id string, s load.Sample, t Testing) error {
	return d.one(ctx, func(w *Work) error {
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
		return w.Sample(id, s)
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

func addOnce(list []string, s string) []string {
	if s == "" || slices.Contains(list, s) {
		return list
	}
	return append(list, s)
}

// equip gives a load what its facts name but do not hold: the desk's time and
// the charts of its tests.
func (d *Desk) equip(ctx context.Context, l *load.Load) error {
	l.UseClock(d.Local)
	return d.withCharts(ctx, l)
}

// withCharts gives a load the charts its moisture was worked from: those in use
// where their text is the same, else the text the book keeps.
func (d *Desk) withCharts(ctx context.Context, l *load.Load) error {
	texts := l.ChartTexts()
	if len(texts) == 0 {
		return nil
	}
	var charts []*chart.Chart
	for _, c := range texts {
		chart, err := d.charts.ByID(c.ID)
		if err != nil || chart.Hash != c.Hash {
			if chart, err = d.keptChart(ctx, c); err != nil {
				return err
			}
		}
		charts = append(charts, chart)
	}
	shelf, err := chart.NewSet(charts...)
	l.UseCharts(shelf)
	return err
}

func (d *Desk) keptChart(ctx context.Context, c load.ChartText) (*chart.Chart, error) {
	id, text, err := d.book.Edition(ctx, c.Hash)
	if err != nil {
		return nil, err
	}
	return chart.Read("chart "+id+" in the book", []byte(text))
}
