package scalehouse_test

import (
	"context"
	"database/sql"
	"fmt"
	"strings"
	"testing"
	"time"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/scalehouse"
)

var ctx = context.Background()

// scene is a small invented elevator with a clock that tests move.
type scene struct {
	*scalehouse.Desk
	t    testing.TB
	book *sqlite.Book
	now  time.Time
}

// The people of the scene.
const (
	manager = "Mae Orton"
	clerk   = "Cal Reyes"
	tester  = "Tess Lind"
)

func newScene(t testing.TB) *scene {
	t.Helper()
	book, err := sqlite.OpenScratch()
	must(t, err)
	return sceneOn(t, book)
}

// sceneOn sets the elevator up in an empty book.
func sceneOn(t testing.TB, book *sqlite.Book) *scene {
	t.Helper()
	t.Cleanup(func() { _ = book.Close() })
	var err error
	s := &scene{t: t, book: book, now: time.Date(2026, 10, 1, 13, 0, 0, 0, time.UTC)}
	s.Desk, err = scalehouse.Open(ctx, book, scalehouse.Options{
		Name: "scale house", Rates: testRates(t), Place: time.UTC, Who: manager,
		Clock: s.clock(), Check: noQuestions,
	})
	must(t, err)
	must(t, scalehouse.SetProfile(ctx, s.Desk, testProfile()))
	for _, p := range []elevator.Person{{Name: manager, Role: elevator.Manager}, {Name: clerk, Role: elevator.Clerk}, {Name: tester, Role: elevator.Tester}} {
		must(t, scalehouse.SetPerson(ctx, s.Desk, p))
	}
	must(t, s.SignIn(clerk))
	return s
}

// noQuestions lets every load pass the guards: most tests bring one truck again and again.
func noQuestions(*load.Load, guard.Setting) []guard.Finding { return nil }

func testProfile() elevator.Profile {
	return elevator.Profile{
		Business: "Test Elevator", Street: "1 Siding Road", Town: "Nowhere", Phone: "none", Demo: true,
		Scales: []elevator.Scale{{ID: "1", Division: quantity.Int(20, quantity.Lb), Capacity: quantity.Int(120000, quantity.Lb)}},
		Rules:  "us", Grains: []elevator.GrainRule{{Commodity: "corn", Schedule: "house"}}, RetainDays: 3,
		StopOn: []string{"too-cold"},
	}
}

func (s *scene) clock() func() time.Time { return func() time.Time { return s.now } }

// at moves the clock: "2026-10-01 14:05", UTC.
func (s *scene) at(text string) {
	s.t.Helper()
	now, err := time.Parse("2006-01-02 15:04", text)
	must(s.t, err)
	s.now = now
}

// answered answers for a clock that was moved further than goes without a question.
func (s *scene) answered() {
	s.t.Helper()
	must(s.t, scalehouse.AnswerClock(ctx, s.Desk, "moved by the test"))
}

func (s *scene) as(name string) *scene {
	s.t.Helper()
	must(s.t, s.SignIn(name))
	return s
}

func details() load.Details {
	return load.Details{
		Direction: load.Inbound, Commodity: "corn",
		Grower: load.Party{ID: "G1", Name: "Ada Field"}, Truck: load.Truck{ID: "T1"}, Bin: "Pit 1",
	}
}

// arrive opens a load and weighs it full.
func (s *scene) arrive(grossLb int64) string {
	s.t.Helper()
	id, err := scalehouse.OpenLoad(ctx, s.Desk, details())
	must(s.t, err)
	s.weigh(id, load.Gross, grossLb)
	return id
}

func (s *scene) weigh(id string, which load.Which, lb int64) {
	s.t.Helper()
	must(s.t, scalehouse.Weigh(ctx, s.Desk, id, scaleWeight(which, lb)))
}

func scaleWeight(which load.Which, lb int64) load.Weighing {
	return load.Weighing{Which: which, Weight: quantity.Int(lb, quantity.Lb), Source: load.FromScale}
}

func (s *scene) sample(id, moisture string, findings ...load.Finding) {
	s.t.Helper()
	must(s.t, scalehouse.RecordSample(ctx, s.Desk, id, sampleOf(moisture, findings...)))
}

func sampleOf(moisture string, findings ...load.Finding) load.Sample {
	m := quantity.Of(moisture, quantity.Percent)
	return load.Sample{Number: "S1", Tester: tester, Moisture: &load.Moisture{Percent: m, Method: "direct", Meter: "M1"}, Findings: findings}
}

func found(factor grain.FactorID, text string, unit quantity.Unit) load.Finding {
	a := quantity.Of(text, unit)
	return load.Finding{Factor: factor, Amount: &a}
}

// whole brings a load to where only its ticket is due.
func (s *scene) whole() string {
	s.t.Helper()
	id := s.arrive(52300)
	s.sample(id, "18.0")
	s.weigh(id, load.Tare, 24300)
	return id
}

// ticket issues a whole load's ticket.
func (s *scene) ticket() (id string, number int64) {
	s.t.Helper()
	id = s.whole()
	number, err := scalehouse.Issue(ctx, s.Desk, id)
	must(s.t, err)
	return id, number
}

func (s *scene) load(id string) *load.Load {
	s.t.Helper()
	l, err := office.Load(ctx, s.Desk, id)
	must(s.t, err)
	return l
}

// contents is everything the book holds, as text: two equal texts are two equal
// books.
func (s *scene) contents() string {
	s.t.Helper()
	db := raw(s.t, s.book.Path())
	defer db.Close()
	var b strings.Builder
	for _, table := range []string{"facts", "editions", "series", "loads", "owners", "standing", "stock"} {
		rows, err := db.Query("SELECT * FROM " + table + " ORDER BY 1, 2")
		must(s.t, err)
		columns, err := rows.Columns()
		must(s.t, err)
		for rows.Next() {
			cells, into := make([]any, len(columns)), make([]any, len(columns))
			for i := range cells {
				into[i] = &cells[i]
			}
			must(s.t, rows.Scan(into...))
			fmt.Fprintf(&b, "%s %q\n", table, cells)
		}
		must(s.t, rows.Err())
		must(s.t, rows.Close())
	}
	return b.String()
}

// verify wants a sound book.
func (s *scene) verify() audit.Soundness {
	s.t.Helper()
	sound, err := audit.Verify(ctx, s.Desk, s.book, nil)
	must(s.t, err)
	if len(sound.Problems) > 0 {
		s.t.Fatalf("the book is not sound:\n%s", strings.Join(sound.Problems, "\n"))
	}
	return sound
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// refused wants an error with a part of its sentence.
func refused(t *testing.T, err error, sentence string) {
	t.Helper()
	if err == nil {
		t.Errorf("was allowed; want a refusal with %q", sentence)
	} else if !strings.Contains(err.Error(), sentence) {
		t.Errorf("refused with\n  %v\nwant\n  %s", err, sentence)
	}
}

// testRates are invented: water shrink to 15.0 %, half a percent of handling,
// $0.04 per point per wet bushel, foreign material over 5 % turned away.
func testRates(t testing.TB) *rates.Set {
	t.Helper()
	e, err := rates.Read("house-corn.toml", []byte(houseCorn))
	must(t, err)
	set, wrong := rates.NewSet(e)
	if len(wrong) > 0 {
		t.Fatal(wrong)
	}
	return set
}

const houseCorn = `
[edition]
id = "corn-house-2026"
title = "Corn, test rates"
schedule = "house"
commodity = "corn"
status = "example"
from = "2026-08-01"
order = ["shrink", "handling", "drying", "discounts"]

[origin]
issued = "2026-07-15"
by = "Invented for tests"
document = "none: example rates, posted nowhere"

[units]
weight = "lb"
settle = "bu"
currency = "USD"
bushel = "56 lb/bu"
bushel_source = "Minnesota Statutes 239.32"

[rounding]
moisture = "0.1 half-up"
weight = "1 half-up"
quantity = "0.01 half-up"
money = "0.01 half-up"

[shrink]
method = "water"
basis = "net"
trigger = "15.0 %"
to = "15.0 %"
over_dry = "none"

[handling]
method = "wet"
rate = "0.5 %"
always = false

[drying]
method = "per-point"
basis = "net"
trigger = "15.0 %"
to = "15.0 %"
rate = "0.04 $/bu/pt"
step = "continuous"

[[discount]]
label = "Broken corn and foreign material discount"
factor = "bcfm"
form = "per-unit"
of = "money"
basis = "dry"
untested = "none"
base = "3.0 %"
side = "above"
per = "1.0 %"
part = "up"
discount = "0.03 $/bu"
refuse_over = "5.0 %"

[shares]
remainder = "first"
`

// raw is the book's file as SQL sees it, beside the program.
func raw(t testing.TB, path string) *sql.DB {
	t.Helper()
	db, err := sql.Open("sqlite", path)
	must(t, err)
	t.Cleanup(func() { _ = db.Close() })
	return db
}
