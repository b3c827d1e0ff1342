package lab

import (
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/demo"
	"tenthpoint/internal/law"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
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
		if by := m.Statuses()[len(m.Statuses())-1]; strings.Contains(by.Text, law.Confirm) {
			t.Errorf("the house's own limit is of %q, which no law says", by.Text)
		}
		i := slices.IndexFunc(m.Statuses(), func(s model.Status) bool { return s.Word == "bias, Corn" })
		if i < 0 || !strings.Contains(m.Statuses()[i].Text, "95 times in 100") {
			t.Errorf("meter %s: the bias is not told with its interval: %v", id, m.Statuses())
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
		"no oven":           {map[string]string{"oven.1": "", "meter.1": "15.1"}, "oven.1"},
		"letters":           {map[string]string{"oven.1": "15.0", "meter.1": "dry"}, "meter.1"},
		"too wet to be":     {map[string]string{"oven.1": "75", "meter.1": "15.1"}, "oven.1"},
		"a temperature off": {map[string]string{"oven.1": "15.0", "meter.1": "15.1", "temperature.1": "900"}, "temperature.1"},
		"all in order":      {map[string]string{"oven.1": "15.0", "meter.1": "15.1", "temperature.1": "70"}, ""},
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
	r.Answer(map[string]string{"oven.1": "15.0", "meter.1": "17.0"})
	if m.Rows()[1].State != model.Stop || r.State != model.Warn { // it is saved, so it is done
		t.Errorf("two points off, the meter stands as %v; said %q", m.Rows()[1], r.Last())
	}
}

// A round of references is on one sheet: lines as far as they go, one sentence about all of them.
func TestARoundOfReferences(t *testing.T) {
	r := sessiontest.DemoRoom(t, 40)
	m := NewMeters(r.Session)
	m.Choose("M1")
	before := len(m.Checks())
	m.AskCheck()
	if wrong := r.Answer(nil); wrong["oven.1"] == "" {
		t.Errorf("an empty round was saved: %v", wrong)
	}
	r.Answer(map[string]string{"oven.1": "15.0", "meter.1": "15.2", "oven.2": "18.0", "meter.2": "17.9", "name.2": "R8", "oven.4": "12.0", "meter.4": "12.1"})
	if got := len(m.Checks()) - before; got != 3 {
		t.Errorf("%d references were saved, want 3; said %q", got, r.Last())
	}
	sessiontest.WantSaid(t, r, model.OK, "3 references")
}

// A dial meter asks for its dial and the mass; the chart makes the percent.
func TestADialMeterAsksForItsDial(t *testing.T) {
	r := sessiontest.DemoRoom(t, 40)
	m := NewMeters(r.Session)
	m.Choose("D1")
	m.AskCheck()
	for _, f := range r.Question().Fields {
		if f.ID == "meter.1" && (f.Unit != "" || f.Label != "Dial") {
			t.Errorf("the tester is to convert by hand: %+v", f)
		}
	}
	d1, _ := m.current()
	charts := round{m, d1}.charts()
	c := charts[slices.IndexFunc(charts, func(c *chart.Chart) bool { return c.Crop == "corn" })]
	dial, temperature := c.Dials()[1], c.Temperatures()[0]
	r.Answer(map[string]string{"crop": "corn", "mass": session.Bare(c.Mass), "oven.1": "15.0", "meter.1": session.Bare(dial), "temperature.1": session.Bare(temperature)})
	last := m.log.Checks[len(m.log.Checks)-1]
	if !last.Dial.Equal(dial) || last.Chart != c.ID || last.Reading.Unit() != quantity.Percent {
		t.Errorf("written is %+v; said %q", last, r.Last())
	}
	m.AskCheck() // beside the chart: the book says why, and the sheet stands again
	r.Answer(map[string]string{"crop": "corn", "mass": session.Bare(c.Mass), "oven.1": "15.0", "meter.1": "999", "temperature.1": session.Bare(temperature)})
	if r.State != model.Stop || len(r.Asked) != 1 {
		t.Errorf("a dial beside the chart was taken; said %q", r.Last())
	}
}

// A check typed wrong is withdrawn by a manager, and what it did to the meter with it.
func TestACheckIsWithdrawn(t *testing.T) {
	r := sessiontest.DemoRoom(t, 40)
	m := NewMeters(r.Session)
	m.Choose("M1")
	m.AskCheck()
	r.Answer(map[string]string{"crop": "corn", "oven.1": "15.0", "meter.1": "51.0"})
	wrong := len(m.Checks())
	if m.Rows()[1].State != model.Stop {
		t.Fatalf("36 points off, the meter stands as %v", m.Rows()[1])
	}
	m.AskWithdraw()
	r.Answer(map[string]string{"reason": "typed 51 for 15"})
	if m.Rows()[1].State != model.OK || len(m.Checks()) != wrong-1 {
		t.Errorf("withdrawn, the meter stands as %v; said %q", m.Rows()[1], r.Last())
	}
	if !slices.ContainsFunc(m.Statuses(), func(k model.Status) bool { return strings.Contains(k.Text, "typed 51 for 15") }) {
		t.Errorf("the log says nothing of it: %v", m.Statuses())
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
