package rates

import (
	"os"
	"strings"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/ratefiles"
	"tenthpoint/internal/rates"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

// making is the screen on which an edition of a demo house is begun from another, in a folder of its
// own.
func making(t *testing.T, from string) (*sessiontest.Room, *Making) {
	t.Helper()
	r := sessiontest.DemoRoom(t, 20)
	r.Session.RatesFolder = t.TempDir()
	list := NewRates(r.Session)
	list.Reload()
	list.Choose(from)
	makeMine(list)
	m := NewMaking(r.Session)
	m.Refresh()
	if r.Screen != "making" || !m.Begun() {
		t.Fatalf("on screen %q, begun %v", r.Screen, m.Begun())
	}
	return r, m
}

// chooseFigure takes a figure by its place in the file, and returns its words.
func chooseFigure(t *testing.T, m *Making, table, key string) string {
	t.Helper()
	for _, f := range m.figures() {
		if f.Table == table && f.Key == key {
			m.chosen = f.Line
			return m.Field().Label
		}
	}
	t.Fatalf("no figure %s in %s", key, table)
	return ""
}

func madeFacts(t *testing.T, r *sessiontest.Room) []elevator.OwnEdition {
	t.Helper()
	var out []elevator.OwnEdition
	for f, err := range r.Session.Desk.Reader().Facts(t.Context(), book.FactFilter{Kind: elevator.OwnEdition{}.Kind()}) {
		sessiontest.Must(t, err)
		one, err := journal.ReadBody[elevator.OwnEdition](f.Body)
		sessiontest.Must(t, err)
		out = append(out, one)
	}
	return out
}

// An edition with another drying rate is saved under a new name, in the manager's: a fact, a file, and
// rates that the house settles under from its day on.
func TestAnEditionIsMadeOurOwn(t *testing.T) {
	r, m := making(t, "corn-main-2025")
	if m.Headline().State != model.Warn {
		t.Errorf("figures of an example as they are: %v", m.Headline())
	}
	chooseFigure(t, m, "drying", "rate")
	was := m.Field().Value
	m.Type("0.075 $/bu/pt")
	if m.Headline().State != model.OK || !m.CanSave() {
		t.Fatalf("%v; can save %v", m.Headline(), m.CanSave())
	}
	curves := m.Curves()
	if len(curves) != 2 || len(curves[1].Curves) != 2 || !curves[1].Curves[1].Dashed {
		t.Fatalf("curves: %+v", curves)
	}
	mine, theirs := curves[1].Curves[0].Points, curves[1].Curves[1].Points
	if last := len(mine) - 1; mine[0] != theirs[0] || mine[last].Y <= theirs[last].Y {
		t.Errorf("with a rate of 0.075 instead of %s the wettest load is at %d, before at %d", was, mine[last].Y, theirs[last].Y)
	}
	if differs := sessiontest.TextOf(m.Beside()); !strings.Contains(differs, "0.075") {
		t.Errorf("what differs: %s", differs)
	}
	id := m.edition.ID
	m.AskSave()
	if q := r.Question(); q.State == model.Warn {
		t.Errorf("asked as if nothing was changed: %s", q.Text)
	}
	r.Answer(map[string]string{"who": r.Session.Desk.Who().Name})
	facts := madeFacts(t, r)
	if len(facts) != 1 || facts[0].ID != id || facts[0].AsItIs || facts[0].Base != "corn-main-2025" {
		t.Fatalf("facts: %+v", facts)
	}
	text, err := os.ReadFile(ratefiles.FileOf(r.Session.RatesFolder, id))
	sessiontest.Must(t, err)
	e, err := rates.Read("", text)
	sessiontest.Must(t, err)
	if e.Hash != facts[0].Hash || e.Status != rates.House {
		t.Errorf("the file is %s, the fact's %s; status %s", e.Hash, facts[0].Hash, e.Status)
	}
	now, err := r.Session.Desk.Rates().On("main", "corn", r.Session.Desk.Today())
	if err != nil || now.ID != id {
		t.Errorf("in force today is %v, %v", now, err)
	}
	if r.Screen != "rates" || m.Begun() {
		t.Errorf("on screen %q, still begun %v", r.Screen, m.Begun())
	}
}

// Invented figures are never taken over in silence.
func TestAnExampleTakenAsItIs(t *testing.T) {
	r, m := making(t, "corn-main-2025")
	m.AskSave()
	if q := r.Question(); q.State != model.Warn || !strings.Contains(q.Text, "corn-main-2025") {
		t.Errorf("asked %d: %s", q.State, q.Text)
	}
	r.Answer(map[string]string{"who": r.Session.Desk.Who().Name})
	if facts := madeFacts(t, r); len(facts) != 1 || !facts[0].AsItIs {
		t.Errorf("facts: %+v", facts)
	}
}

// All mistakes are told, each at its figure, and nothing can be saved with one.
func TestMistakesWhileMaking(t *testing.T) {
	_, m := making(t, "corn-main-2025")
	rate := chooseFigure(t, m, "drying", "rate")
	m.Type("seven cents")
	if f := m.Field(); f.State != model.Stop || f.Note == "" {
		t.Errorf("the field says %d %q", f.State, f.Note)
	}
	from := chooseFigure(t, m, "edition", "from")
	m.Type("soon")
	if m.CanSave() || len(m.problems) < 2 || !strings.Contains(m.WhyNotSave(), "2") {
		t.Errorf("%d mistakes; can save %v: %s", len(m.problems), m.CanSave(), m.WhyNotSave())
	}
	wrong := 0
	for _, row := range m.Rows() {
		if row.State == model.Stop {
			wrong++
		}
	}
	if wrong != 2 {
		t.Errorf("%d figures are marked", wrong)
	}
	if told := sessiontest.TextOf(m.Beside()); !strings.Contains(told, rate) || !strings.Contains(told, from) {
		t.Errorf("told: %s", told)
	}
	if curves := m.Curves(); len(curves[0].Curves) != 0 || curves[0].Empty == "" {
		t.Errorf("curves of rates that cannot be read: %+v", curves)
	}
}

// What does not go with the house's other editions is told before it is saved.
func TestHouseHasItAlready(t *testing.T) {
	_, m := making(t, "corn-main-2025")
	chooseFigure(t, m, "edition", "id")
	m.Type("soybeans-main-2025")
	if m.CanSave() || m.Headline().State != model.Stop {
		t.Errorf("a name that is taken: %v", m.Headline())
	}
}

func TestRowsWhileMaking(t *testing.T) {
	_, m := making(t, "barley-main-2025")
	rows := len(m.Rows())
	for _, row := range m.Rows() {
		if m.Choose(row.Key); m.CanChangeRows() {
			break
		}
	}
	m.AddRow()
	if len(m.Rows()) <= rows || m.CanSave() {
		t.Errorf("%d figures after %d; can save %v", len(m.Rows()), rows, m.CanSave())
	}
	m.RemoveRow()
	if len(m.Rows()) != rows || m.Headline().State == model.Stop {
		t.Errorf("%d figures, want %d: %v", len(m.Rows()), rows, m.Headline())
	}
	if _, some := m.figure(); !some {
		t.Error("no figure is chosen after a row is gone")
	}
}
