package instruments_test

import (
	"slices"
	"testing"
	"testing/fstest"
	"time"

	"tenthpoint/internal/dryness"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/scalehouse/instruments"
	"tenthpoint/internal/worksheet"
	"tenthpoint/schedules"
)

func TestChecksThatCannotBe(t *testing.T) {
	s := housetest.BenchScene(t)
	before := s.Contents()
	refused(t, s.Check("2026-10-02", "15.0", "15.2"), errortest.Invalid("2026-10-01"))
	other := meter.Check{Meter: "bench-1", Calibration: "B-2026", Crop: "maise", Reference: quantity.Of("15.0", quantity.Percent), Reading: quantity.Of("15.0", quantity.Percent)}
	refused(t, instruments.CheckMeter(ctx, s.Desk, other), errortest.Invalid("bench-1", "A-2025"))
	refused(t, instruments.CheckMeter(ctx, s.Desk, other), errortest.Invalid("maise"))
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
	refused(t, scalehouse.SetBench(ctx, s.Desk, setup), errortest.Invalid("0"))
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
	for _, want := range []errortest.Want{errortest.NotFound("nobody"), errortest.Invalid("never"), errortest.Invalid("-1"), errortest.Invalid("0"), errortest.Invalid("maise")} {
		refused(t, err, want)
	}
	if s.Contents() != before {
		t.Error("a refused set-up left something in the book")
	}
	setup, err := office.BenchSetup(ctx, s.Desk)
	must(t, err)
	refused(t, scalehouse.SetBench(ctx, s.As(housetest.Clerk).Desk, setup), errortest.Refused())
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
	refused(t, err, errortest.Refused())
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
	refused(t, err, errortest.Refused(housetest.Clerk))
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
	refused(t, err, errortest.Refused())
	must(t, scalehouse.Accept(ctx, s.As(housetest.Manager).Desk, id, string(moisture.MeterFailed), "the oven agrees"))
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
}

// A dial meter is checked by its dial: the chart makes of it what it makes of a sample's.
func TestDialMeterIsCheckedByItsDial(t *testing.T) {
	s := housetest.BenchScene(t)
	check := meter.Check{
		Meter: "bench-1", Crop: "corn", Name: "R3", Reference: quantity.Of("17.7", quantity.Percent),
		Dial: quantity.Of("68", quantity.Dial), Mass: quantity.Int(250, quantity.Gram), Sample: quantity.Int(65, quantity.Fahrenheit),
	}
	must(t, instruments.CheckMeter(ctx, s.Desk, check))
	tools, err := office.Equipment(ctx, s.Desk)
	must(t, err)
	tested := housetest.DialReading("68", 250)
	step, err := tested.Readings[0].Work(&worksheet.Sheet{}, tools)
	must(t, err)
	all, err := office.MeterChecks(ctx, s.Desk, "bench-1")
	must(t, err)
	last := all[len(all)-1]
	if off := last.Reading.Sub(step.Value()); off.More(quantity.Of("0.005", quantity.Percent)) || off.Less(quantity.Of("-0.005", quantity.Percent)) {
		t.Errorf("dial 68 checks as %s, and a sample's reads %s", last.Reading, step.Value())
	}
	if last.Chart != "example-corn-250g" || !last.Dial.Equal(check.Dial) {
		t.Errorf("the check is written as %+v", last)
	}
	before := s.Contents()
	check.Mass = quantity.Int(200, quantity.Gram)
	refused(t, instruments.CheckMeter(ctx, s.Desk, check), errortest.Invalid("200 g", "corn"))
	check.Mass, check.Dial = quantity.Int(250, quantity.Gram), quantity.Of("900", quantity.Dial)
	refused(t, instruments.CheckMeter(ctx, s.Desk, check), errortest.Invalid())
	if s.Contents() != before {
		t.Error("a refused check left something in the book")
	}
}

// A round of references is judged once, and is written down whole or not at all.
func TestARoundOfReferencesIsJudgedOnce(t *testing.T) {
	s := housetest.BenchScene(t)
	round := make([]meter.Check, 3)
	for i, read := range []string{"15.4", "14.7", "15.0"} {
		round[i] = meter.Check{Meter: "bench-1", Crop: "corn", Reference: quantity.Of("15.0", quantity.Percent), Reading: quantity.Of(read, quantity.Percent), Sample: quantity.Int(70, quantity.Fahrenheit)}
	}
	before := s.Contents()
	broken := slices.Clone(round)
	broken[2].Reading = quantity.Amount{}
	if err := instruments.CheckMeter(ctx, s.Desk, broken...); err == nil || s.Contents() != before {
		t.Errorf("a round with a fault in it left something in the book: %v", err)
	}
	must(t, instruments.CheckMeter(ctx, s.Desk, round...))
	all, err := office.MeterChecks(ctx, s.Desk, "bench-1")
	must(t, err)
	for i, c := range all {
		if c.Seq != i+1 {
			t.Errorf("check %d has the number %d", i+1, c.Seq)
		}
	}
	if len(all) != 4 {
		t.Errorf("%d checks stand, want 4", len(all))
	}
}

// A figure typed wrong is withdrawn by a manager with a reason, and not washed out by more checks. The
// check stays in the book.
func TestACheckTypedWrongIsWithdrawn(t *testing.T) {
	s := housetest.BenchScene(t)
	must(t, s.Check("2026-10-01", "15.0", "19.0"))
	stands := func() meter.State {
		m, err := office.MeterByID(ctx, s.Desk, "bench-1")
		must(t, err)
		status, err := office.MeterStatus(ctx, s.Desk, m)
		must(t, err)
		return status.State
	}
	if stands() != meter.Failed {
		t.Fatalf("four points off, the meter stands %s", stands())
	}
	before := s.Contents()
	refused(t, instruments.WithdrawCheck(ctx, s.Desk, "bench-1", 2, "typed wrong"), errortest.Refused())
	s.As(housetest.Manager)
	refused(t, instruments.WithdrawCheck(ctx, s.Desk, "bench-1", 2, " "), errortest.Invalid())
	refused(t, instruments.WithdrawCheck(ctx, s.Desk, "bench-1", 9, "typed wrong"), errortest.NotFound("9"))
	if s.Contents() != before {
		t.Error("a refused withdrawal left something in the book")
	}
	must(t, instruments.WithdrawCheck(ctx, s.Desk, "bench-1", 2, "typed wrong"))
	refused(t, instruments.WithdrawCheck(ctx, s.Desk, "bench-1", 2, "again"), errortest.NotFound("2"))
	all, withdrawn, err := office.MeterCheckFacts(ctx, s.Desk, "bench-1")
	must(t, err)
	if stands() != meter.Good || len(all) != 2 || len(withdrawn) != 1 || withdrawn[0].By != housetest.Manager || withdrawn[0].Reason != "typed wrong" {
		t.Errorf("withdrawn, the meter stands %s by %d checks, %+v of them withdrawn", stands(), len(all), withdrawn)
	}
	must(t, s.Check("2026-10-01", "15.0", "15.1"))
	if all, err = office.MeterChecks(ctx, s.Desk, "bench-1"); err != nil || all[len(all)-1].Seq != 3 {
		t.Errorf("the check after it has the number %d", all[len(all)-1].Seq)
	}
	s.Verify()
}
