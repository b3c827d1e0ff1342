package scalehouse_test

import (
	"errors"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/book"
	"tenthpoint/internal/message"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

// texts are a draft's texts as a form would have them.
func texts(gross string) map[string]string { return map[string]string{"field.gross": gross} }

// drafts are the drafts of the book, by place and id; none may be lost.
func drafts(s *scene) map[string]scalehouse.Draft {
	s.T.Helper()
	all, lost, err := scalehouse.Drafts(ctx, s.Desk)
	must(s.T, err)
	if len(lost) > 0 {
		s.T.Fatalf("lost: %q", lost)
	}
	out := map[string]scalehouse.Draft{}
	for _, d := range all {
		out[d.Place+" "+d.ID] = d
	}
	return out
}

// A draft tells what was typed, by whom and when, and needs nobody signed in.
func TestDraftsTellWhatWasTyped(t *testing.T) {
	s := housetest.New(t)
	id := s.Arrive(52300)
	must(t, scalehouse.SaveDraft(s.Desk, scalehouse.DraftOfLoad, id, texts("5230x")))
	s.At("2026-10-01 14:05")
	must(t, scalehouse.SaveDraftSync(ctx, s.Desk, scalehouse.DraftOfTests, id, map[string]string{"typed.dial": "58"}))
	must(t, scalehouse.SaveDraft(s.Desk, "ask", "grower", map[string]string{"name": "Körner ½\x00"}))
	want := map[string]scalehouse.Draft{
		"load " + id:  {Place: "load", ID: id, Texts: texts("5230x"), At: "2026-10-01T13:00:00Z", Who: housetest.Clerk},
		"bench " + id: {Place: "bench", ID: id, Texts: map[string]string{"typed.dial": "58"}, At: "2026-10-01T14:05:00Z", Who: housetest.Clerk},
		"ask grower":  {Place: "ask", ID: "grower", Texts: map[string]string{"name": "Körner ½\x00"}, At: "2026-10-01T14:05:00Z", Who: housetest.Clerk},
	}
	if got := drafts(s); !reflect.DeepEqual(got, want) {
		t.Errorf("the drafts are\n%+v, want\n%+v", got, want)
	}
	must(t, scalehouse.SaveDraft(s.Desk, scalehouse.DraftOfLoad, id, nil))
	if _, there := drafts(s)["load "+id]; there {
		t.Error("a draft without texts is still there")
	}
}

// No fact, hash or list comes of a draft, and a check of the book ignores its content.
func TestDraftsAreNoFacts(t *testing.T) {
	s := housetest.New(t)
	_, _ = s.Ticket()
	before := s.Contents()
	must(t, scalehouse.SaveDraft(s.Desk, scalehouse.DraftOfLoad, "", texts("52300")))
	must(t, scalehouse.SaveDraftSync(ctx, s.Desk, scalehouse.DraftOfTests, "L99", texts("52300")))
	must(t, s.Store.SaveDraft(book.Draft{Place: "load", ID: "L1", Texts: "{"}))
	if s.Contents() != before {
		t.Error("the rest of the book has changed")
	}
	s.Verify()
}

// What was typed for a load goes when the load leaves the yard, whichever way,
// and not before.
func TestDraftsLeaveWithTheLoad(t *testing.T) {
	for name, leave := range map[string]func(*scene, string) error{
		"ticketed": func(s *scene, id string) error { _, err := scalehouse.Issue(ctx, s.Desk, id); return err },
		"refused":  func(s *scene, id string) error { return scalehouse.Refuse(ctx, s.Desk, id, "musty") },
	} {
		t.Run(name, func(t *testing.T) {
			s := housetest.New(t)
			id, other := s.Whole(), s.Arrive(41000)
			for _, load := range []string{id, other, ""} {
				must(t, scalehouse.SaveDraft(s.Desk, scalehouse.DraftOfLoad, load, texts("1")))
				must(t, scalehouse.SaveDraft(s.Desk, scalehouse.DraftOfTests, load, texts("1")))
				must(t, scalehouse.SaveDraft(s.Desk, "ask refuse", load, texts("1")))
			}
			s.Weigh(id, "tare", 24200)
			if got := drafts(s); len(got) != 9 {
				t.Fatalf("before it leaves there are %v", got)
			}
			must(t, leave(s, id))
			got := drafts(s)
			for _, left := range []string{"load " + id, "bench " + id, "ask refuse " + id} {
				if _, there := got[left]; there {
					t.Errorf("%s is still there", left)
				}
			}
			if len(got) != 6 {
				t.Errorf("there are %v", got)
			}
		})
	}
}

// Another desk may still jot for a load that has left; such a draft is dropped
// without a word when drafts are asked for.
func TestDraftsOfLoadsThatLeftAreDropped(t *testing.T) {
	s := housetest.New(t)
	id, _ := s.Ticket()
	must(t, scalehouse.SaveDraft(s.Desk, scalehouse.DraftOfLoad, id, texts("1")))
	if got := drafts(s); len(got) != 0 {
		t.Errorf("there are %v", got)
	}
	if rows, err := s.Store.Drafts(ctx); err != nil || len(rows) != 0 {
		t.Errorf("the book keeps %v, %v", rows, err)
	}
}

// What became a fact is typed no more, in one: neither without the other.
func TestDraftChangesWithTheFact(t *testing.T) {
	s := housetest.New(t)
	id := s.Arrive(52300)
	must(t, scalehouse.SaveDraft(s.Desk, scalehouse.DraftOfLoad, id, texts("24300")))
	changedMind := errors.New("changed my mind")
	act := func(end error) error {
		return s.Batch(ctx, func(w *scalehouse.Batch) error {
			if err := scalehouse.Weigh(ctx, w, id, housetest.ScaleWeight("tare", 24300)); err != nil {
				return err
			}
			return errors.Join(scalehouse.SaveDraftSync(ctx, w, scalehouse.DraftOfLoad, id, nil), end)
		})
	}
	if err := act(changedMind); !errors.Is(err, changedMind) {
		t.Fatal(err)
	}
	if _, weighed := s.Load(id).Weight("tare", ""); weighed || len(drafts(s)) != 1 {
		t.Errorf("given up: weighed %v, drafts %v", weighed, drafts(s))
	}
	must(t, act(nil))
	if _, weighed := s.Load(id).Weight("tare", ""); !weighed || len(drafts(s)) != 0 {
		t.Errorf("done: weighed %v, drafts %v", weighed, drafts(s))
	}
}

// A damaged row is dropped with a message; the others are there, and the next time there is no
// message.
func TestDamagedDraftIsDroppedWithASentence(t *testing.T) {
	s := housetest.New(t)
	rapid.Check(t, func(r *rapid.T) {
		good := map[string]string{"a": strings.ReplaceAll(rapid.String().Draw(r, "text"), "\ufffd", "")}
		must(t, scalehouse.SaveDraft(s.Desk, "ask", "good", good))
		damaged := rapid.OneOf(
			rapid.SampledFrom([]string{"{", "[]", "1", `"x"`, `{"a":1}`, `{"a":{"b":"c"}}`, `{"a":"1"}x`, "{\"a\":\"\xff\"}", "\x00", "\xff", "null", "{}"}),
			rapid.StringN(1, 40, -1),
		).Draw(r, "damaged")
		must(t, s.Store.SaveDraft(book.Draft{Place: "load", ID: "", At: "2026-10-01T13:00:00Z", Who: housetest.Clerk, Texts: damaged}))
		all, lost, err := scalehouse.Drafts(ctx, s.Desk)
		must(t, err)
		if len(all) != 1 || len(all[0].Texts) != 1 {
			t.Fatalf("of %q there are left %v", damaged, all)
		}
		said := message.Texts(" ", lost).String()
		if isEmpty := damaged == "null" || damaged == "{}"; isEmpty != (said == "") || said != "" && !strings.Contains(said, "typed by Cal Reyes at 2026-10-01 13:00") {
			t.Fatalf("of %q it said %q", damaged, said)
		}
		if _, again, err := scalehouse.Drafts(ctx, s.Desk); err != nil || len(again) > 0 {
			t.Fatalf("a second time it said %q, %v", again, err)
		}
	})
}
