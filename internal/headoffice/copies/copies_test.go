package copies_test

import (
	"context"
	"iter"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/headoffice"
	"tenthpoint/internal/headoffice/copies"
	"tenthpoint/internal/journal"
)

var ctx = context.Background()

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// office is an office with one chain, which counts the facts that are read from it.
type office struct {
	chain []journal.Fact
	read  int
}

func (o *office) Facts(_ context.Context, _ headoffice.Chain, from int64) iter.Seq2[journal.Fact, error] {
	return func(yield func(journal.Fact, error) bool) {
		for _, f := range o.chain[from-1:] {
			o.read++
			if !yield(f, nil) {
				return
			}
		}
	}
}

func (*office) Texts(context.Context, string) ([]headoffice.Text, error) { return nil, nil }

// add enters a fact in the chain.
func (o *office) add(t testing.TB, kind, id, body string) {
	t.Helper()
	var last *journal.Fact
	if len(o.chain) > 0 {
		last = &o.chain[len(o.chain)-1]
	}
	o.chain = append(o.chain, journal.Link(last, journal.Entry{At: "2026-10-01T12:00:00Z", Who: "Mae", Desk: "d", Kind: kind, Subject: kind + " " + id, Body: []byte(body)}))
}

func (o *office) grower(t testing.TB, id string) {
	t.Helper()
	body, err := journal.Canonical(elevator.Grower{ID: id, Name: "Grower " + id})
	must(t, err)
	o.add(t, elevator.Grower{}.Kind(), id, string(body))
}

func (o *office) head() headoffice.Chain {
	return headoffice.Chain{Site: "KH", Branch: 1, Letters: "KH", Head: journal.HeadOf(o.chain[len(o.chain)-1])}
}

// growers are the growers that a copy lists, by their codes.
func growers(t testing.TB, c copies.Copy) string {
	t.Helper()
	b, err := sqlite.Open(c.Path, book.Options{ReadOnly: true})
	must(t, err)
	defer b.Close()
	rows, err := b.Records(ctx, elevator.Grower{}.Kind())
	must(t, err)
	var ids []string
	for _, r := range rows {
		ids = append(ids, r.ID)
	}
	return strings.Join(ids, " ")
}

func refreshed(t testing.TB, f copies.Folder, o *office) copies.Copy {
	t.Helper()
	o.read = 0
	c, err := f.Refresh(ctx, o, o.head())
	must(t, err)
	return c
}

// A copy takes what is new and nothing else; one that does not agree with the chain is made anew.
func TestACopyFollowsItsChain(t *testing.T) {
	folder := copies.Folder{Path: filepath.Join(t.TempDir(), "copies"), Program: "1"}
	o := new(office)
	o.grower(t, "1")
	o.grower(t, "2")
	c := refreshed(t, folder, o)
	if got := growers(t, c); got != "1 2" || o.read != 2 {
		t.Errorf("the copy lists %q after %d facts", got, o.read)
	}
	if refreshed(t, folder, o); o.read != 0 {
		t.Errorf("a copy up to date read %d facts", o.read)
	}
	o.grower(t, "3")
	if got := growers(t, refreshed(t, folder, o)); got != "1 2 3" || o.read != 2 {
		t.Errorf("the copy lists %q after %d facts", got, o.read)
	}

	other := new(office)
	other.grower(t, "1")
	other.grower(t, "8")
	other.grower(t, "9")
	if got := growers(t, refreshed(t, folder, other)); got != "1 8 9" {
		t.Errorf("the copy of another chain lists %q", got)
	}
	must(t, os.WriteFile(c.Path, []byte("no book at all"), 0o600))
	if got := growers(t, refreshed(t, folder, other)); got != "1 8 9" {
		t.Errorf("the copy in place of a spoilt file lists %q", got)
	}
}

// What a newer program wrote is counted from one time to the next, and looked at again by the next
// program.
func TestWhatACopyDoesNotShow(t *testing.T) {
	folder := copies.Folder{Path: t.TempDir(), Program: "1"}
	o := new(office)
	o.grower(t, "1")
	o.add(t, "drone.flown", "1", `{"height":"3"}`)
	if c := refreshed(t, folder, o); c.NotShown != 1 || c.Said().IsZero() {
		t.Errorf("the copy does not show %d facts and says %q", c.NotShown, c.Said())
	}
	o.grower(t, "2")
	o.add(t, "drone.flown", "2", `{"height":"4"}`)
	if c := refreshed(t, folder, o); c.NotShown != 2 || c.Newer != "drone.flown" {
		t.Errorf("the copy does not show %d facts, the first of the kind %s", c.NotShown, c.Newer)
	}
	folder.Program = "2"
	if c := refreshed(t, folder, o); c.NotShown != 2 || o.read != 4 || growers(t, c) != "1 2" {
		t.Errorf("the next program read %d facts, does not show %d", o.read, c.NotShown)
	}
}

// The name of a chain is its letters, or its site's with the number of the branch.
func TestNames(t *testing.T) {
	for want, c := range map[string]headoffice.Chain{
		"KH": {Site: "KH", Branch: 1, Letters: "KH"}, "KH-2": {Site: "KH", Branch: 2, Parent: 1}, "KHB": {Site: "KH", Branch: 2, Parent: 1, Letters: "KHB"},
	} {
		if got := copies.NameOf(c); got != want {
			t.Errorf("%+v is called %s, want %s", c, got, want)
		}
	}
}
