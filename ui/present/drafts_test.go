package present

import (
	"context"
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"pgregory.net/rapid"

	"tenthpoint/internal/desk"
	"tenthpoint/internal/store"
	"tenthpoint/schedules"
	"tenthpoint/ui/model"
)

// again is another window on the same book, as after the program was killed:
// the first was told nothing and closed nothing.
func (r *room) again() *room {
	r.t.Helper()
	return r.againAt(noon, r.frame.Desk.Who().Name)
}

// Rates and charts are the same in every window.
var (
	ratesOnce  = sync.OnceValues(schedules.Editions)
	chartsOnce = sync.OnceValues(schedules.Charts)
)

// clear empties the yard, and forgets what was typed.
func (r *room) clear() *room {
	r.t.Helper()
	rows, err := r.frame.Desk.Book().Drafts(context.Background())
	must(r.t, err)
	for _, row := range rows {
		must(r.t, r.frame.Desk.Jot(row.Place, row.ID, nil))
	}
	trucks, err := r.frame.Desk.Yard(context.Background())
	must(r.t, err)
	for _, l := range trucks {
		must(r.t, r.frame.Desk.Refuse(context.Background(), l.ID, "an empty yard for the test"))
	}
	return r.again()
}

func (r *room) againAt(now time.Time, who string) *room {
	r.t.Helper()
	editions, err := ratesOnce()
	must(r.t, err)
	charts, err := chartsOnce()
	must(r.t, err)
	d, err := desk.Open(context.Background(), r.frame.Desk.Book(), desk.Options{
		Name: "test", Rates: editions, Charts: charts, Place: time.UTC, Who: who, Clock: func() time.Time { return now },
	})
	must(r.t, err)
	next := &room{t: r.t, papers: map[string][]byte{}}
	next.frame = NewFrame(d, next)
	next.frame.Zone, next.frame.Indicator = time.UTC, r.frame.Indicator
	next.frame.Attach(next)
	return next
}

// drafts are the drafts of the book, as text.
func (r *room) drafts() []string {
	r.t.Helper()
	rows, err := r.frame.Desk.Book().Drafts(context.Background())
	must(r.t, err)
	var out []string
	for _, row := range rows {
		if row.Place != inHand {
			out = append(out, fmt.Sprintf("%s %s %s", row.Place, row.ID, row.Texts))
		}
	}
	return out
}

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
	out := []string{fmt.Sprintf("form %q leaves %v driver %q", f.ID(), f.Leaves(), f.driverOn)}
	for _, field := range f.Fields() {
		out = append(out, fmt.Sprintf("%s: %q %d %q missing %v", field.ID, field.Value, field.State, field.Note+field.Reading, field.Missing))
	}
	return out
}

// What is typed stands again after a stop, whatever it is: with the sentence
// beside it, at whatever moment.
func TestTypedTextsStandAgain(t *testing.T) {
	type act func(*room, *Yard)
	typed := func(texts ...string) act {
		return func(_ *room, y *Yard) {
			for _, text := range texts {
				field, text, _ := strings.Cut(text, " ")
				y.Form().Type(field, text)
			}
		}
	}
	commit := func(r *room, y *Yard) { must(r.t, y.Form().Commit()); y.Refresh() }
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
		"a truck that takes grain away":    {[]act{func(r *room, y *Yard) { must(r.t, y.Form().TurnRound()) }, typed("consignee Mill")}, "consignee", "Mill"},
		"the weights of a trailer":         {[]act{typed("truck 77"), commit, func(_ *room, y *Yard) { y.Form().Split() }, typed("gross.trailer 21x")}, "gross.trailer", "21x"},
		"a result beyond the usual ones":   {[]act{typed("commodity corn", "truck 77"), commit, anotherResult("heat-damage"), typed("heat-damage 0.x")}, "heat-damage", "0.x"},
		"a weight that waits for a reason": {[]act{linked, typed("truck 77", "gross 52300"), commit}, "gross", "52300"},
		"another text in the next field":   {[]act{typed("grower 123", "truck 8", "gross 5"), commit, typed("price x", "bin P")}, "bin", "P"},
	} {
		t.Run(name, func(t *testing.T) {
			r := emptyDemo(t)
			y := NewYard(r.frame)
			for _, do := range c.acts {
				do(r, y)
			}
			next := r.again()
			after := NewYard(next.frame)
			if got, want := looks(after), looks(y); !reflect.DeepEqual(got, want) {
				t.Errorf("the yard is\n%s\nand was\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
			}
			if got := fieldOf(t, after.Form(), c.field); got.Value != c.want {
				t.Errorf("%s holds %q", c.field, got.Value)
			}
			next.frame.SayBack()
			wantSaid(t, next, model.Plain, "What was typed before the stop is here again: ")
		})
	}
}

// Letters by which somebody looked for a grower stand in the field again, as if
// the keyboard had left it.
func TestLettersLookedForStandAgain(t *testing.T) {
	r := emptyDemo(t)
	NewYard(r.frame).Form().Search("grower", "holl")
	next := r.again()
	got := fieldOf(t, NewYard(next.frame).Form(), "grower")
	if got.Value != "holl" || got.State != model.Stop || !strings.Contains(got.Note, `"holl"`) {
		t.Errorf("the field holds %+v", got)
	}
	y := NewYard(r.frame)
	y.Form().Search("grower", "holl")
	y.Form().Type("grower", "123")
	if left := strings.Join(r.drafts(), " "); strings.Contains(left, "holl") || !strings.Contains(left, "123") {
		t.Errorf("after one was chosen there is %q", left)
	}
}

func anotherResult(factor string) func(*room, *Yard) {
	return func(r *room, y *Yard) {
		y.Form().AskFactor(func(string) {})
		r.answer(map[string]string{"factor": factor})
	}
}

func linked(r *room, _ *Yard) { r.frame.Indicator = &display{} }

// Whatever is done at the yard, in whatever order, it stands as it was after a
// stop at any moment.
func TestYardStandsAsItWas(t *testing.T) {
	demo := emptyDemo(t)
	rapid.Check(t, func(rt *rapid.T) {
		r := demo.clear()
		y := NewYard(r.frame)
		for range rapid.IntRange(1, 12).Draw(rt, "steps") {
			switch rapid.IntRange(0, 9).Draw(rt, "act") {
			case 0:
				y.TakeNew()
			case 1:
				y.TakePlace(rapid.IntRange(0, 3).Draw(rt, "place"))
			case 2:
				must(t, y.Form().Commit())
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
		if got, want := looks(NewYard(r.again().frame)), looks(y); !reflect.DeepEqual(got, want) {
			rt.Fatalf("the yard is\n%s\nand was\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
		}
	})
}

// What became a fact is no draft any more, and an issued load leaves nothing.
func TestFactsLeaveNoDraft(t *testing.T) {
	r := emptyDemo(t)
	y := NewYard(r.frame)
	for _, field := range wholeCorn {
		y.Form().Type(field[0], field[1])
		if len(r.drafts()) == 0 {
			t.Errorf("typed, %s is no draft", field[0])
		}
		must(t, y.Form().Commit())
		y.Refresh()
		if left := r.drafts(); len(left) > 0 {
			t.Errorf("after %s was written down there is %q", field[0], left)
		}
	}
	y.Form().Type("price", "x")
	y.Form().Restore("price")
	if left := r.drafts(); len(left) > 0 {
		t.Errorf("after the text was given up there is %q", left)
	}
	y.Form().Type("remark", "dusty") // not left
	if !y.Issue() {
		t.Fatalf("not issued: %q", r.last())
	}
	if left := r.drafts(); len(left) > 0 {
		t.Errorf("after the ticket there is %q", left)
	}
	next := r.again()
	NewYard(next.frame)
	if next.frame.SayBack(); len(next.said) > 0 {
		t.Errorf("said %q", next.said)
	}
}

// The sentence is said once, and after somebody has signed in.
func TestBackIsSaidOnceSomebodySignedIn(t *testing.T) {
	r := emptyDemo(t)
	NewYard(r.frame).Form().Type("truck", "7")
	next := r.againAt(noon, "")
	NewYard(next.frame)
	next.frame.SignInIfAlone()
	next.answer(map[string]string{"who": "Owen Tarrant"})
	wantSaid(t, next, model.OK, "Owen Tarrant, clerk is signed in. What was typed before the stop is here again: truck 7.")
	next.frame.SayBack()
	if len(next.said) != 1 {
		t.Errorf("said %q", next.said)
	}
}

// Two desks on one book stand in nobody's way: each opens with what was typed
// at the other, either may write, and a load that leaves takes its drafts along,
// whatever the other desk still types.
func TestTwoDesksOnOneBook(t *testing.T) {
	a := emptyDemo(t)
	ya := NewYard(a.frame)
	for _, field := range wholeCorn {
		ya.Form().Type(field[0], field[1])
	}
	must(t, ya.Form().Commit())
	ya.Refresh()
	id := ya.Form().ID()
	ya.Form().Type("price", "x")
	b := a.again()
	yb := NewYard(b.frame)
	yb.Take(id)
	if got := fieldOf(t, yb.Form(), "price"); got.Value != "x" || got.State != model.Stop {
		t.Errorf("the second desk shows the price as %+v", got)
	}
	yb.Form().Type("price", "4.15")
	must(t, yb.Form().Commit())
	if got := fieldOf(t, ya.Form(), "price"); got.Value != "x" {
		t.Errorf("the first desk lost %+v", got)
	}
	ya.Form().Restore("price")
	ya.Refresh()
	if !ya.Issue() {
		t.Fatalf("not issued: %q", a.last())
	}
	yb.Form().Type("remark", "too late")
	if err := yb.Form().Commit(); err == nil {
		t.Error("a load that has left was changed")
	}
	yb.Refresh()
	if yb.Form().ID() != "" {
		t.Errorf("in hand at the second desk is %q", yb.Form().ID())
	}
	c := a.again()
	NewYard(c.frame)
	if left := c.drafts(); len(left) > 0 {
		t.Errorf("there is %q", left)
	}
}

// A draft damaged in whatever way stops nobody: the desk opens, a load is
// received, and what is dropped is told.
func TestDamagedDraftsStopNobody(t *testing.T) {
	_, b := benchRoom(t)
	b.test(t, "57")
	reading := b.hand.texts()["test.0001"]
	names := []string{
		"field.gross", "field.nothing", "field.", "reason.gross", "factor.nothing", "split", "driver", "leaves", "load", "place.1", "place.x", "back",
		"typed.method", "typed.grain", "typed.temperature", "result.bcfm", "test.0001", "test.0002", "drop.0001", "degrees", "business", "person", "name",
	}
	demo := emptyDemo(t)
	rapid.Check(t, func(rt *rapid.T) {
		r := demo.clear()
		y := NewYard(r.frame)
		y.Form().Type("truck", "77")
		y.Form().Type("commodity", "soybeans")
		must(t, y.Form().Commit())
		id := y.Form().ID()
		text := rapid.OneOf(rapid.String(), rapid.Just(id), rapid.SampledFrom([]string{"", "on", reading, strings.ReplaceAll(reading, "57", "5777"), strings.ReplaceAll(reading, "D1", "D9"), `{"test":1}`, "[]", "null"}))
		for _, place := range []draftAt{{"load", id}, {"load", ""}, {"bench", id}, {"bench", ""}, {inHand, "yard"}, {inHand, "bench"}, setUpDraft, {"ask grower", "grower "}} {
			must(t, r.frame.Desk.Jot(place.place, place.id, rapid.MapOfN(rapid.SampledFrom(names), text, 1, 5).Draw(rt, place.place)))
		}
		next := r.again()
		after, bench := NewYard(next.frame), NewBench(next.frame)
		NewSetUp(next.frame)
		next.frame.SayBack()
		bench.Take(id)
		bench.Type("method", "typed")
		bench.typeAll("percent 12.1", "reason a certificate")
		after.Take(id)
		for _, field := range [][2]string{{"grower", "123"}, {"gross", "52300"}, {"moisture", "12.1"}, {"tare", "24120"}} {
			after.Form().Type(field[0], field[1])
		}
		must(t, after.Form().Commit())
		if l, err := next.frame.Desk.Load(context.Background(), id); err != nil || l.Sample.Moisture == nil {
			rt.Fatalf("the load is %+v, %v", l, err)
		}
	})
}

// Texts go into the book as they were typed and as nothing but texts.
func TestDraftsAreTextsOnly(t *testing.T) {
	r, b := benchRoom(t)
	b.test(t, "57")
	b.typeAll("temperature 18c", "dial 5")
	NewYard(r.frame).Form().Type("gross", "52,3")
	rows, err := r.frame.Desk.Book().Drafts(context.Background())
	must(t, err)
	if !slices.ContainsFunc(rows, func(d store.Draft) bool { return strings.Contains(d.Texts, `"52,3"`) }) {
		t.Errorf("the weight is not as it was typed: %v", rows)
	}
	for _, row := range rows {
		var texts map[string]string
		if err := json.Unmarshal([]byte(row.Texts), &texts); err != nil {
			t.Errorf("%s %s: %v", row.Place, row.ID, err)
		}
	}
}
