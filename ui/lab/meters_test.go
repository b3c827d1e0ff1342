package lab

import (
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/demo"
	"tenthpoint/internal/law"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/office"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

// The state of the invented elevator's meters follows their log: the digital one
// was checked, the dial meter forgotten.
func TestMetersStand(t *testing.T) {
	r := sessiontest.DemoRoom(t, 120)
	m := NewMeters(r.Session)
	rows := m.Rows()
	if len(rows) != 2 || rows[0].Key != "D1" || rows[0].State != model.Stop || rows[1].State != model.OK {
		t.Fatalf("the meters stand as %+v", rows)
	}
	for _, id := range []string{"D1", "M1"} {
		m.Choose(id)
		chart, checks := m.Chart(), m.Checks()
		if len(checks) == 0 || len(chart.Points) != len(checks) {
			t.Errorf("meter %s: %d checks and %d points", id, len(checks), len(chart.Points))
		}
		if len(chart.Limits) < 2 || len(chart.Scale) != 3 {
			t.Errorf("meter %s: limits %v, scale %v", id, chart.Limits, chart.Scale)
		}
		if by := m.Remarks()[len(m.Remarks())-1]; strings.Contains(by.Text, law.Confirm) {
			t.Errorf("the house's own limit is of %q, which no law says", by.Text)
		}
		i := slices.IndexFunc(m.Remarks(), func(s model.Remark) bool { return s.Word == "bias, Corn" })
		if i < 0 || !strings.Contains(m.Remarks()[i].Text, "95 times in 100") {
			t.Errorf("meter %s: the bias is not told with its interval: %v", id, m.Remarks())
		}
	}
	m.PrintLog()
	if len(r.Papers["meter-M1"]) == 0 {
		t.Errorf("the log was not printed: %q", r.Last())
	}
}

// A reference is read, compared with its limit, and written down; a text that is not
// valid is named by its field.
func TestMeterCheckIsWritten(t *testing.T) {
	r := sessiontest.DemoRoom(t, 40)
	m := NewMeters(r.Session)
	m.Choose("M1")
	before := len(m.Checks())
	for name, c := range map[string]struct {
		values map[string]string
		wrong  string // the field, empty when it is written
	}{
		"no oven":           {map[string]string{"oven": "", "meter": "15.1"}, "oven"},
		"letters":           {map[string]string{"oven": "15.0", "meter": "dry"}, "meter"},
		"too wet to be":     {map[string]string{"oven": "75", "meter": "15.1"}, "oven"},
		"a temperature off": {map[string]string{"oven": "15.0", "meter": "15.1", "warmth": "900"}, "warmth"},
		"all in order":      {map[string]string{"oven": "15.0", "meter": "15.1", "warmth": "70"}, ""},
	} {
		m.AskCheck()
		wrong := r.Answer(c.values)
		if (c.wrong == "") != (len(wrong) == 0) || wrong[c.wrong] == "" && c.wrong != "" {
			t.Errorf("%s: wrong is %v, want something at %q", name, wrong, c.wrong)
		}
	}
	if got := len(m.Checks()); got != before+1 {
		t.Errorf("%d checks, want %d; said %q", got, before+1, r.Last())
	}
	if first := m.Checks()[0]; first.Cells[5] != "+0.1" {
		t.Errorf("the newest check is %v", first.Cells)
	}
	m.AskCheck()
	r.Answer(map[string]string{"oven": "15.0", "meter": "17.0"})
	if m.Rows()[1].State != model.Stop || r.State != model.Stop {
		t.Errorf("two points off, the meter stands as %v; said %q", m.Rows()[1], r.Last())
	}
}

// A meter is added and changed by a manager, with everything its plate says.
func TestMeterIsSetUp(t *testing.T) {
	r := sessiontest.DemoRoom(t, 40)
	m := NewMeters(r.Session)
	m.AskMeter(true)
	if wrong := r.Answer(map[string]string{"id": "M9", "model": "Example C", "calibration": "C-1", "coldest": "50"}); wrong["warmest"] == "" {
		t.Errorf("half a range was taken: %v", wrong)
	}
	r.Answer(map[string]string{"id": "M9", "model": "Example C", "calibration": "C-1", "tolerance": "0.5", "coldest": "50", "warmest": "90"})
	if m.Chosen() != "M9" || !strings.Contains(m.Rows()[2].Cells[5], "never checked") {
		t.Fatalf("the meters are %+v; said %q", m.Rows(), r.Last())
	}
	m.AskMeter(false)
	r.Answer(map[string]string{"calibration": "C-2"})
	if got := m.Rows()[2].Cells[2]; got != "C-2" {
		t.Errorf("the calibration is %q", got)
	}
	sessiontest.Must(t, r.Session.Desk.SignIn(demo.Tester))
	m.AskMeter(false)
	r.Answer(map[string]string{"calibration": "C-3"})
	if !strings.Contains(r.Last(), "manager") {
		t.Errorf("a tester changed the meter; said %q", r.Last())
	}
}

// The policy of one grain is changed and the others stay.
func TestPolicyIsChanged(t *testing.T) {
	r := sessiontest.DemoRoom(t, 40)
	m := NewMeters(r.Session)
	m.AskPolicy()
	r.Answer(map[string]string{"crop": "soybeans"})
	if wrong := r.Answer(map[string]string{"count": "4", "nearcount": "2"}); wrong["count"] == "" {
		t.Errorf("fewer tests near a limit than away from it were taken: %v", wrong)
	}
	r.Answer(map[string]string{"count": "2", "nearcount": "4", "authority": office.HouseRule, "limit": "0.3"})
	setup, err := office.BenchSetup(t.Context(), r.Session.Desk)
	sessiontest.Must(t, err)
	if p := moisture.PolicyFor(setup.Policies, "soybeans"); p.Count != 2 || p.NearCount != 4 {
		t.Errorf("soybeans are tested as %+v; said %q", p, r.Last())
	}
	if p := moisture.PolicyFor(setup.Policies, "corn"); p.Count != 2 || p.NearCount != 3 {
		t.Errorf("corn is tested as %+v", p)
	}
	if setup.Authority != office.HouseRule || setup.Limit.Figure() != "0.3" {
		t.Errorf("meters are checked by %s, %s", setup.Authority, setup.Limit)
	}
}

// An empty house is told what to do.
func TestMetersOfAnEmptyHouse(t *testing.T) {
	m := NewMeters(sessiontest.EmptyRoom(t).Session)
	if m.HasMeter() || len(m.Rows()) != 0 || !strings.Contains(m.Empty(), "manager adds one") {
		t.Errorf("an empty house shows %v and says %q", m.Rows(), m.Empty())
	}
}
