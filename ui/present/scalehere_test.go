package present

import (
	"testing"

	"tenthpoint/internal/demo"
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
)

// With two scales a desk weighs on the one chosen at its computer, and what is
// typed there is written down as from that one.
func TestWeighOnAnotherScale(t *testing.T) {
	r := demoRoom(t, 0)
	station := &desktop{memory: map[string]string{}}
	r.frame.Station = station
	g := NewGear(r.frame)
	if g.CanWeighOn() {
		t.Error("with one scale there is one to choose from")
	}
	g.AskScale("")
	if wrong := r.answer(map[string]string{"name": "1", "who": demo.Manager}); wrong["name"] == "" {
		t.Error("a second scale takes the name of the first")
	}
	r.answer(map[string]string{"name": "out", "division": "10", "link": "serial://COM3?baud=1200&data=7&parity=even", "who": demo.Manager})
	linked := station.linked
	g.WeighOn("out")
	wantSaid(t, r, model.OK, "weighs on scale out")
	if s, _ := r.frame.Scale(); s.ID != "out" || station.linked != linked+1 {
		t.Errorf("the desk weighs on %q, linked %d times", s.ID, station.linked-linked)
	}
	if rows := g.Scales(); rows[0].Cells[4] != "not weighed on here" || rows[1].State != model.Stop {
		t.Errorf("the scales show %v", rows)
	}
	f := corn(r)
	must(t, f.Commit())
	w, _ := f.inBook().Weight(load.Gross, "")
	if w.Scale != "out" {
		t.Errorf("the gross is from scale %q", w.Scale)
	}
	g.WeighOn("nowhere")
	if s, _ := r.frame.Scale(); s.ID != "out" {
		t.Errorf("the desk weighs on %q", s.ID)
	}
}
