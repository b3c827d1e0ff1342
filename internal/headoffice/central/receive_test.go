//go:build postgres

package central_test

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/jackc/pgx/v5"

	"tenthpoint/internal/headoffice"
	"tenthpoint/internal/headoffice/central"
	"tenthpoint/internal/headoffice/officetest"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

var ctx = context.Background()

func receive(t testing.TB, o *central.Office, letters string, facts ...journal.Fact) headoffice.Receipt {
	t.Helper()
	r, err := o.Receive(ctx, letters, officetest.Lines(t, facts...))
	officetest.Must(t, err)
	return r
}

// wantChain wants a branch of the office to hold these facts to the byte, and the chain to be sound.
func wantChain(t testing.TB, o *central.Office, c headoffice.Chain, want []journal.Fact) {
	t.Helper()
	got := officetest.Kept(t, o, c)
	if len(got) != len(want) {
		t.Fatalf("branch %d of %s holds %d facts, want %d", c.Branch, c.Site, len(got), len(want))
	}
	for i := range want {
		if fmt.Sprint(got[i]) != fmt.Sprint(want[i]) {
			t.Errorf("fact %d is\n%v, want\n%v", i+1, got[i], want[i])
		}
	}
	problems, _, err := journal.Check(func(yield func(journal.Fact, error) bool) {
		for _, f := range got {
			if !yield(f, nil) {
				return
			}
		}
	})
	officetest.Must(t, err)
	for _, p := range problems {
		t.Error(p)
	}
}

func theChain(t testing.TB, o *central.Office, letters string) headoffice.Chain {
	t.Helper()
	chains, err := o.Chains(ctx, letters)
	officetest.Must(t, err)
	if len(chains) != 1 {
		t.Fatalf("%s has the branches %v, want one", letters, chains)
	}
	return chains[0]
}

// The server works out the hash of a fact as the journal does, and keeps what came to the byte.
func TestReceivesAChain(t *testing.T) {
	o := officetest.New(t)
	kh := o.As("KH")
	facts := officetest.Chained(nil, "a", 130)
	for from := 0; from < len(facts); from += 40 {
		r := receive(t, kh, "KH", facts[from:min(from+40, len(facts))]...)
		if want := journal.HeadOf(facts[min(from+40, len(facts))-1]); r.Outcome != headoffice.Kept || r.Head != want {
			t.Errorf("from %d: %v, want %v", from, r, want)
		}
	}
	wantChain(t, o.Office, theChain(t, o.Office, "KH"), facts)
}

// Whatever is sent again, in whatever order and in pieces of any size, the office ends with the chain.
func TestDuplicatesAndOrder(t *testing.T) {
	o := officetest.New(t)
	kh := o.As("KH")
	facts := officetest.Chained(nil, "a", 60)
	order := rand.New(rand.NewPCG(17, 3))
	due := 0
	for due < len(facts) {
		from := order.IntN(len(facts))
		to := from + 1 + order.IntN(len(facts)-from)
		r := receive(t, kh, "KH", facts[from:to]...)
		if from > due {
			if r.Outcome != headoffice.Gap || r.Head.Seq != int64(due+1) {
				t.Fatalf("facts %d to %d after %d: %v, want a gap at %d", from+1, to, due, r, due+1)
			}
			continue
		}
		due = max(due, to)
		if r.Outcome != headoffice.Kept || r.Head.Seq != int64(due) {
			t.Fatalf("facts %d to %d: %v, want them kept up to %d", from+1, to, r, due)
		}
	}
	wantChain(t, o.Office, theChain(t, o.Office, "KH"), facts)
	noted, err := o.Faults(ctx)
	if officetest.Must(t, err); len(noted) > 0 {
		t.Errorf("the office noted %v", noted)
	}
}

// A changed fact, a fact put in, one left out or moved is refused by the server, named, and nothing
// that came with it is kept.
func TestBrokenChain(t *testing.T) {
	o := officetest.New(t)
	kh := o.As("KH")
	facts := officetest.Chained(nil, "a", 12)
	receive(t, kh, "KH", facts[:5]...)
	for name, spoil := range map[string]func(f []journal.Fact) []journal.Fact{
		"who":     func(f []journal.Fact) []journal.Fact { f[3].Who = "nobody"; return f },
		"body":    func(f []journal.Fact) []journal.Fact { f[3].Body = []byte(`{}`); return f },
		"at":      func(f []journal.Fact) []journal.Fact { f[3].At = "2025-10-04T14:12:59Z"; return f },
		"hash":    func(f []journal.Fact) []journal.Fact { f[3].Hash = f[2].Hash; return f },
		"left":    func(f []journal.Fact) []journal.Fact { return slices.Delete(f, 3, 4) },
		"twice":   func(f []journal.Fact) []journal.Fact { return slices.Insert(f, 3, f[2]) },
		"swapped": func(f []journal.Fact) []journal.Fact { f[3], f[4] = f[4], f[3]; return f },
	} {
		t.Run(name, func(t *testing.T) {
			r := receive(t, kh, "KH", spoil(slices.Clone(facts[5:]))...)
			if r.Outcome != headoffice.Broken || r.Head.Seq < 8 || r.Head.Seq > 10 {
				t.Errorf("got %v, want the chain broken at 8 to 10", r)
			}
		})
	}
	wantChain(t, o.Office, theChain(t, o.Office, "KH"), facts[:5])
	noted, err := o.Faults(ctx)
	officetest.Must(t, err)
	if len(noted) == 0 || noted[0].Name != "broken" || noted[0].Site != "KH" {
		t.Errorf("the office noted %v", noted)
	}
}

// A chain that does not follow what the office has, from a fact it never had, is turned away.
func TestAnotherBook(t *testing.T) {
	o := officetest.New(t)
	kh := o.As("KH")
	receive(t, kh, "KH", officetest.Chained(nil, "a", 10)...)
	other := officetest.Chained(nil, "b", 10)
	if r := receive(t, kh, "KH", other[5:]...); r.Outcome != headoffice.Apart {
		t.Errorf("facts that follow none of the office's: %v", r)
	}
}

// Two facts in one place are two branches. Both are kept, neither is changed, and each goes on.
func TestFork(t *testing.T) {
	o := officetest.New(t)
	kh := o.As("KH")
	whole := officetest.Chained(nil, "a", 10)
	receive(t, kh, "KH", whole...)
	again := append(slices.Clone(whole[:6]), officetest.Chained(&whole[5], "b", 3)...)
	r := receive(t, kh, "KH", again...)
	if r.Outcome != headoffice.Fork || r.Branch != 2 || r.Head != journal.HeadOf(again[8]) {
		t.Fatalf("the other branch: %v", r)
	}
	later := append(again, officetest.Chained(&again[8], "c", 2)...)
	if r := receive(t, kh, "KH", later[4:]...); r.Outcome != headoffice.Kept || r.Branch != 2 {
		t.Errorf("the other branch goes on: %v", r)
	}
	first := append(slices.Clone(whole), officetest.Chained(&whole[9], "d", 2)...)
	if r := receive(t, kh, "KH", first[9:]...); r.Outcome != headoffice.Kept || r.Branch != 1 {
		t.Errorf("the first branch goes on: %v", r)
	}
	third := append(slices.Clone(later[:8]), officetest.Chained(&later[7], "e", 1)...)
	if r := receive(t, kh, "KH", third[7:]...); r.Outcome != headoffice.Fork || r.Branch != 3 {
		t.Errorf("a branch of the branch: %v", r)
	}
	chains, err := o.Chains(ctx, "KH")
	officetest.Must(t, err)
	for i, want := range [][]journal.Fact{first, later, third} {
		wantChain(t, o.Office, chains[i], want)
	}
	noted, err := o.Faults(ctx)
	officetest.Must(t, err)
	if len(noted) != 2 || noted[0].Name != "fork" || noted[0].Seq != 7 || noted[1].Seq != 9 {
		t.Errorf("the office noted %v", noted)
	}

	t.Run("letters", func(t *testing.T) {
		if err := kh.GiveLetters(ctx, "KH", 2, "KHB"); !errors.Is(err, message.Refused) {
			t.Errorf("a site gave itself letters: %v", err)
		}
		officetest.Must(t, o.GiveLetters(ctx, "KH", 2, "KHB"))
		for _, taken := range []string{"KH", "KHB"} {
			if err := o.GiveLetters(ctx, "KH", 3, taken); !errors.Is(err, message.Refused) {
				t.Errorf("%s was given twice: %v", taken, err)
			}
		}
		chains, err := o.Chains(ctx, "KH")
		officetest.Must(t, err)
		if chains[0].Letters != "KH" || chains[1].Letters != "KHB" || chains[2].Letters != "" {
			t.Errorf("the letters are %v", chains)
		}
	})
}

// A site reads and writes nothing of another's, by whatever way it tries.
func TestHostileSite(t *testing.T) {
	o := officetest.New(t)
	kh, elm := o.As("KH"), o.As("ELM")
	receive(t, elm, "ELM", officetest.Chained(nil, "elm", 4)...)
	receive(t, kh, "KH", officetest.Chained(nil, "kh", 2)...)

	if r := receive(t, kh, "ELM", officetest.Chained(nil, "x", 1)...); r.Outcome != headoffice.Refused {
		t.Errorf("facts for another site: %v", r)
	}
	if err := kh.Greet(ctx, "ELM", journal.Head{Seq: 9, Hash: "00"}); !errors.Is(err, message.Refused) {
		t.Errorf("greeting as another site: %v", err)
	}
	if got := officetest.Kept(t, kh, theChain(t, o.Office, "ELM")); len(got) > 0 {
		t.Errorf("KH reads %d facts of ELM", len(got))
	}
	config, err := pgx.ParseConfig(o.Server)
	officetest.Must(t, err)
	config.User = o.Site("KH")
	config.RuntimeParams["search_path"] = o.Schema
	conn, err := pgx.ConnectConfig(ctx, config)
	officetest.Must(t, err)
	defer conn.Close(ctx)
	for _, table := range []string{"sites", "chains", "facts", "texts", "contacts", "faults"} {
		var others int
		officetest.Must(t, conn.QueryRow(ctx, "SELECT count(*) FROM "+table+" WHERE site <> 'KH'").Scan(&others))
		if others != 0 {
			t.Errorf("KH reads %d rows of others in %s", others, table)
		}
	}
	for _, statement := range []string{
		"INSERT INTO facts SELECT * FROM facts",
		"INSERT INTO chains (site, branch, seq, hash) VALUES ('KH', 5, 0, '')",
		"UPDATE chains SET seq = 0", "UPDATE facts SET who = ''", "DELETE FROM facts", "TRUNCATE facts",
		"SELECT * FROM facts_2025", "SELECT * FROM facts_2025_0", "SELECT * FROM facts_other",
		"INSERT INTO sites (site, name, role) VALUES ('X', 'x', 'x')", "UPDATE sites SET role = session_user",
		"INSERT INTO texts VALUES ('KH', '', '', '')", "DELETE FROM faults", "SELECT open_season(2026)",
		"SELECT note_fault('ELM', 'fork', 1, '')", "DROP TABLE facts", "ALTER TABLE facts DISABLE ROW LEVEL SECURITY",
		"SET SESSION AUTHORIZATION " + o.Site("ELM"), "SET ROLE " + o.Schema + "_receiver",
		"CREATE FUNCTION my_site() RETURNS text LANGUAGE sql AS 'SELECT 1'",
	} {
		if _, err := conn.Exec(ctx, statement); err == nil {
			t.Errorf("KH may %s", statement)
		}
	}
	noted, err := o.Faults(ctx)
	officetest.Must(t, err)
	if len(noted) != 1 || noted[0].Name != "foreign" || noted[0].Site != "KH" || noted[0].About != "ELM" {
		t.Errorf("the office noted %v", noted)
	}
}

// Not even the office changes a fact.
func TestOfficeNeverEdits(t *testing.T) {
	o := officetest.New(t)
	receive(t, o.As("KH"), "KH", officetest.Chained(nil, "a", 3)...)
	conn, err := pgx.Connect(ctx, o.Server)
	officetest.Must(t, err)
	defer conn.Close(ctx)
	for _, statement := range []string{"UPDATE facts SET who = 'x'", "DELETE FROM facts", "TRUNCATE facts", "DELETE FROM faults; DELETE FROM texts; UPDATE facts SET at = at"} {
		if _, err := conn.Exec(ctx, "SET search_path TO "+o.Schema+"; "+statement); err == nil {
			t.Errorf("the owner of the server may %s", statement)
		}
	}
}

func TestSitesOfOneName(t *testing.T) {
	o := officetest.New(t)
	o.Site("KH")
	if _, err := o.AddSite(ctx, "KH", "another"); !errors.Is(err, message.Refused) {
		t.Errorf("two sites of the same letters: %v", err)
	}
	if _, err := o.AddSite(ctx, "KHX", "Elevator KH"); !errors.Is(err, message.Refused) {
		t.Errorf("two sites of the same name: %v", err)
	}
	for _, letters := range []string{"", "kh", "K H", "TOOLONGNAME", "1A"} {
		if _, err := o.AddSite(ctx, letters, "x"); !errors.Is(err, message.Invalid) {
			t.Errorf("letters %q: %v", letters, err)
		}
	}
}

// An office of an earlier step is brought up to date, and what is in it stays.
func TestBroughtUpToDate(t *testing.T) {
	o := officetest.New(t)
	facts := officetest.Chained(nil, "a", 5)
	receive(t, o.As("KH"), "KH", facts...)
	o.Raw("DROP FUNCTION published(bigint, int), published_text(text), lays_down(text); DROP POLICY publisher ON sites; DROP POLICY published ON chains; DROP POLICY published ON facts; DROP POLICY published ON texts; DROP FUNCTION publisher(); ALTER TABLE sites DROP COLUMN publishes, DROP CONSTRAINT sites_of_one_name; DELETE FROM office_steps WHERE step > 1")
	if at, err := central.Open(ctx, o.Server, o.Schema); !errors.Is(err, message.Storage) {
		t.Errorf("an office of step 1 was opened: %v %v", at, err)
	}
	again, err := central.SetUp(ctx, o.Server, o.Schema)
	officetest.Must(t, err)
	officetest.Must(t, again.Close())
	if _, err := o.AddSite(ctx, "KHX", "Elevator KH"); !errors.Is(err, message.Refused) {
		t.Errorf("two sites of the same name: %v", err)
	}
	wantChain(t, o.Office, theChain(t, o.Office, "KH"), facts)
}

// A keeper needs no more than schemas and roles; a reader sees every site and changes nothing.
func TestKeeperAndReader(t *testing.T) {
	o := officetest.New(t)
	keeper, reader := o.Schema+"_someone", o.Schema+"_looker"
	o.Raw(fmt.Sprintf("CREATE ROLE %s LOGIN CREATEROLE; CREATE ROLE %s LOGIN; GRANT CREATE ON DATABASE postgres TO %[1]s", keeper, reader))
	schema := o.Schema + "_of_theirs"
	kept, err := central.SetUp(ctx, o.Server+" user="+keeper, schema)
	officetest.Must(t, err)
	t.Cleanup(func() {
		officetest.Must(t, kept.Close())
		o.Raw(fmt.Sprintf("DROP SCHEMA %s CASCADE; DROP OWNED BY %s, %s; DROP ROLE %[2]s, %[3]s", schema, keeper, reader))
	})
	_, err = kept.AddSite(ctx, "KH", "Kent Hill")
	officetest.Must(t, err)
	facts := officetest.Chained(nil, "a", 4)
	if r := receive(t, kept, "KH", facts...); r.Outcome != headoffice.Kept {
		t.Errorf("the keeper takes a stick: %v", r)
	}
	o.Raw(fmt.Sprintf("GRANT %s_reader TO %s", schema, reader))
	reads, err := central.Open(ctx, o.Server+" user="+reader, schema)
	officetest.Must(t, err)
	defer reads.Close()
	wantChain(t, reads, theChain(t, reads, "KH"), facts)
	if _, err := reads.AddSite(ctx, "ELM", "Elm Creek"); !errors.Is(err, message.Refused) {
		t.Errorf("a reader added a site: %v", err)
	}
	if r, err := reads.Receive(ctx, "KH", officetest.Lines(t, officetest.Chained(&facts[3], "b", 1)...)); err == nil && r.Outcome != headoffice.Refused {
		t.Errorf("a reader sent facts: %v", r)
	}
}

// A site reads of the publisher's chain what is published and who signed, and of everything else its
// place in the chain alone; the publisher's own rows stay closed to it.
func TestASiteReadsWhatIsPublishedAlone(t *testing.T) {
	o := officetest.New(t)
	hq, kh := o.As("HQ"), o.As("KH")
	facts := officetest.Chained(nil, "a", 3)
	for _, kind := range []string{"office.publication", "house.grower"} {
		facts = append(facts, journal.Link(&facts[len(facts)-1], journal.Entry{
			At: "2026-12-01T09:00:00Z", Who: "Mae Orton", Desk: "office", Kind: kind, Subject: kind + " 1", Body: []byte(`{"from":"2026-12-01"}`),
		}))
	}
	receive(t, hq, "HQ", facts...)
	for range kh.Published(ctx, 0) {
		t.Fatal("a site reads a chain that does not publish")
	}
	officetest.Must(t, o.LaysDown(ctx, "HQ"))
	var told []int64
	last := journal.Genesis
	for l, err := range kh.Published(ctx, 0) {
		officetest.Must(t, err)
		if l.Prev != last {
			t.Errorf("fact %d does not follow the one before", l.Seq)
		}
		last = l.Hash
		if !l.Withheld {
			told = append(told, l.Seq)
		} else if l.At+l.Who+l.Desk+l.Kind+l.Subject+string(l.Body) != "" {
			t.Errorf("fact %d is withheld and tells %+v", l.Seq, l)
		}
	}
	if !slices.Equal(told, []int64{4}) || last != facts[4].Hash {
		t.Errorf("told were the facts %v up to %.12s", told, last)
	}
	if chains, err := kh.Chains(ctx, "HQ"); err != nil || len(chains) > 0 {
		t.Errorf("a site sees the chains %v of the publisher, %v", chains, err)
	}
	if err := kh.LaysDown(ctx, "KH"); err == nil {
		t.Error("a site made itself the publisher")
	}
}
