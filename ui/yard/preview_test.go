package yard

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/demo"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/sessiontest"
)

func marksOf(r model.Ruler, kind model.MarkKind) string {
	var out []string
	for _, m := range r.Marks {
		if m.Kind == kind {
			out = append(out, fmt.Sprintf("%s at %d", m.Label, m.At))
		}
	}
	return strings.Join(out, ", ")
}

// Where the rates begin, what they shrink to and the load's moisture are on the
// ruler at their thousandths: corn-main-2025 shrinks above and to 15.0 %.
func TestRuler(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	f := NewLoadForm(r.Session, nil)
	if bare := f.Preview().Ruler; len(bare.Marks) != 0 {
		t.Errorf("a form without grain has the ruler %v", bare.Marks)
	}
	f.Type("commodity", "corn")
	f.Type("moisture", "17.2")
	got := f.Preview().Ruler
	if want := "14 at 0, 15 at 166, 16 at 333, 17 at 500, 18 at 666, 19 at 833, 20 at 1000"; marksOf(got, model.PointMark) != want {
		t.Errorf("the points are %s, want %s", marksOf(got, model.PointMark), want)
	}
	if want := "shrink and drying above and to 15.0 at 167"; marksOf(got, model.LimitMark) != want {
		t.Errorf("the limits are %s, want %s", marksOf(got, model.LimitMark), want)
	}
	if want := "17.2 % at 533"; marksOf(got, model.ReadingMark) != want {
		t.Errorf("the reading is %s, want %s", marksOf(got, model.ReadingMark), want)
	}
	if len(got.Bands) == 0 || got.Bands[0].From != 0 || got.Bands[0].To != 167 {
		t.Errorf("nothing is taken on %v", got.Bands)
	}
	f.Type("moisture", "15.0")
	for _, m := range f.Preview().Ruler.Marks {
		if m.Kind == model.ReadingMark && m.State != model.OK {
			t.Errorf("a dry reading is shown as %d", m.State)
		}
	}
}

// Whatever the moisture, every mark is on the ruler, the points are in order, and
// the reading between its neighbours.
func TestRulerHoldsEveryMoisture(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	f := NewLoadForm(r.Session, nil)
	f.Type("commodity", "corn")
	rapid.Check(t, func(t *rapid.T) {
		hundredth := rapid.IntRange(300, 6000).Draw(t, "hundredths of a percent")
		m := quantity.Int(int64(hundredth), quantity.Percent).Div(quantity.Int(100, quantity.Plain))
		f.Type("moisture", quantity.To("0.01", quantity.Down).Apply(m).Fixed(2))
		last := -1
		for _, mark := range f.Preview().Ruler.Marks {
			if mark.At < 0 || mark.At > 1000 {
				t.Fatalf("%s: the mark %+v is off the ruler", m, mark)
			}
			if mark.Kind == model.PointMark && mark.At <= last {
				t.Fatalf("%s: the points are not in order at %+v", m, mark)
			}
			if mark.Kind == model.PointMark {
				last = mark.At
			}
		}
	})
}

// A tenth of a point is worth what the load brings as it is, less what it
// brings one tenth wetter.
func TestTenthIsTheDifferenceOfTwoSettlements(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	f := corn(r, "moisture")
	if f.Preview().Tenth != "" {
		t.Error("a load without moisture has a tenth that is worth something")
	}
	at := func(moisture string) (bushels, payable quantity.Amount) {
		f.Type("moisture", moisture)
		s := f.Now.settlement
		return s.Quantity.Value(), s.Payable.Value()
	}
	wetBushels, wetMoney := at("17.3")
	bushels, money := at("17.2")
	want := fmt.Sprintf("A tenth of a point is worth %s, %s.", bushels.Sub(wetBushels).FixedString(2), money.Sub(wetMoney).FixedString(2))
	if got := f.Preview().Tenth; got != want {
		t.Errorf("said %q, want %q", got, want)
	}
	f.Type("price", "")
	if got := f.Preview().Tenth; !strings.HasSuffix(got, "in charges and discounts.") {
		t.Errorf("while the price comes later it says %q", got)
	}
}

// A figure that cannot be known yet is a dash, so that nobody takes the blank for
// zero.
func TestBigFiguresBeforeTheWeights(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	for i, got := range NewLoadForm(r.Session, nil).Preview().Figures {
		if got.Value != session.NotYet {
			t.Errorf("figure %d of an empty form is %+v, want a dash", i, got)
		}
	}
}

// The large figures are those of the slip.
func TestBigFigures(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	f := corn(r)
	s := f.Now.settlement
	want := []model.Figure{
		{Caption: "Net", Value: "28,180", Unit: "lb"},
		{Caption: "Settled", Value: strings.TrimSuffix(s.Quantity.Printed(), " bu"), Unit: "bu"},
		{Caption: "Payable", Value: s.Payable.Printed()},
	}
	for i, got := range f.Preview().Figures {
		if got != want[i] {
			t.Errorf("figure %d is %+v, want %+v", i, got, want[i])
		}
	}
	f.Type("price", "")
	if got := f.Preview().Figures[2]; got.Caption != "Charges, discounts" || got.Value != f.Now.settlement.Adjustments.Printed() {
		t.Errorf("while the price comes later: %+v", got)
	}
	f.Type("tare", "60000")
	if got := f.Preview().Figures[0]; got.Value != "-7,700" || got.State != model.Stop {
		t.Errorf("a net below zero is %+v", got)
	}
}

// A problem that stops a load and belongs to no field is shown beside the large
// figures.
func TestMarginOfAStoppedLoad(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	f := corn(r)
	if m := f.Preview().Margin; m.State != model.Plain || !strings.Contains(m.Text, "A tenth of a point") {
		t.Errorf("a good load says %+v", m)
	}
	beside := f.Now.beside("something the form does not ask for")
	f.Now.addMessage(beside, model.Stop, "The deductions take more than the load is worth.")
	if m := f.Preview().Margin; m.State != model.Stop || !strings.Contains(m.Text, "more than the load is worth") {
		t.Errorf("a stopped load says %+v", m)
	}
}

// The draft names who will sign the ticket: the person at the desk, not the elevator's default
// name.
func TestDraftIsSignedByWhoIsAtTheDesk(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	y := NewYard(r.Session)
	fillIn(y.Form(), wholeCorn)
	sessiontest.Must(t, y.Form().Commit())
	if named := r.Session.Desk.Profile().Weigher; named == demo.Manager {
		t.Fatalf("%s is at the desk and named in the profile too", named)
	}
	draft := sessiontest.WordsOf(session.SlipPages(y.Form().Preview().Slip))
	at := strings.Index(draft, "Weighed by")
	if at < 0 || !strings.Contains(draft[at:], demo.Manager) {
		t.Errorf("the draft is not signed by %s:\n%s", demo.Manager, draft)
	}
}

// Under the Canadian rules an elevator sees the edges of the moisture classes, also of grains that
// the order lists under several names, and is asked to test three times near one. Corn is straight
// to 15.5 %.
func TestClassLimits(t *testing.T) {
	r := sessiontest.DemoRoom(t, 5)
	p := r.Session.Desk.Profile()
	p.Rules = "canada"
	sessiontest.Must(t, scalehouse.SetProfile(t.Context(), r.Session.Desk, p))
	for _, c := range []struct {
		grain, moisture, mark string
		warned                bool
	}{
		{"corn", "15.3", "the end of straight 15.5", true},
		{"corn", "16.4", "the end of straight 15.5", false},
		{"soybeans", "13.8", "the end of straight 14.0", true},
	} {
		f := NewLoadForm(r.Session, nil)
		f.Type("commodity", c.grain)
		f.Type("moisture", c.moisture)
		var labels []string
		for _, m := range f.Preview().Ruler.Marks {
			labels = append(labels, m.Label)
		}
		if !strings.Contains(strings.Join(labels, "\n"), c.mark) {
			t.Errorf("%s at %s: the ruler lacks %q", c.grain, c.moisture, c.mark)
		}
		note := ""
		for _, field := range f.Fields() {
			if field.ID == "moisture" {
				note = field.Note
			}
		}
		if got := strings.Contains(note, "test three times"); got != c.warned {
			t.Errorf("%s at %s: warned %v, want %v: %q", c.grain, c.moisture, got, c.warned, note)
		}
	}
}
