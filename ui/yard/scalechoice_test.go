package yard

import (
	"testing"

	"tenthpoint/internal/demo"
	"tenthpoint/internal/load"
	"tenthpoint/ui/equipment"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

// With two scales a desk weighs on the one chosen at its computer, and what is typed there is
// recorded as from that one.
func TestWeighOnAnotherScale(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	station := &sessiontest.FakeStation{Memory: map[string]string{}}
	r.Session.Station = station
	g := equipment.NewEquipment(r.Session)
	if g.CanWeighOn() {
		t.Error("with one scale there is one to choose from")
	}
	g.AskScale("")
	if wrong := r.Answer(map[string]string{"name": "1", "who": demo.Manager}); wrong["name"] == "" {
		t.Error("a second scale takes the name of the first")
	}
	r.Answer(map[string]string{"name": "out", "division": "10", "link": "serial://COM3?baud=1200&data=7&parity=even", "who": demo.Manager})
	linked := station.Linked
	g.WeighOn("out")
	sessiontest.WantSaid(t, r, model.OK, "weighs on scale out")
	if s, _ := r.Session.Scale(); s.ID != "out" || station.Linked != linked+1 {
		t.Errorf("the desk weighs on %q, linked %d times", s.ID, station.Linked-linked)
	}
	if rows := g.Scales(); rows[0].Cells[4] != "not weighed on here" || rows[1].State != model.Stop {
		t.Errorf("the scales show %v", rows)
	}
	f := corn(r)
	sessiontest.Must(t, f.Commit())
	w, _ := f.inBook().Weight(load.Gross, "")
	if w.Scale != "out" {
		t.Errorf("the gross is from scale %q", w.Scale)
	}
	g.WeighOn("nowhere")
	if s, _ := r.Session.Scale(); s.ID != "out" {
		t.Errorf("the desk weighs on %q", s.ID)
	}
}
