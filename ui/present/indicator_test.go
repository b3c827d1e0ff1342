package present

import (
	"errors"
	"strings"
	"testing"

	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
)

// What the scale shows is said in figures and in how it stands.
func TestLiveWeight(t *testing.T) {
	r := demoRoom(t, 0)
	if _, shown := r.frame.Live(); shown {
		t.Error("a scale that is not linked is shown")
	}
	d := &display{}
	r.frame.Indicator = d
	tests := []struct {
		display display
		want    model.Figure
	}{
		{display{lb(52300), true, nil}, model.Figure{Caption: "Scale 1", Value: "52,300", Unit: "lb", State: model.OK}},
		{display{lb(52340), false, nil}, model.Figure{Caption: "Scale 1", Value: "52,340", Unit: "lb", State: model.Wait}},
		{display{err: errors.New("not connected")}, model.Figure{Caption: "Scale 1: no reading", Unit: "lb", State: model.Stop}},
	}
	for _, tt := range tests {
		*d = tt.display
		if got, shown := r.frame.Live(); !shown || got != tt.want {
			t.Errorf("%+v is shown as %+v, want %+v", tt.display, got, tt.want)
		}
	}
}

// A weight from the scale goes to the side in hand, else gross before tare, and
// never while the truck moves.
func TestWeighFromTheScale(t *testing.T) {
	r := emptyDemo(t)
	d := &display{weight: lb(52300), atRest: true}
	r.frame.Indicator = d
	y := NewYard(r.frame)
	fillIn(y.Form(), wholeCorn[:3])
	y.Weigh("truck")
	wantSaid(t, r, model.OK, "Truck 77: gross 52,300 lb, from scale 1")
	form := y.Form()
	d.atRest = false
	y.Weigh("moisture")
	wantSaid(t, r, model.Stop, "still moving")
	*d = display{weight: lb(24120), atRest: true}
	y.Weigh("moisture")
	gross, _ := form.now.load.Weight(load.Gross, "")
	tare, _ := form.now.load.Weight(load.Tare, "")
	if gross.Source != load.FromScale || tare.Source != load.FromScale || tare.Weight.Figure() != "24,120" {
		t.Errorf("gross %+v, tare %+v", gross, tare)
	}
	*d = display{weight: lb(52320), atRest: true}
	y.Weigh("gross")
	if again, _ := form.now.load.Weight(load.Gross, ""); again.Weight.Figure() != "52,320" || len(form.inBook().Struck) != 1 {
		t.Errorf("weighed again: %+v, struck %v", again, form.inBook().Struck)
	}
}

// Where the scale can be read, a typed weight needs a reason of its own; until
// there is one it is not in the book.
func TestTypedWeightNeedsAReasonWhereTheScaleIsLinked(t *testing.T) {
	r := emptyDemo(t)
	r.frame.Indicator = &display{weight: lb(52300), atRest: true}
	f := newLoadForm(r.frame, nil)
	fillIn(f, wholeCorn[:4])
	must(t, f.Commit())
	if _, written := f.inBook().Weight(load.Gross, ""); written || f.ID() == "" || !f.IsTyped("gross") {
		t.Fatalf("the typed weight was written without a reason: load %q", f.ID())
	}
	if !strings.Contains(r.question().Text, "MANUAL WT") {
		t.Errorf("asked %q", r.question().Text)
	}
	if wrong := r.answer(map[string]string{"reason": "display dark in the sun"}); wrong != nil {
		t.Fatal(wrong)
	}
	w, written := f.inBook().Weight(load.Gross, "")
	if !written || w.Source != load.ByHand || w.Reason != "display dark in the sun" {
		t.Errorf("the book has %+v", w)
	}
}
