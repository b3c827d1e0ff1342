package office_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/scalehouse/instruments"
)

func TestMeterLogAndPaper(t *testing.T) {
	s := housetest.BenchScene(t)
	must(t, s.Check("2026-09-17", "15.0", "15.2"))
	must(t, s.Check("2026-10-01", "17.0", "17.0"))
	log, err := office.ReadMeterLog(ctx, s.Desk, "bench-1", "", 0)
	must(t, err)
	if len(log.Checks) != 3 || log.Checks[0].Day.String() != "2026-09-17" || log.Biases[0].N != 3 || len(log.Chart.Points) != 3 {
		t.Fatalf("log %+v", log)
	}
	if c := log.Checks[0]; c.Calibration != "A-2025" || c.By != housetest.Clerk {
		t.Errorf("a check without calibration and name is %+v", c)
	}
	if last, err := office.ReadMeterLog(ctx, s.Desk, "bench-1", "corn", 2); err != nil || last.Biases[0].N != 2 || last.Checks[0].Day.String() != "2026-10-01" {
		t.Errorf("the last two: %+v, %v", last.Biases, err)
	}
	if none, err := office.ReadMeterLog(ctx, s.Desk, "bench-1", "oats", 0); err != nil || len(none.Biases) != 0 || len(none.Checks) != 0 {
		t.Errorf("oats were never checked: %+v, %v", none.Biases, err)
	}
	text := log.Paper(s.Profile(), s.Today()).Text(100)
	for _, want := range []string{"CHECK LOG OF METER BENCH-1", "EXAMPLE - NOT FOR TRADE", log.Standing.Sentence.String(), "2026-09-17", "0.15", "Student's t", "the references show no bias"} {
		if !strings.Contains(text, want) {
			t.Errorf("the paper lacks %q:\n%s", want, text)
		}
	}
	_, err = office.ReadMeterLog(ctx, s.Desk, "bench-9", "", 0)
	refused(t, err, errortest.NotFound("bench-1"))
}

// A calibration belongs to a grain: corn that reads high and soybeans that read low
// make two biases, not one of nothing.
func TestBiasGrainByGrain(t *testing.T) {
	s := housetest.BenchScene(t)
	must(t, s.Check("2026-09-17", "15.0", "15.3"))
	must(t, instruments.CheckMeter(ctx, s.Desk, meter.Check{
		Meter: "bench-1", Crop: "soybeans", Name: "R9",
		Reference: quantity.Of("12.0", quantity.Percent), Reading: quantity.Of("11.6", quantity.Percent), Sample: quantity.Int(70, quantity.Fahrenheit),
	}))
	log, err := office.ReadMeterLog(ctx, s.Desk, "bench-1", "", 0)
	must(t, err)
	means := map[string]string{}
	for _, b := range log.Biases {
		means[b.Crop] = b.Mean.Value().String()
	}
	if len(means) != 2 || means["corn"] != "0.2 pt" || means["soybeans"] != "-0.4 pt" {
		t.Errorf("the biases are %v, want corn 0.2 pt and soybeans -0.4 pt", means)
	}
}

// 7 CFR 801.6 allows official meters a mean of 0.15 on mid-range wheat. At a country
// house it is a hint: single honest readings scatter by 0.39.
func TestOfficialLimitIsAHint(t *testing.T) {
	s := housetest.BenchScene(t)
	must(t, s.Check("2026-10-01", "15.0", "15.4"))
	m, err := office.MeterByID(ctx, s.Desk, "bench-1")
	must(t, err)
	stands, err := office.MeterStatus(ctx, s.Desk, m)
	must(t, err)
	if stands.State != meter.Good || len(stands.Hints) == 0 {
		t.Errorf("0.4 points off, the meter stands %s with the hints %v; want ok with a hint", stands.State, stands.Hints)
	}
}

func TestMetersDueWorstFirst(t *testing.T) {
	s := housetest.BenchScene(t).As(housetest.Manager)
	must(t, instruments.SetMeter(ctx, s.Desk, meter.Meter{ID: "bench-0", Model: "Example direct meter", Method: meter.Direct, Calibration: "1"}))
	if due, err := office.MetersDue(ctx, s.Desk); err != nil || len(due) != 1 || due[0].Meter.ID != "bench-0" || due[0].Standing.State != meter.Never {
		t.Errorf("today due: %+v, %v", due, err)
	}
	s.At("2026-11-20 12:00")
	due, err := office.MetersDue(ctx, s.Desk)
	if err != nil || len(due) != 2 || due[0].Meter.ID != "bench-1" || due[0].Standing.State != meter.Overdue {
		t.Errorf("seven weeks later due: %+v, %v", due, err)
	}
}

// A meter past its check is flagged on every slip until it is rechecked, also
// where the moisture was only typed with the meter's name; another's meter is
// not ours to doubt.
func TestOverdueMeterIsOnEverySlip(t *testing.T) {
	s := housetest.BenchScene(t)
	flags := func(meter string) string {
		id := s.Arrive(52300)
		sample := housetest.SampleOf("18.0")
		sample.Moisture.Meter = meter
		must(t, scalehouse.RecordSample(ctx, s.Desk, id, sample))
		must(t, scalehouse.RecordSample(ctx, s.Desk, id, s.Load(id).Sample)) // written down again
		return load.FlagLines(s.Load(id))
	}
	if got := flags("bench-1"); got != "" {
		t.Errorf("checked today, and flagged: %s", got)
	}
	s.At("2026-11-20 12:00")
	if got := flags("bench-1"); strings.Count(got, `"code":"meter-overdue"`) != 1 || strings.Count(got, "bench-1") != 1 {
		t.Errorf("seven weeks later the flags are %q", got)
	}
	if got := flags("M1"); got != "" {
		t.Errorf("a meter that is not entered is flagged: %s", got)
	}
	must(t, s.Check("2026-11-20", "15.0", "15.1"))
	if got := flags("bench-1"); got != "" {
		t.Errorf("rechecked, and flagged: %s", got)
	}
}
