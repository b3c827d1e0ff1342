package yard

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

// looks is all that a yard shows: its rows, and every form with its fields.
func looks(y *Yard) []string {
	out := []string{fmt.Sprintf("in hand %q", y.Form().ID())}
	for _, row := range y.Rows() {
		out = append(out, fmt.Sprintf("%+v", row))
		if row.ID != "" {
			out = append(out, look(y.form(y.find(row.ID)))...)
		}
	}
	return append(out, look(y.blank)...)
}

func look(f *LoadForm) []string {
	out := []string{fmt.Sprintf("form %q leaves %v driver %q", f.ID(), f.Now.Leaves(), f.typed.driverOn)}
	for _, field := range f.Fields() {
		out = append(out, fmt.Sprintf("%s: %q %d %q missing %v", field.ID, field.Value, field.State, field.Note+field.Reading, field.Missing))
	}
	return out
}

// Whatever is typed is there again after the program stopped at any moment, with
// the same message beside it.
func TestTypedTextsStandAgain(t *testing.T) {
	type act func(*sessiontest.Room, *Yard)
	typed := func(texts ...string) act {
		return func(_ *sessiontest.Room, y *Yard) {
			for _, text := range texts {
				field, text, _ := strings.Cut(text, " ")
				y.Form().Type(field, text)
			}
		}
	}
	commit := func(r *sessiontest.Room, y *Yard) { sessiontest.Must(r.T, y.Form().Commit()); y.Refresh() }
	for name, c := range map[string]struct {
		acts  []act
		field string
		want  string
	}{
		"the first letter of a new truck":  {[]act{typed("truck 7")}, "truck", "7"},
		"a weight that cannot be":          {[]act{typed("grower 123", "commodity corn", "gross 52337"), commit}, "gross", "52337"},
		"letters for a weight":             {[]act{typed("truck 77"), commit, typed("gross 5x"), commit}, "gross", "5x"},
		"a figure not yet left":            {[]act{typed("truck 77"), commit, typed("moisture 17.2")}, "moisture", "17.2"},
		"a grower nobody knows":            {[]act{typed("grower 999"), commit}, "grower", "999"},
		"what the book has, typed away":    {[]act{typed("truck 77", "remark dusty"), commit, typed("remark ")}, "remark", ""},
		"a truck that takes grain away":    {[]act{func(r *sessiontest.Room, y *Yard) { sessiontest.Must(r.T, y.Form().TurnRound()) }, typed("consignee Mill")}, "consignee", "Mill"},
		"the weights of a trailer":         {[]act{typed("truck 77"), commit, func(_ *sessiontest.Room, y *Yard) { y.Form().Split() }, typed("gross.trailer 21x")}, "gross.trailer", "21x"},
		"a result beyond the usual ones":   {[]act{typed("commodity corn", "truck 77"), commit, anotherResult("heat-damage"), typed("heat-damage 0.x")}, "heat-damage", "0.x"},
		"a weight that waits for a reason": {[]act{linked, typed("truck 77", "gross 52300"), commit}, "gross", "52300"},
		"another text in the next field":   {[]act{typed("grower 123", "truck 8", "gross 5"), commit, typed("price x", "bin P")}, "bin", "P"},
	} {
		t.Run(name, func(t *testing.T) {
			r := sessiontest.EmptyDemo(t)
			y := NewYard(r.Session)
			for _, do := range c.acts {
				do(r, y)
			}
			next := r.Reopen()
			after := NewYard(next.Session)
			if got, want := looks(after), looks(y); !reflect.DeepEqual(got, want) {
				t.Errorf("the yard is\n%s\nand was\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
			}
			if got := sessiontest.FieldOf(t, after.Form(), c.field); got.Value != c.want {
				t.Errorf("%s holds %q", c.field, got.Value)
			}
			next.Session.Drafts().SayBack()
			sessiontest.WantSaid(t, next, model.Plain, "What was typed before the stop is here again: ")
		})
	}
}

// Letters by which somebody looked for a grower are in the field again, as if the
// keyboard had left it.
func TestLettersLookedForStandAgain(t *testing.T) {
	r := sessiontest.EmptyDemo(t)
	NewYard(r.Session).Form().Search("grower", "holl")
	next := r.Reopen()
	got := sessiontest.FieldOf(t, NewYard(next.Session).Form(), "grower")
	if got.Value != "holl" || got.State != model.Stop || !strings.Contains(got.Note, `"holl"`) {
		t.Errorf("the field holds %+v", got)
	}
	y := NewYard(r.Session)
	y.Form().Search("grower", "holl")
	y.Form().Type("grower", "123")
	if left := strings.Join(r.Drafts(), " "); strings.Contains(left, "holl") || !strings.Contains(left, "123") {
		t.Errorf("after one was chosen there is %q", left)
	}
}

func anotherResult(factor string) func(*sessiontest.Room, *Yard) {
	return func(r *sessiontest.Room, y *Yard) {
		ResultsOf(y.Form()).AskMore(func(string) {})
		r.Answer(map[string]string{"factor": factor})
	}
}

func linked(r *sessiontest.Room, _ *Yard) { r.Session.Indicator = &sessiontest.FakeScale{} }

// After any acts at the yard, in any order, the yard is the same after the program stopped at any
// moment.
func TestYardStandsAsItWas(t *testing.T) {
	demo := sessiontest.EmptyDemo(t)
	rapid.Check(t, func(rt *rapid.T) {
		r := demo.Clear()
		y := NewYard(r.Session)
		for range rapid.IntRange(1, 12).Draw(rt, "steps") {
			switch rapid.IntRange(0, 9).Draw(rt, "act") {
			case 0:
				y.TakeNew()
			case 1:
				y.TakePlace(rapid.IntRange(0, 3).Draw(rt, "place"))
			case 2:
				sessiontest.Must(t, y.Form().Commit())
				y.Refresh()
			case 3:
				y.Step(1)
			case 4:
				y.Form().Restore(rapid.SampledFrom([]string{"gross", "truck", "price"}).Draw(rt, "back"))
			default:
				field := rapid.SampledFrom([]string{"grower", "commodity", "truck", "gross", "moisture", "tare", "price", "remark"}).Draw(rt, "field")
				y.Form().Type(field, rapid.SampledFrom([]string{"123", "corn", "77", "52300", "17.2", "x", "", "24120", "52,3"}).Draw(rt, "text"))
			}
		}
		y.Refresh() // as every act ends
		if got, want := looks(NewYard(r.Reopen().Session)), looks(y); !reflect.DeepEqual(got, want) {
			rt.Fatalf("the yard is\n%s\nand was\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
		}
	})
}

// A form tells that its truck stands on the yard with another load, also when the other got it later.
func TestFormKnowsOfATruckThatCameLater(t *testing.T) {
	r := sessiontest.EmptyDemo(t)
	y := NewYard(r.Session)
	for _, tare := range []string{"24120", "24160"} { // two loads, with a truck each that is not named yet
		y.TakeNew()
		y.Form().Type("tare", tare)
		sessiontest.Must(t, y.Form().Commit())
		y.Refresh()
	}
	for place := range 2 {
		y.TakePlace(place)
		y.Form().Type("truck", "77")
		sessiontest.Must(t, y.Form().Commit())
		y.Refresh()
	}
	for place := range 2 {
		y.TakePlace(place)
		if got := sessiontest.FieldOf(t, y.Form(), "truck"); got.State != model.Warn {
			t.Errorf("at place %d the truck's field is %+v", place, got)
		}
	}
}

// A text that became a fact is no draft any more, and an issued load leaves none.
func TestFactsLeaveNoDraft(t *testing.T) {
	r := sessiontest.EmptyDemo(t)
	y := NewYard(r.Session)
	for _, field := range wholeCorn {
		y.Form().Type(field[0], field[1])
		if y.Form().IsTyped(field[0]) && len(r.Drafts()) == 0 {
			t.Errorf("typed, %s is no draft", field[0])
		}
		sessiontest.Must(t, y.Form().Commit())
		y.Refresh()
		if left := r.Drafts(); len(left) > 0 {
			t.Errorf("after %s was written down there is %q", field[0], left)
		}
	}
	y.Form().Type("price", "x")
	y.Form().Restore("price")
	if left := r.Drafts(); len(left) > 0 {
		t.Errorf("after the text was given up there is %q", left)
	}
	y.Form().Type("remark", "dusty") // not left
	if !y.Issue() {
		t.Fatalf("not issued: %q", r.Last())
	}
	if left := r.Drafts(); len(left) > 0 {
		t.Errorf("after the ticket there is %q", left)
	}
	next := r.Reopen()
	NewYard(next.Session)
	if next.Session.Drafts().SayBack(); len(next.Said) > 0 {
		t.Errorf("said %q", next.Said)
	}
}

// The sentence is said once, and after somebody has signed in.
func TestBackIsSaidOnceSomebodySignedIn(t *testing.T) {
	r := sessiontest.EmptyDemo(t)
	NewYard(r.Session).Form().Type("truck", "7")
	next := r.AgainAt(sessiontest.Noon, "")
	NewYard(next.Session)
	next.Session.SignInIfAlone()
	next.Answer(map[string]string{"who": "Owen Tarrant"})
	sessiontest.WantSaid(t, next, model.OK, "Owen Tarrant, clerk is signed in. What was typed before the stop is here again: truck 7.")
	next.Session.Drafts().SayBack()
	if len(next.Said) != 1 {
		t.Errorf("said %q", next.Said)
	}
}

// Two desks on one book do not block each other: each opens with what was typed at the other,
// either may write, and the drafts of a load end with it, even while the other desk still types.
func TestTwoDesksOnOneBook(t *testing.T) {
	a := sessiontest.EmptyDemo(t)
	ya := NewYard(a.Session)
	for _, field := range wholeCorn {
		ya.Form().Type(field[0], field[1])
	}
	sessiontest.Must(t, ya.Form().Commit())
	ya.Refresh()
	id := ya.Form().ID()
	ya.Form().Type("price", "x")
	b := a.Reopen()
	yb := NewYard(b.Session)
	yb.Take(id)
	if got := sessiontest.FieldOf(t, yb.Form(), "price"); got.Value != "x" || got.State != model.Stop {
		t.Errorf("the second desk shows the price as %+v", got)
	}
	yb.Form().Type("price", "4.15")
	sessiontest.Must(t, yb.Form().Commit())
	if got := sessiontest.FieldOf(t, ya.Form(), "price"); got.Value != "x" {
		t.Errorf("the first desk lost %+v", got)
	}
	ya.Form().Restore("price")
	ya.Refresh()
	if !ya.Issue() {
		t.Fatalf("not issued: %q", a.Last())
	}
	yb.Form().Type("remark", "too late")
	if err := yb.Form().Commit(); err == nil {
		t.Error("a load that has left was changed")
	}
	yb.Refresh()
	if yb.Form().ID() != "" {
		t.Errorf("in hand at the second desk is %q", yb.Form().ID())
	}
	c := a.Reopen()
	NewYard(c.Session)
	if left := c.Drafts(); len(left) > 0 {
		t.Errorf("there is %q", left)
	}
}
