package present

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"tenthpoint/internal/demo"
	"tenthpoint/internal/desk"
	"tenthpoint/internal/load"
	"tenthpoint/internal/slip"
	"tenthpoint/internal/store"
	"tenthpoint/schedules"
	"tenthpoint/ui/model"
)

// noon is the moment every test here stands at.
var noon = time.Date(2025, 10, 14, 12, 0, 0, 0, time.UTC)

// room is a window made of notes: what presenters said, asked and printed. A
// question waits until the test answers it.
type room struct {
	t      testing.TB
	frame  *Frame
	said   []string
	state  model.State
	asked  []model.Ask
	screen string
	papers map[string][]byte
	draws  int
}

func (r *room) Say(state model.State, sentence string) {
	r.state, r.said = state, append(r.said, sentence)
}
func (r *room) Put(ask model.Ask) { r.asked = append(r.asked, ask) }
func (r *room) Redraw()           { r.draws++ }
func (r *room) Go(screen string)  { r.screen = screen }
func (r *room) Run(job model.Job) {
	err := job.Do(context.Background(), func(int, int) {})
	if job.Done != nil {
		job.Done(err)
	}
}

// Print keeps the paper.
func (r *room) Print(_ context.Context, name string, pdf []byte) (string, error) {
	if strings.HasPrefix(name, "jam") {
		return "", errors.New("the printer is out of paper")
	}
	r.papers[name] = pdf
	return name + ".pdf", nil
}

// last is what was said last.
func (r *room) last() string {
	if len(r.said) == 0 {
		return ""
	}
	return r.said[len(r.said)-1]
}

// answer answers the question that waits, as a person who goes on; what is
// wrong with the answer is given back by field.
func (r *room) answer(values map[string]string) map[string]string {
	r.t.Helper()
	if len(r.asked) == 0 {
		r.t.Fatal("nothing was asked")
	}
	ask := r.asked[len(r.asked)-1]
	full := map[string]string{}
	for _, f := range ask.Fields {
		full[f.ID] = f.Value
	}
	for id, v := range values {
		if _, known := full[id]; !known {
			r.t.Fatalf("%q asks for no field %q", ask.Title, id)
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
	r.asked = r.asked[:len(r.asked)-1]
	if ask.Then != nil {
		ask.Then(full)
	}
	return nil
}

// question is the question that waits.
func (r *room) question() model.Ask {
	r.t.Helper()
	if len(r.asked) == 0 {
		r.t.Fatal("nothing was asked")
	}
	return r.asked[len(r.asked)-1]
}

// demoRoom is a room on the invented elevator after so many loads, with the
// manager at the desk.
func demoRoom(t testing.TB, loads int) *room {
	t.Helper()
	return newRoom(t, func(book *store.Book) {
		editions, err := schedules.Editions()
		must(t, err)
		must(t, demo.Fill(context.Background(), book, demo.Options{Loads: loads, Seed: 7, Now: noon, Place: time.UTC, Rates: editions}, nil))
	}, demo.Manager)
}

// emptyRoom is a room on a book of which nothing is known.
func emptyRoom(t testing.TB) *room { return newRoom(t, func(*store.Book) {}, "") }

func newRoom(t testing.TB, fill func(*store.Book), who string) *room {
	t.Helper()
	book, err := store.OpenScratch()
	must(t, err)
	t.Cleanup(func() { must(t, book.Close()) })
	fill(book)
	editions, err := schedules.Editions()
	must(t, err)
	charts, err := schedules.Charts()
	must(t, err)
	d, err := desk.Open(context.Background(), book, desk.Options{
		Name: "test", Rates: editions, Charts: charts, Place: time.UTC, Who: who, Clock: func() time.Time { return noon },
	})
	must(t, err)
	r := &room{t: t, papers: map[string][]byte{}}
	r.frame = NewFrame(d, r)
	r.frame.Zone = time.UTC
	r.frame.Attach(r)
	return r
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// textOf is paper as text, a line to a line.
func textOf(lines []slip.PaperLine) string {
	var b strings.Builder
	for _, l := range lines {
		fmt.Fprintf(&b, "%s | %s | %s\n", l.Left, l.Right, strings.ReplaceAll(l.Note, "\n", " / "))
	}
	return b.String()
}

func wantSaid(t *testing.T, r *room, state model.State, part string) {
	t.Helper()
	if r.state != state || !strings.Contains(r.last(), part) {
		t.Errorf("said %d %q, want %d with %q", r.state, r.last(), state, part)
	}
}

func (r *room) codeOf(l *load.Load) string {
	code, err := r.frame.Desk.Code(context.Background(), l)
	must(r.t, err)
	return code
}

// again is another window on the same book, as after the program was killed:
// the first was told nothing and closed nothing.
func (r *room) again() *room {
	r.t.Helper()
	return r.againAt(noon, r.frame.Desk.Who().Name)
}

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

// half types into the question that waits, as far as it goes.
func (r *room) half(values map[string]string) {
	r.t.Helper()
	ask := r.question()
	full := map[string]string{}
	for _, f := range ask.Fields {
		full[f.ID] = f.Value
	}
	for id, text := range values {
		full[id] = text
		ask.Typed(full)
	}
}

// valuesOf are what stands in the fields of the question that waits.
func (r *room) valuesOf() map[string]string {
	r.t.Helper()
	out := map[string]string{}
	for _, f := range r.question().Fields {
		out[f.ID] = f.Value
	}
	return out
}

func fieldOf(t testing.TB, f interface{ Fields() []model.Field }, id string) model.Field {
	t.Helper()
	for _, field := range f.Fields() {
		if field.ID == id {
			return field
		}
	}
	t.Fatalf("there is no field %s", id)
	return model.Field{}
}

// emptyDemo is the invented elevator with nobody on the yard.
func emptyDemo(t *testing.T) *room {
	t.Helper()
	r := demoRoom(t, 0)
	trucks, err := r.frame.Desk.Yard(t.Context())
	must(t, err)
	for _, l := range trucks {
		must(t, r.frame.Desk.Refuse(t.Context(), l.ID, "an empty yard for the test"))
	}
	return r
}
