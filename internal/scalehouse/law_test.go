package scalehouse_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/law"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/settle"
)

// changedFrom is a file of the program under another id, in force from a day and
// saying something else.
func changedFrom(t *testing.T, id, day string, edits ...string) *law.File {
	t.Helper()
	for _, f := range law.Shipped() {
		if f.ID != id {
			continue
		}
		text := strings.Replace(string(f.Text), `id = "`+id+`"`, `id = "`+id+`-changed"`+"\nfrom = \""+day+`"`, 1)
		for i := 0; i < len(edits); i += 2 {
			if !strings.Contains(text, edits[i]) {
				t.Fatalf("%s does not say %s", id, edits[i])
			}
			text = strings.Replace(text, edits[i], edits[i+1], 1)
		}
		changed, err := law.Open(id+"-changed.toml", []byte(text))
		must(t, err)
		return changed
	}
	t.Fatalf("there is no file %s", id)
	return nil
}

// inUse are the files of the program and others.
func inUse(t *testing.T, more ...*law.File) *law.Set {
	t.Helper()
	set, problems := law.NewSet(append(law.Shipped(), more...)...)
	must(t, problems.Err())
	return set
}

// delivered issues the ticket of a load with a test weight that the grade and the
// way it is recorded turn on.
func delivered(s *scene) *load.Load {
	s.T.Helper()
	id := s.Arrive(52300)
	s.Weigh(id, load.Tare, 24120)
	s.Sample(id, "15.2", housetest.Found("test-weight", "54.06", quantity.LbPerBushel), housetest.Found("damage", "1.0", quantity.Percent),
		housetest.Found("heat-damage", "0.0", quantity.Percent), housetest.Found("bcfm", "1.0", quantity.Percent))
	number, err := scalehouse.Issue(ctx, s.Desk, id)
	must(s.T, err)
	l, err := office.Ticket(ctx, s.Desk, number)
	must(s.T, err)
	return l
}

func graded(s *scene, l *load.Load) string {
	s.T.Helper()
	g, err := office.Grade(ctx, s.Desk, l)
	must(s.T, err)
	return g.US.Best
}

// A grade table and a recording rule change in the middle of a season. The
// tickets before the day keep the old ones, those after it have the new ones, and
// the book keeps both for a dispute long after the files are gone.
func TestLawChangesInMidSeason(t *testing.T) {
	s := housetest.New(t)
	old := delivered(s)
	if old.Settled.Law != "" || graded(s, old) != "U.S. No. 2" {
		t.Fatalf("before the change: %q under the law %q", graded(s, old), old.Settled.Law)
	}
	s.UseLaws(inUse(t,
		changedFrom(t, "us-grades-corn", "2026-11-01", `"54.0 lb/bu"`, `"54.1 lb/bu"`),
		changedFrom(t, "us-recording", "2026-11-01", `record = "0.1 half-up"`, `record = "0.5 down"`)))
	again := delivered(s) // the day has not come
	s.At("2026-11-02 09:00")
	later := delivered(s)
	s.UseLaws(inUse(t)) // in February the files are gone

	if got := graded(s, old); got != "U.S. No. 2" {
		t.Errorf("the ticket from before is now graded %s", got)
	}
	if got := graded(s, again); got != "U.S. No. 2" || again.Settled.Law != "" {
		t.Errorf("a ticket of the day before the change is graded %s under %q", got, again.Settled.Law)
	}
	if got := graded(s, later); got != "U.S. No. 3" || later.Settled.Law == "" {
		t.Errorf("a ticket after the change is graded %s under %q", got, later.Settled.Law)
	}
	for l, want := range map[*load.Load]string{old: "54.1 lb/bu", later: "54.0 lb/bu"} {
		worked, err := office.Resettle(ctx, s.Desk, l)
		must(t, err)
		step, ok := worked.Sheet.Step(settle.FactorLine("test-weight"))
		if !ok || step.Value().FixedString(1) != want {
			t.Errorf("worked again, the test weight is recorded as %s, want %s", step.Value(), want)
		}
	}
	s.Verify()
}

// A text that was altered in the book is not read as the law of a ticket.
func TestAlteredLawIsNoLaw(t *testing.T) {
	changed := changedFrom(t, "us-grades-corn", "2026-01-01", `"54.0 lb/bu"`, `"54.1 lb/bu"`)
	l := inUse(t, changed).On(quantity.MustDate("2026-10-01"))
	_, err := law.Resolve(l.Manifest(), func(hash string) (string, error) {
		for _, f := range l.Files() {
			if f.Hash == hash {
				return strings.Replace(string(f.Text), `"54.1 lb/bu"`, `"53.1 lb/bu"`, 1), nil
			}
		}
		return "", nil
	})
	if err == nil {
		t.Error("an altered table was taken for the law of the ticket")
	}
	same, err := law.Resolve(l.Manifest(), func(hash string) (string, error) {
		for _, f := range l.Files() {
			if f.Hash == hash {
				return string(f.Text), nil
			}
		}
		return "", nil
	})
	if err != nil || same.Hash() != l.Hash() {
		t.Errorf("read back, the law has another hash: %v", err)
	}
}

// What a tenth of moisture is worth, and what the explanation of a ticket tries
// with it, are worked by the law of the ticket.
func TestWhatIfsKeepTheLaw(t *testing.T) {
	s := housetest.New(t)
	s.UseLaws(inUse(t, changedFrom(t, "us-recording", "2026-01-01", `record = "0.1 half-up"`, `record = "0.5 down"`)))
	l := delivered(s)
	s.UseLaws(inUse(t))
	w, err := office.WorthOf(ctx, s.Desk, l, quantity.Of("0.1", quantity.Point))
	must(t, err)
	for name, one := range map[string]*settle.Settlement{"here": w.Here, "drier": w.Drier.Settlement, "wetter": w.Wetter.Settlement} {
		if step, ok := one.Sheet.Step(settle.FactorLine("test-weight")); !ok || step.Value().FixedString(1) != "54.0 lb/bu" {
			t.Errorf("%s: the test weight is recorded as %s", name, step.Value())
		}
	}
	s.Verify()
}
