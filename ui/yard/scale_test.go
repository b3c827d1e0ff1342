package yard

import (
	"errors"
	"strings"
	"testing"

	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/sessiontest"
)

// The scale's display is shown with its state.
func TestLiveWeight(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	if _, shown := r.Session.Live(); shown {
		t.Error("a scale that is not linked is shown")
	}
	d := &sessiontest.FakeScale{}
	r.Session.Indicator = d
	tests := []struct {
		display sessiontest.FakeScale
		want    model.Figure
	}{
		{sessiontest.FakeScale{Weight: sessiontest.Lb(52300), AtRest: true, Err: nil}, model.Figure{Caption: "Scale 1", Value: "52,300", Unit: "lb", State: model.OK}},
		{sessiontest.FakeScale{Weight: sessiontest.Lb(52340), AtRest: false}, model.Figure{Caption: "Scale 1: MOTION", Value: "52,340", Unit: "lb", State: model.Wait}},
		{sessiontest.FakeScale{Weight: sessiontest.Lb(24000), Condition: session.Net}, model.Figure{Caption: "Scale 1: NET", Value: "24,000", Unit: "lb", State: model.Stop}},
		{sessiontest.FakeScale{Weight: sessiontest.Lb(0), Condition: session.Over}, model.Figure{Caption: "Scale 1", Value: "OVER", State: model.Stop}},
		{sessiontest.FakeScale{Weight: sessiontest.Lb(131000), Condition: session.Over}, model.Figure{Caption: "Scale 1: OVER", Value: "131,000", Unit: "lb", State: model.Stop}},
		{sessiontest.FakeScale{Weight: sessiontest.Lb(0), Condition: session.Under}, model.Figure{Caption: "Scale 1", Value: "UNDER", State: model.Stop}},
		{sessiontest.FakeScale{Weight: sessiontest.Lb(0), Condition: session.Faulty}, model.Figure{Caption: "Scale 1", Value: "FAULT", State: model.Stop}},
		{sessiontest.FakeScale{Weight: sessiontest.Lb(-200), Condition: session.BelowZero}, model.Figure{Caption: "Scale 1: BELOW ZERO", Value: "-200", Unit: "lb", State: model.Stop}},
		{sessiontest.FakeScale{Err: errors.New("not connected")}, model.Figure{Caption: "Scale 1: no reading", Unit: "lb", State: model.Stop}},
	}
	for _, tt := range tests {
		*d = tt.display
		if got, shown := r.Session.Live(); !shown || got != tt.want {
			t.Errorf("%+v is shown as %+v, want %+v", tt.display, got, tt.want)
		}
	}
}

// A weight from the scale goes to the side with the keyboard, else gross before
// tare, and never while the truck moves.
func TestWeighFromTheScale(t *testing.T) {
	r := sessiontest.EmptyDemo(t)
	d := &sessiontest.FakeScale{Weight: sessiontest.Lb(52300), AtRest: true}
	r.Session.Indicator = d
	y := NewYard(r.Session)
	fillIn(y.Form(), wholeCorn[:3])
	y.Weigh("truck")
	sessiontest.WantSaid(t, r, model.OK, "Truck 77: gross 52,300 lb, from scale 1")
	form := y.Form()
	d.AtRest = false
	y.Weigh("moisture")
	sessiontest.WantSaid(t, r, model.Stop, "still moving")
	*d = sessiontest.FakeScale{Weight: sessiontest.Lb(24120), AtRest: true}
	y.Weigh("moisture")
	gross, _ := form.Now.Load.Weight(load.Gross, "")
	tare, _ := form.Now.Load.Weight(load.Tare, "")
	if gross.Source != load.FromScale || tare.Source != load.FromScale || tare.Weight.Figure() != "24,120" {
		t.Errorf("gross %+v, tare %+v", gross, tare)
	}
	*d = sessiontest.FakeScale{Weight: sessiontest.Lb(52320), AtRest: true}
	y.Weigh("gross")
	r.Answer(map[string]string{"side": "gross"})
	if again, _ := form.Now.Load.Weight(load.Gross, ""); again.Weight.Figure() != "52,320" || len(form.inBook().Struck) != 1 {
		t.Errorf("weighed again: %+v, struck %v", again, form.inBook().Struck)
	}
}

// Where the scale can be read, a typed weight needs a reason of its own; until
// there is one it is not in the book.
func TestTypedWeightNeedsAReasonWhereTheScaleIsLinked(t *testing.T) {
	r := sessiontest.EmptyDemo(t)
	r.Session.Indicator = &sessiontest.FakeScale{Weight: sessiontest.Lb(52300), AtRest: true}
	f := NewLoadForm(r.Session, nil)
	fillIn(f, wholeCorn[:4])
	sessiontest.Must(t, f.Commit())
	if _, written := f.inBook().Weight(load.Gross, ""); written || f.ID() == "" || !f.IsTyped("gross") {
		t.Fatalf("the typed weight was written without a reason: load %q", f.ID())
	}
	if !strings.Contains(r.Question().Text, "MANUAL WT") {
		t.Errorf("asked %q", r.Question().Text)
	}
	if wrong := r.Answer(map[string]string{"reason": "display dark in the sun"}); wrong != nil {
		t.Fatal(wrong)
	}
	w, written := f.inBook().Weight(load.Gross, "")
	if !written || w.Source != load.ByHand || w.Reason != "display dark in the sun" {
		t.Errorf("the book has %+v", w)
	}
}

// Where no scale is linked, nobody's reason is made up: the first weight of a person's day asks,
// one answer of the elevator's list holds until the next day, and without an answer the figure is
// taken back.
func TestTypedWeightsAreExplainedOnceADay(t *testing.T) {
	r := sessiontest.EmptyDemo(t)
	session.SetManualReason(r.Session, "")
	f := NewLoadForm(r.Session, nil)
	fillIn(f, wholeCorn[:4])
	sessiontest.Must(t, f.Commit())
	if _, written := f.inBook().Weight(load.Gross, ""); written {
		t.Fatal("the typed weight was written without a reason")
	}
	ask := r.Question()
	if !strings.Contains(ask.Text, "Truck 77: Gross 52,300 lb") || ask.Fields[0].Options[0].Code != "read from the indicator" {
		t.Errorf("asked %q with %+v", ask.Text, ask.Fields[0].Options)
	}
	sessiontest.Must(t, f.Commit()) // the field loses the focus to the box
	if len(r.Asked) != 1 {
		t.Errorf("asked %d times", len(r.Asked))
	}
	ask.GivenUp()
	if got := f.Text("gross"); got != "" {
		t.Errorf("with no answer the form keeps %q", got)
	}
	f.Type("gross", "52300")
	sessiontest.Must(t, f.Commit())
	r.Answer(map[string]string{"reason": "weighed on another certified scale"})
	next := corn(r)
	sessiontest.Must(t, next.Commit())
	for _, form := range []*LoadForm{f, next} {
		if w, _ := form.inBook().Weight(load.Gross, ""); w.Reason != "weighed on another certified scale" {
			t.Errorf("the book has the reason %q", w.Reason)
		}
	}
}
