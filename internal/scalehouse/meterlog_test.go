package scalehouse_test

import (
	"testing"
	"testing/fstest"
	"time"

	"tenthpoint/internal/dryness"
	"tenthpoint/internal/load"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/schedules"
)

func TestChecksThatCannotBe(t *testing.T) {
	s := housetest.BenchScene(t)
	before := s.Contents()
	refused(t, s.Check("2026-10-02", "15.0", "15.2"), "today is 2026-10-01")
	other := meter.Check{Meter: "bench-1", Calibration: "B-2026", Crop: "maise", Reference: quantity.Of("15.0", quantity.Percent), Reading: quantity.Of("15.0", quantity.Percent)}
	refused(t, scalehouse.CheckMeter(ctx, s.Desk, other), `meter bench-1 is set to "A-2025"`)
	refused(t, scalehouse.CheckMeter(ctx, s.Desk, other), `"maise" is not a commodity`)
	if s.Contents() != before {
		t.Error("a refused check left something in the book")
	}
}

// The elevator's own limit and days replace a published rule.
func TestHouseRuleForMeters(t *testing.T) {
	s := housetest.BenchScene(t).As(housetest.Manager)
	setup, err := office.BenchSetup(ctx, s.Desk)
	must(t, err)
	setup.Authority, setup.Limit = office.HouseRule, quantity.Amount{}
	refused(t, scalehouse.SetBench(ctx, s.Desk, setup), "meters be off by 0")
	setup.Limit, setup.EveryDays = quantity.Of("0.05", quantity.Point), 5
	must(t, scalehouse.SetBench(ctx, s.Desk, setup))
	m, err := office.MeterByID(ctx, s.Desk, "bench-1")
	must(t, err)
	stands, err := office.MeterStatus(ctx, s.Desk, m)
	must(t, err)
	if stands.State != meter.Failed || stands.NextDue.String() != "2026-10-06" {
		t.Errorf("off by 0.1 where 0.05 is allowed: %s, %s", stands.State, stands.Sentence)
	}
}

func TestSetBenchNamesEveryFault(t *testing.T) {
	s := housetest.New(t).As(housetest.Manager)
	before := s.Contents()
	err := scalehouse.SetBench(ctx, s.Desk, office.Bench{Authority: "nobody", Retention: "never", EveryDays: -1, Policies: []moisture.Policy{{}}, Dry: []dryness.Rules{{Crop: "maise"}}})
	for _, want := range []string{`"nobody" is no rule`, `"never" is no rule`, "every -1 days", "called cold under", "asks for 0 tests", `"maise" is not a commodity`} {
		refused(t, err, want)
	}
	if s.Contents() != before {
		t.Error("a refused set-up left something in the book")
	}
	setup, err := office.BenchSetup(ctx, s.Desk)
	must(t, err)
	refused(t, scalehouse.SetBench(ctx, s.As(housetest.Clerk).Desk, setup), "for a manager")
}

// A doubt is let through in the name of a manager who is signed in, and stays
// let through at the next test of the sample.
func TestOverridesAreInOnesOwnName(t *testing.T) {
	s := housetest.BenchScene(t)
	s.As(housetest.Manager)
	setup, err := office.BenchSetup(ctx, s.Desk)
	must(t, err)
	setup.Trust.Blocks = append(setup.Trust.Blocks, moisture.Cold)
	must(t, scalehouse.SetBench(ctx, s.Desk, setup))
	s.As(housetest.Clerk)
	id := s.Arrive(52300)
	s.Weigh(id, load.Tare, 24300)
	cold := housetest.DialReading("70", 250)
	cold.Readings[0].Sample, cold.Readings[0].Room = quantity.Int(35, quantity.Fahrenheit), quantity.Int(52, quantity.Fahrenheit)
	cold.Overrides = []moisture.Override{{Code: moisture.Cold, Test: 1, By: housetest.Manager, Reason: "warmed in the hand"}}
	_, err = scalehouse.TestSample(ctx, s.Desk, s.Load(id), cold)
	refused(t, err, "for a manager")
	s.As(housetest.Manager)
	tested, err := scalehouse.TestSample(ctx, s.Desk, s.Load(id), cold)
	must(t, err)
	must(t, scalehouse.RecordTest(ctx, s.Desk, id, load.Sample{}, tested))
	s.As(housetest.Clerk)
	if _, err := scalehouse.TestSample(ctx, s.Desk, s.Load(id), cold); err != nil {
		t.Errorf("what a manager let through before: %v", err)
	}
	if _, err := scalehouse.Issue(ctx, s.Desk, id); err != nil {
		t.Errorf("let through and still stopped: %v", err)
	}
	other := cold
	other.Overrides = []moisture.Override{{Code: moisture.Cold, Test: 1, By: housetest.Clerk, Reason: "x"}}
	_, err = scalehouse.TestSample(ctx, s.As(housetest.Manager).Desk, s.Load(id), other)
	refused(t, err, "Whoever lets it through signs in")
	s.Verify()
}

// A chart written in a spreadsheet is kept in the book and read from it again.
func TestChartOfLinesIsKept(t *testing.T) {
	s := housetest.BenchScene(t)
	shipped, err := s.Charts().ByID("example-corn-250g")
	must(t, err)
	shelf, err := schedules.ReadCharts(fstest.MapFS{"charts/corn.csv": {Data: shipped.Lines()}})
	must(t, err)
	s.UseCharts(shelf)
	id := s.Arrive(52300)
	s.Weigh(id, load.Tare, 24300)
	tested, err := scalehouse.TestSample(ctx, s.Desk, s.Load(id), housetest.DialReading("70", 250))
	must(t, err)
	must(t, scalehouse.RecordTest(ctx, s.Desk, id, load.Sample{}, tested))
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
	s.Desk, err = scalehouse.Open(ctx, s.Store, scalehouse.Options{Name: "office", Rates: housetest.Rates(t), Place: time.UTC, Who: housetest.Manager, Clock: s.Clock()})
	must(t, err)
	s.Verify()
}

// A failed meter stops the ticket until a manager lets the load through.
func TestFailedMeterStopsTheTicket(t *testing.T) {
	s := housetest.BenchScene(t)
	must(t, s.Check("2026-10-01", "15.0", "16.1"))
	id := s.Arrive(52300)
	s.Weigh(id, load.Tare, 24300)
	sample := housetest.SampleOf("18.0")
	sample.Moisture.Meter = "bench-1"
	must(t, scalehouse.RecordSample(ctx, s.Desk, id, sample))
	_, err := scalehouse.Issue(ctx, s.Desk, id)
	refused(t, err, "failed its check")
	must(t, scalehouse.Accept(ctx, s.As(housetest.Manager).Desk, id, string(moisture.MeterFailed), "the oven agrees"))
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
}
