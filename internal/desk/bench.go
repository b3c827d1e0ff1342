package desk

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/bench"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/house"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/working"
)

// Bench is how this elevator tests: a standing thing, changed whole.
type Bench struct {
	Policies  []bench.Policy   `json:"policies,omitempty"`
	Trust     bench.Trust      `json:"trust"`
	Authority string           `json:"authority"` // id of the rule meters are checked by
	EveryDays int              `json:"every_days,string"`
	WarnDays  int              `json:"warn_days,string"`
	Dry       []bench.DryRules `json:"dry,omitempty"`
	Retention string           `json:"retention"` // id of the rule samples are kept by
}

// Kind names the fact in the journal.
func (Bench) Kind() string { return "bench.setup" }

// defaultBench is how a new elevator tests until it says otherwise.
func defaultBench(rules string) Bench {
	b := Bench{Trust: bench.DefaultTrust(), Authority: "us-official", EveryDays: 14, WarnDays: 2, Retention: "us-inbound-truck"}
	if rules == "canada" {
		b.Authority, b.Retention = "canada", "canada"
	}
	return b
}

// BenchSetup is how the elevator tests.
func (d *Desk) BenchSetup(ctx context.Context) (Bench, error) {
	all, err := standing[Bench](ctx, d.book)
	if err != nil || len(all) == 0 {
		return defaultBench(d.profile.Rules), err
	}
	return all[0], nil
}

// SetBench changes how the elevator tests.
func (d *Desk) SetBench(ctx context.Context, b Bench) error {
	if _, ok := bench.AuthorityByID(b.Authority); !ok {
		return fmt.Errorf("%q is no rule for checking meters that is known here", b.Authority)
	}
	var wrong sentences
	for _, p := range b.Policies {
		wrong = append(wrong, inWords(p.Check())...)
	}
	if len(wrong) > 0 {
		return wrong
	}
	return d.setStanding(ctx, "bench", b)
}

// Equipment is what stands at the bench today: charts, meters, and how each
// meter stands with its checks.
func (d *Desk) Equipment(ctx context.Context) (bench.Equipment, error) {
	e := bench.Equipment{Charts: d.charts, Standings: map[string]bench.Standing{}}
	meters, err := d.Meters(ctx)
	if err != nil {
		return e, err
	}
	e.Meters = meters
	for _, m := range meters {
		if e.Standings[m.ID], err = d.MeterStands(ctx, m); err != nil {
			return e, err
		}
	}
	return e, nil
}

// Testing is a load's moisture under test: what the bench would write down.
type Testing struct {
	Result bench.Result
	Sheet  *working.Sheet
	Record load.Bench
}

// Test works tests of a load's sample out without writing anything. The error
// names every fault that leaves no figure; what makes it doubtful is in the
// result's flags.
func (d *Desk) Test(ctx context.Context, l *load.Load, tests bench.Tests) (Testing, error) {
	equipment, err := d.Equipment(ctx)
	if err != nil {
		return Testing{}, err
	}
	setup, err := d.BenchSetup(ctx)
	if err != nil {
		return Testing{}, err
	}
	for _, o := range tests.Overrides {
		if !d.isManager(o.By) {
			return Testing{}, fmt.Errorf("%s let %q through, but is not a manager at this desk. Ask a manager to sign in", o.By, o.Code)
		}
	}
	t := Testing{Sheet: &working.Sheet{}, Record: load.Bench{
		Tests: tests, Meters: equipment.Meters, Standings: equipment.Standings,
		House: bench.House{Policy: bench.PolicyFor(setup.Policies, l.Details.Commodity), Limits: d.limits(l), Trust: setup.Trust},
	}}
	t.Record.Charts, err = chartTexts(tests, d.charts)
	if err != nil {
		return Testing{}, err
	}
	t.Result, err = tests.Determine(t.Sheet, equipment, t.Record.House)
	return t, err
}

func (d *Desk) isManager(name string) bool {
	if len(d.people) == 0 {
		return name == d.who.Name
	}
	return slices.ContainsFunc(d.people, func(p house.Person) bool { return p.Name == name && p.Role == house.Manager })
}

// limits are the moistures at which something changes for the grower.
func (d *Desk) limits(l *load.Load) []bench.Limit {
	var out []bench.Limit
	e, err := d.edition(l)
	if err == nil && e != nil {
		out = appendCell(out, "shrink trigger", e, e.Shrink.Trigger)
		out = appendCell(out, "drying trigger", e, e.Drying.Trigger)
	}
	if c, err := grain.ByID(l.Details.Commodity); err == nil && c.CanadaKind != "" && d.profile.Rules == "canada" {
		if classes, err := bench.ClassLimits(c.CanadaKind); err == nil {
			out = append(out, classes...)
		}
	}
	return out
}

func appendCell(out []bench.Limit, name string, e *rates.Edition, c rates.Cell) []bench.Limit {
	if !c.Given() || slices.ContainsFunc(out, func(l bench.Limit) bool { return l.At.Equal(c.Amount) }) {
		return out
	}
	return append(out, bench.Limit{Name: name, At: c.Amount, Source: e.Source(c.Row)})
}

func chartTexts(tests bench.Tests, shelf *bench.Shelf) ([]load.ChartText, error) {
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

// SampleTested writes down a sample whose moisture was worked at the bench.
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
		return w.Sample(id, tested(s, t))
	})
}

// tested is the sample with the bench's result in it.
func tested(s load.Sample, t Testing) load.Sample {
	s.Moisture = &load.Moisture{Percent: t.Result.Moisture.Value(), Bench: &t.Record}
	var methods, meters, calibrations []string
	for _, r := range t.Record.Tests.Readings {
		methods = addOnce(methods, r.Method.String())
		meters = addOnce(meters, r.Meter)
		calibrations = addOnce(calibrations, r.Calibration)
	}
	s.Moisture.Method = strings.Join(methods, ", ")
	s.Moisture.Meter = strings.Join(meters, ", ")
	s.Moisture.Calibration = strings.Join(calibrations, ", ")
	s.Flags, s.Stops = nil, nil
	for _, f := range t.Result.Flags {
		s.Flags = append(s.Flags, string(f.Code)+": "+f.Sentence())
		if f.Stops() {
			s.Stops = append(s.Stops, load.Stop{Code: string(f.Code), Sentence: f.Sentence(), Final: f.Final})
		}
	}
	return s
}

func addOnce(list []string, s string) []string {
	if s == "" || slices.Contains(list, s) {
		return list
	}
	return append(list, s)
}

// withCharts gives a load the charts its moisture was worked from: those in use
// where their text is the same, else the text the book keeps.
func (d *Desk) withCharts(ctx context.Context, l *load.Load) error {
	texts := l.ChartTexts()
	if len(texts) == 0 {
		return nil
	}
	var charts []*bench.Chart
	for _, c := range texts {
		chart, err := d.charts.ByID(c.ID)
		if err != nil || chart.Hash != c.Hash {
			if chart, err = d.keptChart(ctx, c); err != nil {
				return err
			}
		}
		charts = append(charts, chart)
	}
	shelf, err := bench.NewShelf(charts...)
	l.UseCharts(shelf)
	return err
}

func (d *Desk) keptChart(ctx context.Context, c load.ChartText) (*bench.Chart, error) {
	id, text, err := d.book.Edition(ctx, c.Hash)
	if err != nil {
		return nil, err
	}
	return bench.ReadChart("chart "+id+" in the book", []byte(text))
}

// DryEnough judges a load's moisture as recorded by the house's rules for its
// commodity; found is false where the house has none.
func (d *Desk) DryEnough(ctx context.Context, crop string, moisture, tolerance quantity.Amount, flags []bench.Flag) (advice bench.Advice, found bool, err error) {
	setup, err := d.BenchSetup(ctx)
	if err != nil {
		return advice, false, err
	}
	for _, r := range setup.Dry {
		if r.Crop == crop {
			advice, err = r.Judge(moisture, tolerance, flags)
			return advice, true, err
		}
	}
	return advice, false, nil
}

func inWords(errs []error) []string {
	var out []string
	for _, err := range errs {
		out = append(out, err.Error())
	}
	return out
}
