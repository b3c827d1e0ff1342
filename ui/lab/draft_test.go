package lab

import (
	"context"
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"tenthpoint/internal/book"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/sessiontest"
	"tenthpoint/ui/setup"
	"tenthpoint/ui/yard"

	"pgregory.net/rapid"
)

// looks is all that the bench shows of the current sample.
func (b *Bench) looks() []string {
	out := []string{fmt.Sprintf("in hand %q", b.current.id())}
	for _, f := range b.Result().Fields {
		out = append(out, fmt.Sprintf("%s: %q %d %q", f.ID, f.Value, f.State, f.Note+f.Reading))
	}
	return append(out, fmt.Sprint(b.Result().Figures), fmt.Sprint(b.Result().Tests), fmt.Sprint(b.Result().Statuses), fmt.Sprint(b.Result().Working(b.session.Language)), fmt.Sprint(b.Result().Ruler))
}

// The bench is the same after the program stopped: tests, texts of the next one,
// tests left out, the other results.
func TestBenchStandsAsItWas(t *testing.T) {
	for name, act := range map[string]func(*testing.T, *sessiontest.Room, *Bench){
		"two tests, half a third": func(t *testing.T, _ *sessiontest.Room, b *Bench) {
			b.test(t, "57")
			b.test(t, "58")
			b.typeAll("dial 5")
		},
		"nothing but a mass":  func(_ *testing.T, _ *sessiontest.Room, b *Bench) { b.typeAll("mass 25") },
		"a figure that is no": func(_ *testing.T, _ *sessiontest.Room, b *Bench) { b.typeAll("mass 2x", "temperature warm") },
		"a test left out": func(t *testing.T, r *sessiontest.Room, b *Bench) {
			b.test(t, "57")
			b.test(t, "58")
			b.test(t, "70")
			decisions{b}.leaveOut("3")
			if wrong := r.Answer(map[string]string{"rule": string(moisture.Spoiled), "reason": "spilt"}); len(wrong) > 0 {
				t.Fatal(wrong)
			}
		},
		"other results, and where it is kept": func(_ *testing.T, _ *sessiontest.Room, b *Bench) {
			b.typeAll("test-weight 5x", "damage 1.2", "probes front, back", "place shelf 4")
		},
		"degrees of the other scale": func(t *testing.T, _ *sessiontest.Room, b *Bench) {
			b.TurnDegrees()
			b.typeAll("mass 250", "temperature 18", "room 20", "dial 57")
			sessiontest.Must(t, b.Add())
		},
		"a certificate's figure": func(t *testing.T, _ *sessiontest.Room, b *Bench) {
			b.typeAll("method typed", "percent 12.1", "reason certificate 118")
			sessiontest.Must(t, b.Add())
		},
		"grain without a load": func(t *testing.T, _ *sessiontest.Room, b *Bench) {
			b.Take("")
			b.typeAll("grain corn", "method dial")
			b.test(t, "57")
		},
	} {
		t.Run(name, func(t *testing.T) {
			r, b := benchRoom(t)
			act(t, r, b)
			next := r.Reopen()
			after := NewBench(next.Session)
			want := b.looks()
			if name == "degrees of the other scale" { // written out where the bench asks for the usual one
				for i := range want {
					want[i] = strings.Replace(strings.Replace(want[i], `"18"`, `"18 C"`, 1), `"20"`, `"20 C"`, 1)
				}
				after.TurnDegrees()
			}
			if got := after.looks(); !reflect.DeepEqual(got, want) {
				t.Errorf("the bench is\n%s\nand was\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
			}
			next.Session.Drafts().SayBack()
			sessiontest.WantSaid(t, next, model.Plain, "at the bench")
		})
	}
}

// Tests made on one day and recorded on the next keep their day, their person and their meter, and
// are recorded by whoever is there.
func TestTestsMadeBeforeTheStopAreWritten(t *testing.T) {
	r, b := benchRoom(t)
	b.test(t, "57")
	b.test(t, "58")
	b.test(t, "57")
	id := b.current.id()
	next := r.AgainAt(sessiontest.Noon.Add(24*time.Hour), "Owen Tarrant")
	after := NewBench(next.Session)
	if after.current.id() != id {
		t.Fatalf("current is %q, want %q", after.current.id(), id)
	}
	sessiontest.Must(t, after.Write())
	l, err := office.Load(t.Context(), next.Session.Desk, id)
	sessiontest.Must(t, err)
	readings := l.Sample.Moisture.Bench.Tests.Readings
	if len(readings) != 3 {
		t.Fatalf("the book has %d tests", len(readings))
	}
	for _, reading := range readings {
		if reading.Day != quantity.MustDate("2025-10-14") || reading.Tester != r.Session.Desk.Who().Name || reading.Meter != "D1" {
			t.Errorf("a test is %+v", reading)
		}
	}
	if left := next.Drafts(); len(left) > 0 {
		t.Errorf("after it was written there is %q", left)
	}
	third := next.Reopen()
	NewBench(third.Session)
	if third.Session.Drafts().SayBack(); len(third.Said) > 0 {
		t.Errorf("said %q", third.Said)
	}
}

// Tests that the book has gone on without are dropped with a message; those in the
// book stay.
func TestTestsTheBookHasGoneOnWithout(t *testing.T) {
	r, b := benchRoom(t)
	b.test(t, "57")
	id := b.current.id()
	other := r.Reopen()
	NewBench(other.Session) // the same tests, from the same draft
	texts := b.current.draft()
	b.typeAll("dial 60")
	sessiontest.Must(t, b.Add())
	b.typeAll("dial 61")
	sessiontest.Must(t, b.Add())
	sessiontest.Must(t, b.Write())
	texts["test.0001"] = strings.Replace(texts["test.0001"], "57", "58", 1)
	sessiontest.Must(t, scalehouse.SaveDraft(r.Session.Desk, "bench", id, texts))
	next := r.Reopen()
	after := NewBench(next.Session)
	after.Take(id)
	if got := len(after.Result().Tests); got != 3 {
		t.Errorf("the bench shows %d tests, want the book's 3", got)
	}
	next.Session.Drafts().SayBack()
	if next.State != model.Warn || !strings.Contains(next.Last(), "the book has other tests by now") {
		t.Errorf("said %d %q", next.State, next.Last())
	}
}

// The tests of every sample are kept, not only of the current one, and the way back
// to the yard too.
func TestEverySampleIsKept(t *testing.T) {
	r := sessiontest.DemoRoom(t, 120)
	y, b := yard.NewYard(r.Session), NewBench(r.Session)
	rows := y.Rows()
	for i, row := range rows {
		y.Take(row.ID)
		b.TakeFromYard(y.Form())
		b.typeAll("method typed", fmt.Sprintf("percent 1%d.1", i), "reason a certificate")
		sessiontest.Must(t, b.Add())
	}
	next := r.Reopen()
	after := NewBench(next.Session)
	yard.NewYard(next.Session)
	for i, row := range rows {
		s := after.samples[row.ID]
		if s == nil || !slices.ContainsFunc(s.tests.Readings, func(r moisture.Reading) bool { return r.Percent.Figure() == fmt.Sprintf("1%d.1", i) }) {
			t.Errorf("load %s stands at the bench as %+v", row.ID, s)
		}
	}
	if after.current.id() != b.current.id() || !after.back {
		t.Errorf("current is %q, back to the yard %v", after.current.id(), after.back)
	}
}

// A damaged draft blocks nothing: the desk opens, a load is received, and a message
// says what was dropped.
func TestDamagedDraftsStopNobody(t *testing.T) {
	_, b := benchRoom(t)
	b.test(t, "57")
	reading := b.current.draft()["test.0001"]
	names := []string{
		"field.gross", "field.nothing", "field.", "reason.gross", "factor.nothing", "split", "driver", "leaves", "load", "place.1", "place.x", "back",
		"typed.method", "typed.grain", "typed.temperature", "result.bcfm", "test.0001", "test.0002", "drop.0001", "degrees", "business", "person", "name",
	}
	demo := sessiontest.EmptyDemo(t)
	rapid.Check(t, func(rt *rapid.T) {
		r := demo.Clear()
		y := yard.NewYard(r.Session)
		y.Form().Type("truck", "77")
		y.Form().Type("commodity", "soybeans")
		sessiontest.Must(t, y.Form().Commit())
		id := y.Form().ID()
		text := rapid.OneOf(rapid.String(), rapid.Just(id), rapid.SampledFrom([]string{"", "on", reading, strings.ReplaceAll(reading, "57", "5777"), strings.ReplaceAll(reading, "D1", "D9"), `{"test":1}`, "[]", "null"}))
		for _, place := range []session.DraftAt{{Place: "load", ID: id}, {Place: "load", ID: ""}, {Place: "bench", ID: id}, {Place: "bench", ID: ""}, {Place: session.Current, ID: "yard"}, {Place: session.Current, ID: "bench"}, setup.SetUpDraft, {Place: "ask grower", ID: "grower "}} {
			sessiontest.Must(t, scalehouse.SaveDraft(r.Session.Desk, place.Place, place.ID, rapid.MapOfN(rapid.SampledFrom(names), text, 1, 5).Draw(rt, place.Place)))
		}
		next := r.Reopen()
		after, bench := yard.NewYard(next.Session), NewBench(next.Session)
		setup.NewSetUp(next.Session)
		next.Session.Drafts().SayBack()
		bench.Take(id)
		bench.Type("method", "typed")
		bench.typeAll("percent 12.1", "reason a certificate")
		after.Take(id)
		for _, field := range [][2]string{{"grower", "123"}, {"gross", "52300"}, {"moisture", "12.1"}, {"tare", "24120"}} {
			after.Form().Type(field[0], field[1])
		}
		sessiontest.Must(t, after.Form().Commit())
		if l, err := office.Load(context.Background(), next.Session.Desk, id); err != nil || l.Sample.Moisture == nil {
			rt.Fatalf("the load is %+v, %v", l, err)
		}
	})
}

// Texts are kept as they were typed, and as texts only.
func TestDraftsAreTextsOnly(t *testing.T) {
	r, b := benchRoom(t)
	b.test(t, "57")
	b.typeAll("temperature 18c", "dial 5")
	yard.NewYard(r.Session).Form().Type("gross", "52,3")
	rows, err := r.Session.Desk.Book().Drafts(context.Background())
	sessiontest.Must(t, err)
	if !slices.ContainsFunc(rows, func(d book.Draft) bool { return strings.Contains(d.Texts, `"52,3"`) }) {
		t.Errorf("the weight is not as it was typed: %v", rows)
	}
	for _, row := range rows {
		var texts map[string]string
		if err := json.Unmarshal([]byte(row.Texts), &texts); err != nil {
			t.Errorf("%s %s: %v", row.Place, row.ID, err)
		}
	}
}
