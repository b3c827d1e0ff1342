package sessiontest

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"sync"
	"testing"
	"time"

	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/demo"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paper"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/schedules"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Noon is the time in every test here.
var Noon = time.Date(2025, 10, 14, 12, 0, 0, 0, time.UTC)

// Room is a fake window: it keeps what presenters said, asked and printed. A question waits until
// the test answers it.
type Room struct {
	T       testing.TB
	Session *session.Session
	Said    []string
	State   model.State
	Asked   []model.Ask
	Screen  string
	Papers  map[string][]byte
	draws   int
	clock   *time.Time // on the wall
}

func (r *Room) Say(state model.State, sentence string) {
	r.State, r.Said = state, append(r.Said, sentence)
}
func (r *Room) Put(ask model.Ask) { r.Asked = append(r.Asked, ask) }
func (r *Room) Redraw()           { r.draws++ }
func (r *Room) Go(screen string)  { r.Screen = screen }
func (r *Room) Run(job model.Job) {
	err := job.Do(context.Background(), func(int, int) {})
	if job.Done != nil {
		job.Done(err)
	}
}

// Print keeps the paper.
func (r *Room) Print(_ context.Context, name string, pdf []byte) (string, error) {
	if strings.HasPrefix(name, "jam") {
		return "", errors.New("the printer is out of paper")
	}
	r.Papers[name] = pdf
	return name + ".pdf", nil
}

// Last returns the last message.
func (r *Room) Last() string {
	if len(r.Said) == 0 {
		return ""
	}
	return r.Said[len(r.Said)-1]
}

// Answer answers the open question like a person who confirms; it returns the errors of the answer
// by field.
func (r *Room) Answer(values map[string]string) map[string]string {
	r.T.Helper()
	if len(r.Asked) == 0 {
		r.T.Fatal("nothing was asked")
	}
	ask := r.Asked[len(r.Asked)-1]
	full := map[string]string{}
	for _, f := range ask.Fields {
		full[f.ID] = f.Value
	}
	for id, v := range values {
		if _, known := full[id]; !known {
			r.T.Fatalf("%q asks for no field %q", ask.Title, id)
		}
		full[id] = v
	}
	for _, f := range ask.Fields {
		if f.Required && strings.TrimSpace(full[f.ID]) == "" {
			return map[string]string{f.ID: "needed"}
		}
	}
	if ask.Check != nil {
		if wrong := ask.Check(full); len(wrong) > 0 {
			return wrong
		}
	}
	r.Asked = r.Asked[:len(r.Asked)-1]
	if ask.Then != nil {
		ask.Then(full)
	}
	return nil
}

// Question is the question that waits.
func (r *Room) Question() model.Ask {
	r.T.Helper()
	if len(r.Asked) == 0 {
		r.T.Fatal("nothing was asked")
	}
	return r.Asked[len(r.Asked)-1]
}

// DemoRoom is a room on the invented elevator after so many loads, with the
// manager at the desk.
func DemoRoom(t testing.TB, loads int) *Room {
	t.Helper()
	return newRoom(t, func(book *sqlite.Book) {
		editions, err := schedules.Editions()
		Must(t, err)
		Must(t, demo.Fill(context.Background(), book, demo.Options{Loads: loads, Seed: 7, Now: Noon, Place: time.UTC, Rates: editions}, nil))
	}, demo.Manager)
}

// SettledRoom is a room on the invented elevator after so many loads, some of them settled and paid.
func SettledRoom(t testing.TB, loads int) *Room {
	t.Helper()
	return newRoom(t, func(book *sqlite.Book) { Settled(t, book, loads, Noon) }, demo.Manager)
}

// Settled fills a book with a season of which some is settled and paid.
func Settled(t testing.TB, book *sqlite.Book, loads int, now time.Time) {
	t.Helper()
	editions, err := ratesOnce()
	Must(t, err)
	tariffs, err := schedules.Tariffs()
	Must(t, err)
	levies, err := schedules.Levies()
	Must(t, err)
	o := demo.Options{Loads: loads, Seed: 7, Now: now, Place: time.UTC, Rates: editions, Money: &demo.Money{Tariffs: tariffs, Levies: levies}}
	Must(t, demo.Fill(context.Background(), book, o, nil))
}

// EmptyRoom is a room with an empty book.
func EmptyRoom(t testing.TB) *Room { return newRoom(t, func(*sqlite.Book) {}, "") }

func newRoom(t testing.TB, fill func(*sqlite.Book), who string) *Room {
	t.Helper()
	book, err := sqlite.OpenScratch()
	Must(t, err)
	t.Cleanup(func() { Must(t, book.Close()) })
	fill(book)
	editions, err := schedules.Editions()
	Must(t, err)
	charts, err := schedules.Charts()
	Must(t, err)
	clock := Noon
	d, err := scalehouse.Open(context.Background(), book, scalehouse.Options{
		Name: "test", Rates: editions, Charts: charts, Place: time.UTC, Who: who, Clock: func() time.Time { return clock },
	})
	Must(t, err)
	r := RoomAt(t, d)
	r.clock = &clock
	return r
}

// Later lets time pass on the wall.
func (r *Room) Later(by time.Duration) { *r.clock = r.clock.Add(by) }

// RoomAt is a room at a desk that a test has opened.
func RoomAt(t testing.TB, d *scalehouse.Desk) *Room {
	t.Helper()
	r := &Room{T: t, Papers: map[string][]byte{}}
	r.Session = session.New(d, r)
	r.Session.Zone = time.UTC
	r.Session.Window = r
	session.SetManualReason(r.Session, "read from the indicator") // as asked on the first weight of a day
	return r
}

func Must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// TextOf is paper as text, a line to a line.
func TextOf(lines []model.CardLine) string {
	var b strings.Builder
	for _, l := range lines {
		fmt.Fprintf(&b, "%s | %s | %s\n", l.Left, l.Right, strings.ReplaceAll(l.Note, "\n", " / "))
	}
	return b.String()
}

// WordsOf returns the words on pages, one text run per line.
func WordsOf(l paper.Layout) string {
	var b strings.Builder
	for _, page := range l.Pages {
		for _, r := range page.Runs {
			b.WriteString(r.Text + "\n")
		}
	}
	return b.String()
}

func WantSaid(t *testing.T, r *Room, state model.State, part string) {
	t.Helper()
	if r.State != state || !strings.Contains(r.Last(), part) {
		t.Errorf("said %d %q, want %d with %q", r.State, r.Last(), state, part)
	}
}

func (r *Room) CodeOf(l *load.Load) string {
	code, err := office.Code(context.Background(), r.Session.Desk, l)
	Must(r.T, err)
	return code
}

// Reopen returns another window on the same book, as after the program was killed: the first had no
// chance to close anything.
func (r *Room) Reopen() *Room {
	r.T.Helper()
	return r.AgainAt(Noon, r.Session.Desk.Who().Name)
}

// Clear empties the yard, and discards what was typed.
func (r *Room) Clear() *Room {
	r.T.Helper()
	rows, err := r.Session.Desk.Book().Drafts(context.Background())
	Must(r.T, err)
	for _, row := range rows {
		Must(r.T, scalehouse.SaveDraft(r.Session.Desk, row.Place, row.ID, nil))
	}
	trucks, err := office.Yard(context.Background(), r.Session.Desk)
	Must(r.T, err)
	for _, l := range trucks {
		Must(r.T, scalehouse.Refuse(context.Background(), r.Session.Desk, l.ID, "an empty yard for the test"))
	}
	return r.Reopen()
}

func (r *Room) AgainAt(now time.Time, who string) *Room {
	r.T.Helper()
	editions, err := ratesOnce()
	Must(r.T, err)
	charts, err := chartsOnce()
	Must(r.T, err)
	d, err := scalehouse.Open(context.Background(), r.Session.Desk.Book(), scalehouse.Options{
		Name: "test", Rates: editions, Charts: charts, Place: time.UTC, Who: who, Clock: func() time.Time { return now },
	})
	Must(r.T, err)
	next := &Room{T: r.T, Papers: map[string][]byte{}}
	next.Session = session.New(d, next)
	next.Session.Zone, next.Session.Indicator = time.UTC, r.Session.Indicator
	next.Session.Window = next
	session.SetManualReason(next.Session, session.ManualReason(r.Session))
	return next
}

// Drafts are the drafts of the book, as text.
func (r *Room) Drafts() []string {
	r.T.Helper()
	rows, err := r.Session.Desk.Book().Drafts(context.Background())
	Must(r.T, err)
	var out []string
	for _, row := range rows {
		if row.Place != session.Current {
			out = append(out, fmt.Sprintf("%s %s %s", row.Place, row.ID, row.Texts))
		}
	}
	return out
}

// Half types into the question that waits, as far as it goes.
func (r *Room) Half(values map[string]string) {
	r.T.Helper()
	ask := r.Question()
	full := map[string]string{}
	for _, f := range ask.Fields {
		full[f.ID] = f.Value
	}
	for id, text := range values {
		full[id] = text
		ask.Typed(full)
	}
}

// ValuesOf returns the texts in the fields of the open question.
func (r *Room) ValuesOf() map[string]string {
	r.T.Helper()
	out := map[string]string{}
	for _, f := range r.Question().Fields {
		out[f.ID] = f.Value
	}
	return out
}

func FieldOf(t testing.TB, f interface{ Fields() []model.Field }, id string) model.Field {
	t.Helper()
	for _, field := range f.Fields() {
		if field.ID == id {
			return field
		}
	}
	t.Fatalf("there is no field %s", id)
	return model.Field{}
}

// EmptyDemo is the invented elevator with an empty yard.
func EmptyDemo(t *testing.T) *Room {
	t.Helper()
	r := DemoRoom(t, 0)
	trucks, err := office.Yard(t.Context(), r.Session.Desk)
	Must(t, err)
	for _, l := range trucks {
		Must(t, scalehouse.Refuse(t.Context(), r.Session.Desk, l.ID, "an empty yard for the test"))
	}
	return r
}

// Rates and charts are the same in every window.
var (
	ratesOnce  = sync.OnceValues(schedules.Editions)
	chartsOnce = sync.OnceValues(schedules.Charts)
)
