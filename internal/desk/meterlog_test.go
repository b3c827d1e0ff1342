package desk_test

import (
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"tenthpoint/internal/desk"
	"tenthpoint/internal/dryness"
	"tenthpoint/internal/load"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/schedules"
)

func (s *scene) check(day, reference, reading string) error {
	return s.CheckMeter(ctx, meter.Check{
		Day: quantity.MustDate(day), Meter: "bench-1", Crop: "corn", Name: "R2",
		Reference: quantity.Of(reference, quantity.Percent), Reading: quantity.Of(reading, quantity.Percent), Sample: quantity.Int(70, quantity.Fahrenheit),
	})
}

func TestMeterLogAndPaper(t *testing.T) {
	s := benchScene(t)
	must(t, s.check("2026-09-17", "15.0", "15.2"))
	must(t, s.check("2026-10-01", "17.0", "17.0"))
	log, err := s.MeterLog(ctx, "bench-1", "", 0)
	must(t, err)
	if len(log.Checks) != 3 || log.Checks[0].Day.String() != "2026-09-17" || log.Bias.N != 3 || len(log.Chart.Points) != 3 {
		t.Fatalf("log %+v", log)
	}
	if c := log.Checks[0]; c.Calibration != "A-2025" || c.By != clerk {
		t.Errorf("a check without calibration and name is %+v", c)
	}
	if last, err := s.MeterLog(ctx, "bench-1", "corn", 2); err != nil || last.Bias.N != 2 || last.Checks[0].Day.String() != "2026-10-01" {
		t.Errorf("the last two: %+v, %v", last.Bias, err)
	}
	if none, err := s.MeterLog(ctx, "bench-1", "oats", 0); err != nil || none.Bias.N != 0 || len(none.Checks) != 0 {
		t.Errorf("oats were never checked: %+v, %v", none.Bias, err)
	}
	text := log.Paper(s.Profile(), s.Today()).Text(100)
	for _, want := range []string{"CHECK LOG OF METER BENCH-1", "EXAMPLE - NOT FOR TRADE", log.Standing.Sentence, "2026-09-17", "0.15", "Student's t", "the references show no bias"} {
		if !strings.Contains(text, want) {
			t.Errorf("the paper lacks %q:\n%s", want, text)
		}
	}
	_, err = s.MeterLog(ctx, "bench-9", "", 0)
	refused(t, err, "entered are bench-1")
}

func TestChecksThatCannotBe(t *testing.T) {
	s := benchScene(t)
	before := s.contents()
	refused(t, s.check("2026-10-02", "15.0", "15.2"), "today is 2026-10-01")
	other := meter.Check{Meter: "bench-1", Calibration: "B-2026", Crop: "maise", Reference: quantity.Of("15.0", quantity.Percent), Reading: quantity.Of("15.0", quantity.Percent)}
	refused(t, s.CheckMeter(ctx, other), `meter bench-1 is set to "A-2025"`)
	refused(t, s.CheckMeter(ctx, other), `"maise" is not a commodity`)
	if s.contents() != before {
		t.Error("a refused check left something in the book")
	}
}

func TestMetersDueWorstFirst(t *testing.T) {
	s := benchScene(t).as(manager)
	must(t, s.SetMeter(ctx, meter.Meter{ID: "bench-0", Model: "Example direct meter", Method: meter.Direct, Calibration: "1"}))
	if due, err := s.MetersDue(ctx); err != nil || len(due) != 1 || due[0].Meter.ID != "bench-0" || due[0].Standing.State != meter.Never {
		t.Errorf("today due: %+v, %v", due, err)
	}
	s.at("2026-11-20 12:00")
	due, err := s.MetersDue(ctx)
	if err != nil || len(due) != 2 || due[0].Meter.ID != "bench-1" || due[0].Standing.State != meter.Overdue {
		t.Errorf("seven weeks later due: %+v, %v", due, err)
	}
}

// The house's own limit and days stand in for a published rule.
func TestHouseRuleForMeters(t *testing.T) {
	s := benchScene(t).as(manager)
	setup, err := s.BenchSetup(ctx)
	must(t, err)
	setup.Authority = desk.HouseRule
	refused(t, s.SetBench(ctx, setup), "meters be off by 0")
	setup.Limit, setup.EveryDays = quantity.Of("0.05", quantity.Point), 5
	must(t, s.SetBench(ctx, setup))
	m, err := s.Meter(ctx, "bench-1")
	must(t, err)
	stands, err := s.MeterStands(ctx, m)
	must(t, err)
	if stands.State != meter.Failed || stands.NextDue.String() != "2026-10-06" {
		t.Errorf("off by 0.1 where 0.05 is allowed: %s, %s", stands.State, stands.Sentence)
	}
}

func TestSetBenchNamesEveryFault(t *testing.T) {
	s := newScene(t).as(manager)
	before := s.contents()
	err := s.SetBench(ctx, desk.Bench{Authority: "nobody", Retention: "never", EveryDays: -1, Policies: []moisture.Policy{{}}, Dry: []dryness.Rules{{Crop: "maise"}}})
	for _, want := range []string{`"nobody" is no rule`, `"never" is no rule`, "every -1 days", "called cold under", "asks for 0 tests", `"maise" is not a commodity`} {
		refused(t, err, want)
	}
	if s.contents() != before {
		t.Error("a refused set-up left something in the book")
	}
	setup, err := s.BenchSetup(ctx)
	must(t, err)
	refused(t, s.as(clerk).SetBench(ctx, setup), "for a manager")
}

// A doubt is let through in the name of a manager who is signed in, and stays
// let through at the next test of the sample.
func TestOverridesAreInOnesOwnName(t *testing.T) {
	s := benchScene(t)
	s.as(manager)
	setup, err := s.BenchSetup(ctx)
	must(t, err)
	setup.Trust.Blocks = append(setup.Trust.Blocks, moisture.Cold)
	must(t, s.SetBench(ctx, setup))
	s.as(clerk)
	id := s.arrive(52300)
	s.weigh(id, load.Tare, 24300)
	cold := dialReading("70", 250)
	cold.Readings[0].Sample, cold.Readings[0].Room = quantity.Int(35, quantity.Fahrenheit), quantity.Int(52, quantity.Fahrenheit)
	cold.Overrides = []moisture.Override{{Code: moisture.Cold, Test: 1, By: manager, Reason: "warmed in the hand"}}
	_, err = s.Test(ctx, s.load(id), cold)
	refused(t, err, "for a manager")
	s.as(manager)
	tested, err := s.Test(ctx, s.load(id), cold)
	must(t, err)
	must(t, s.SampleTested(ctx, id, load.Sample{}, tested))
	s.as(clerk)
	if _, err := s.Test(ctx, s.load(id), cold); err != nil {
		t.Errorf("what a manager let through before: %v", err)
	}
	if _, err := s.Issue(ctx, id); err != nil {
		t.Errorf("let through and still stopped: %v", err)
	}
	other := cold
	other.Overrides = []moisture.Override{{Code: moisture.Cold, Test: 1, By: clerk, Reason: "x"}}
	_, err = s.as(manager).Test(ctx, s.load(id), other)
	refused(t, err, "Whoever lets it through signs in")
	s.verify()
}

// A chart written in a spreadsheet is kept in the book and read from it again.
func TestChartOfLinesIsKept(t *testing.T) {
	s := benchScene(t)
	shipped, err := s.Charts().ByID("example-corn-250g")
	must(t, err)
	shelf, err := schedules.ReadCharts(fstest.MapFS{"charts/corn.csv": {Data: shipped.Lines()}})
	must(t, err)
	s.UseCharts(shelf)
	id := s.arrive(52300)
	s.weigh(id, load.Tare, 24300)
	tested, err := s.Test(ctx, s.load(id), dialReading("70", 250))
	must(t, err)
	must(t, s.SampleTested(ctx, id, load.Sample{}, tested))
	_, err = s.Issue(ctx, id)
	must(t, err)
	s.Desk, err = desk.Open(ctx, s.book, desk.Options{Name: "office", Rates: testRates(t), Place: time.UTC, Who: manager, Clock: s.clock()})
	must(t, err)
	s.verify()
}

// A meter past its check is flagged on every slip until it is rechecked, also
// where the moisture was only typed with the meter's name; another's meter is
// not ours to doubt.
func TestOverdueMeterIsOnEverySlip(t *testing.T) {
	s := benchScene(t)
	flags := func(meter string) string {
		id := s.arrive(52300)
		sample := sampleOf("18.0")
		sample.Moisture.Meter = meter
		must(t, s.Sample(ctx, id, sample))
		must(t, s.Sample(ctx, id, s.load(id).Sample)) // written down again
		return strings.Join(s.load(id).Sample.Flags, "\n")
	}
	if got := flags("bench-1"); got != "" {
		t.Errorf("checked today, and flagged: %s", got)
	}
	s.at("2026-11-20 12:00")
	if got := flags("bench-1"); strings.Count(got, "meter-overdue: Meter bench-1") != 1 {
		t.Errorf("seven weeks later the flags are %q", got)
	}
	if got := flags("M1"); got != "" {
		t.Errorf("a meter that is not entered is flagged: %s", got)
	}
	must(t, s.check("2026-11-20", "15.0", "15.1"))
	if got := flags("bench-1"); got != "" {
		t.Errorf("rechecked, and flagged: %s", got)
	}
}

// A failed meter stops the ticket until a manager lets the load through.
func TestFailedMeterStopsTheTicket(t *testing.T) {
	s := benchScene(t)
	must(t, s.check("2026-10-01", "15.0", "16.0"))
	id := s.arrive(52300)
	s.weigh(id, load.Tare, 24300)
	sample := sampleOf("18.0")
	sample.Moisture.Meter = "bench-1"
	must(t, s.Sample(ctx, id, sample))
	_, err := s.Issue(ctx, id)
	refused(t, err, "failed its check")
	must(t, s.as(manager).Accept(ctx, id, string(moisture.MeterFailed), "the oven agrees"))
	_, err = s.Issue(ctx, id)
	must(t, err)
}
