package lab

import (
	"context"
	"testing"

	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

// Before the first test of a day the bench asks for the check of the meter in use.
// The test that was typed is made after it, and nothing is asked again that day.
func TestBenchAsksForTheStartCheck(t *testing.T) {
	first, _ := benchRoom(t)
	r := first.AgainAt(sessiontest.Noon.AddDate(0, 0, 1), first.Session.Desk.Who().Name)
	b := NewBench(r.Session)
	b.Begin()
	b.Type("method", string(meter.ByDial))
	b.typeAll("mass 250", "temperature 65", "room 68", "dial 45")
	b.Enter("dial")
	if len(b.current.tests.Readings) != 0 || len(r.Asked) == 0 {
		t.Fatalf("the test is made before the start check; asked %d questions", len(r.Asked))
	}
	in := map[string]string{
		"battery": model.TickOn, "mark": "", "weight": "250", "balance": "250.1", "thermometer": "68", "other": "68.4",
	}
	if wrong := r.Answer(in); wrong["mark"] == "" {
		t.Errorf("a meter that was not nulled passed: %v", wrong)
	}
	b.Enter("dial")
	in["mark"] = model.TickOn
	if wrong := r.Answer(in); len(wrong) > 0 {
		t.Fatalf("the check is refused: %v", wrong)
	}
	if len(b.current.tests.Readings) != 1 {
		t.Errorf("%d tests after the start check, want the one typed", len(b.current.tests.Readings))
	}
	asked := len(r.Asked)
	b.typeAll("mass 250", "temperature 65", "room 68", "dial 45")
	b.Enter("dial")
	if len(r.Asked) != asked || len(b.current.tests.Readings) != 2 {
		t.Errorf("asked again on one day: %d questions more, %d tests", len(r.Asked)-asked, len(b.current.tests.Readings))
	}
	checks, err := office.MeterStarts(context.Background(), r.Session.Desk, "D1")
	sessiontest.Must(t, err)
	if last := checks[len(checks)-1]; last.Day != r.Session.Desk.Today() || last.Balance.String() != "250.1 g" {
		t.Errorf("logged is %+v", last)
	}
}

// Where the check cannot be made, the reason is logged in its place.
func TestStartCheckLeftOutForAReason(t *testing.T) {
	first, _ := benchRoom(t)
	r := first.AgainAt(sessiontest.Noon.AddDate(0, 0, 1), first.Session.Desk.Who().Name)
	m := NewMeters(r.Session)
	m.Choose("D1")
	m.AskStart()
	if wrong := r.Answer(map[string]string{"skip": "no second thermometer"}); len(wrong) > 0 {
		t.Fatalf("a reason is refused: %v", wrong)
	}
	checks, err := office.MeterStarts(context.Background(), r.Session.Desk, "D1")
	sessiontest.Must(t, err)
	if last := checks[len(checks)-1]; last.Skipped != "no second thermometer" {
		t.Errorf("logged is %+v", last)
	}
}
