package scalehouse_test

import (
	"testing"
	"time"

	"tenthpoint/internal/load"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/worksheet"
	"tenthpoint/schedules"
)

// benchScene is a scene with a dial meter, checked today, and the example
// charts.
func benchScene(t *testing.T) *scene {
	s := newScene(t)
	shelf, err := schedules.Charts()
	must(t, err)
	s.Desk, err = scalehouse.Open(ctx, s.book, scalehouse.Options{
		Name: "scale house", Rates: testRates(t), Charts: shelf, Place: time.UTC, Who: manager, Clock: s.clock(),
	})
	must(t, err)
	must(t, scalehouse.SetMeter(ctx, s.Desk, meter.Meter{ID: "bench-1", Model: "Example dial meter A", Method: meter.ByDial, Calibration: "A-2025", Tolerance: quantity.Of("0.5", quantity.Point)}))
	must(t, scalehouse.CheckMeter(ctx, s.Desk, meter.Check{
		Meter: "bench-1", Calibration: "A-2025", Crop: "corn", Name: "R1",
		Reference: quantity.Of("16.0", quantity.Percent), Reading: quantity.Of("16.1", quantity.Percent),
		Sample: quantity.Int(70, quantity.Fahrenheit),
	}))
	return s.as(clerk)
}

func dialReading(dial string, massG int64) moisture.Tests {
	return moisture.Tests{Readings: []moisture.Reading{{
		Seq: 1, Method: meter.ByDial, Crop: "corn", Day: quantity.MustDate("2026-10-01"), Tester: tester,
		Meter: "bench-1", Calibration: "A-2025", Chart: "example-corn-250g", Mass: quantity.Int(massG, quantity.Gram),
		Sample: quantity.Int(65, quantity.Fahrenheit), Room: quantity.Int(68, quantity.Fahrenheit), Dial: quantity.Of(dial, quantity.Dial),
	}}}
}

// A dial reading goes from the bench through the sample into the settlement,
// and the check of the book works it again from the chart the book kept.
func TestMoistureFromTheBench(t *testing.T) {
	s := benchScene(t)
	id := s.arrive(52300)
	s.weigh(id, load.Tare, 24300)
	tested, err := scalehouse.TestSample(ctx, s.Desk, s.load(id), dialReading("70", 250))
	must(t, err)
	must(t, scalehouse.RecordTest(ctx, s.Desk, id, load.Sample{Number: "S9", Tester: tester}, tested))
	number, err := scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)

	l, err := office.Ticket(ctx, s.Desk, number)
	must(t, err)
	again, err := office.Resettle(ctx, s.Desk, l)
	must(t, err)
	if got, want := again.Moisture.Value(), tested.Result.Moisture.Value(); !got.Equal(want) {
		t.Errorf("settled at %s, tested as %s", got, want)
	}
	for _, step := range []string{"moisture.test1", "moisture.test1.cool", "shrink.water"} {
		if _, ok := again.Sheet.Step(step); !ok {
			t.Errorf("the sheet lacks the step %s", step)
		}
	}
	s.verify()
}

// A wrong mass stops the ticket and no manager can let it through; another warning that the
// elevator stops on can be let through, by a manager only.
func TestDoubtsStopTheTicket(t *testing.T) {
	s := benchScene(t)
	id := s.arrive(52300)
	s.weigh(id, load.Tare, 24300)
	tested, err := scalehouse.TestSample(ctx, s.Desk, s.load(id), dialReading("70", 175))
	must(t, err)
	must(t, scalehouse.RecordTest(ctx, s.Desk, id, load.Sample{Number: "S9"}, tested))
	before := s.contents()
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	refused(t, err, "175 g")
	if s.contents() != before {
		t.Error("the refused ticket left something in the book")
	}
	must(t, scalehouse.Accept(ctx, s.as(manager).Desk, id, string(moisture.WrongMass), "in a hurry"))
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	refused(t, err, "175 g")
}

// Tests that give no figure are refused with every fault and nothing written.
func TestTestsWithoutAFigure(t *testing.T) {
	s := benchScene(t)
	id := s.arrive(52300)
	before := s.contents()
	for name, tests := range map[string]moisture.Tests{
		"outside the chart": dialReading("400", 250),
		"no readings":       {},
		"override by a clerk": {
			Readings: dialReading("70", 250).Readings, Overrides: []moisture.Override{{Code: moisture.Cold, By: clerk, Reason: "x"}},
		},
	} {
		if _, err := scalehouse.TestSample(ctx, s.Desk, s.load(id), tests); err == nil {
			t.Errorf("%s: gave a figure", name)
		}
	}
	if s.contents() != before {
		t.Error("a test that gave no figure was written down")
	}
}

// A meter's status follows its checks, and its bias is shown.
func TestMeterLog(t *testing.T) {
	s := benchScene(t)
	meters, err := office.Meters(ctx, s.Desk)
	must(t, err)
	stands, err := office.MeterStatus(ctx, s.Desk, meters[0])
	must(t, err)
	if stands.State != meter.Good {
		t.Errorf("a meter checked today is %s: %s", stands.State, stands.Sentence)
	}
	s.at("2026-11-20 12:00")
	if stands, err = office.MeterStatus(ctx, s.Desk, meters[0]); err != nil || stands.State != meter.Overdue {
		t.Errorf("seven weeks later the meter is %s, %v", stands.State, err)
	}
	checks, err := office.MeterChecks(ctx, s.Desk, meters[0].ID)
	must(t, err)
	bias, err := meter.WorkBias(&worksheet.Sheet{}, meter.ChecksOf(meters[0], checks, s.Today()), 0)
	must(t, err)
	if bias.N != 1 || bias.Mean == nil {
		t.Errorf("one check gives %+v", bias)
	}
	refused(t, scalehouse.CheckMeter(ctx, s.Desk, meter.Check{Meter: "none", Calibration: "x", Crop: "corn", Reference: quantity.Of("16.0", quantity.Percent), Reading: quantity.Of("16.1", quantity.Percent), Sample: quantity.Int(70, quantity.Fahrenheit)}), "no meter")
}
