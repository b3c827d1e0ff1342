package scalehouse_test

import (
	"testing"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

// A dial reading goes from the bench through the sample into the settlement,
// and the check of the book works it again from the chart the book kept.
func TestMoistureFromTheBench(t *testing.T) {
	s := housetest.BenchScene(t)
	id := s.Arrive(52300)
	s.Weigh(id, load.Tare, 24300)
	tested, err := scalehouse.TestSample(ctx, s.Desk, s.Load(id), housetest.DialReading("70", 250))
	must(t, err)
	must(t, scalehouse.RecordTest(ctx, s.Desk, id, load.Sample{Number: "S9", Tester: housetest.Tester}, tested))
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
	s.Verify()
}

// A wrong mass stops the ticket and no manager can let it through; another warning that the
// elevator stops on can be let through, by a manager only.
func TestDoubtsStopTheTicket(t *testing.T) {
	s := housetest.BenchScene(t)
	id := s.Arrive(52300)
	s.Weigh(id, load.Tare, 24300)
	tested, err := scalehouse.TestSample(ctx, s.Desk, s.Load(id), housetest.DialReading("70", 175))
	must(t, err)
	must(t, scalehouse.RecordTest(ctx, s.Desk, id, load.Sample{Number: "S9"}, tested))
	before := s.Contents()
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	refused(t, err, errortest.Refused("175 g"))
	if s.Contents() != before {
		t.Error("the refused ticket left something in the book")
	}
	must(t, scalehouse.Accept(ctx, s.As(housetest.Manager).Desk, id, string(moisture.WrongMass), "in a hurry"))
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	refused(t, err, errortest.Refused("175 g"))
}

// Tests that give no figure are refused with every fault and nothing written.
func TestTestsWithoutAFigure(t *testing.T) {
	s := housetest.BenchScene(t)
	id := s.Arrive(52300)
	before := s.Contents()
	for name, tests := range map[string]moisture.Tests{
		"outside the chart": housetest.DialReading("400", 250),
		"no readings":       {},
		"override by a clerk": {
			Readings: housetest.DialReading("70", 250).Readings, Overrides: []moisture.Override{{Code: moisture.Cold, By: housetest.Clerk, Reason: "x"}},
		},
	} {
		if _, err := scalehouse.TestSample(ctx, s.Desk, s.Load(id), tests); err == nil {
			t.Errorf("%s: gave a figure", name)
		}
	}
	if s.Contents() != before {
		t.Error("a test that gave no figure was written down")
	}
}
