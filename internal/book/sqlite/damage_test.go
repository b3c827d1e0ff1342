package sqlite

import (
	"database/sql"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/digest"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

// unguard drops the triggers, as somebody who means to alter the book would.
func unguard(t testing.TB, b *Book) *sql.DB {
	t.Helper()
	guards, err := texts(ctx, b, "SELECT name FROM sqlite_schema WHERE type = 'trigger'")
	if err != nil || len(guards) == 0 {
		t.Fatal("there are no triggers to remove", err)
	}
	db := bare(t, b.Path())
	force(t, db, "PRAGMA synchronous = OFF; PRAGMA ignore_check_constraints = ON")
	for _, guard := range guards {
		force(t, db, "DROP TRIGGER "+guard)
	}
	return db
}

func force(t testing.TB, db connection, statement string, args ...any) {
	t.Helper()
	if _, err := db.ExecContext(ctx, statement, args...); err != nil {
		t.Fatal(statement, err)
	}
}

func wantNamed(t *testing.T, b *Book, how string, seq int64) {
	t.Helper()
	problems, _, err := b.VerifyChain(ctx)
	if err != nil {
		t.Fatalf("%s: %v", how, err)
	}
	if !slices.ContainsFunc(problems, func(p message.Text) bool {
		return strings.HasPrefix(p.String(), fmt.Sprintf("Fact %d ", seq))
	}) {
		t.Errorf("%s: fact %d is not named in %q", how, seq, problems)
	}
}

// Every byte of every text of a fact, flipped two ways: one bit, and all bits.
func TestEveryFlippedByteIsFoundAndNamed(t *testing.T) {
	b := newBook(t)
	appendTo(t, b, 3)
	db := unguard(t, b)
	for f, err := range b.Facts(ctx, book.FactFilter{}) {
		if err != nil {
			t.Fatal(err)
		}
		for column, text := range map[string]string{
			"at": f.At, "who": f.Who, "desk": f.Desk, "kind": f.Kind, "subject": f.Subject,
			"body": string(f.Body), "prev": f.Prev, "hash": f.Hash,
		} {
			set := "UPDATE facts SET " + column + " = ? WHERE seq = ?"
			for i := range len(text) {
				for _, flip := range []byte{0x01, 0xff} {
					harmed := []byte(text)
					harmed[i] ^= flip
					force(t, db, set, string(harmed), f.Seq)
					wantNamed(t, b, fmt.Sprintf("%s byte %d of fact %d", column, i, f.Seq), f.Seq)
				}
			}
			force(t, db, set, text+" ", f.Seq)
			wantNamed(t, b, "a space after "+column, f.Seq)
			force(t, db, set, text[1:], f.Seq)
			wantNamed(t, b, "a byte missing from "+column, f.Seq)
			force(t, db, set, text, f.Seq)
		}
	}
	wantSound(t, b, 3)
}

func TestEveryFlippedBitOfANumberIsFoundAndNamed(t *testing.T) {
	b := newBook(t)
	appendTo(t, b, 3)
	db := unguard(t, b)
	for seq := int64(1); seq <= 3; seq++ {
		for bit := range 64 {
			wrong := seq ^ int64(uint64(1)<<bit)
			if 1 <= wrong && wrong <= 3 {
				continue // taken; the file itself refuses
			}
			force(t, db, "UPDATE facts SET seq = ? WHERE seq = ?", wrong, seq)
			wantNamed(t, b, fmt.Sprintf("bit %d of number %d", bit, seq), wrong)
			force(t, db, "UPDATE facts SET seq = ? WHERE seq = ?", seq, wrong)
		}
	}
	wantSound(t, b, 3)
}

func TestMissingForeignAndSwappedFactsAreFound(t *testing.T) {
	cases := map[string]struct{ harm, want string }{
		"one deleted":   {"DELETE FROM facts WHERE seq = 2", "Fact 2 is missing"},
		"one put in":    {"INSERT INTO facts SELECT 5, at, who, desk, kind, subject, body, hash, hash FROM facts WHERE seq = 4", `Fact 5 ("gross weighed" of "load 2") was changed`},
		"bodies swap":   {"UPDATE facts SET body = (SELECT body FROM facts AS other WHERE other.seq = 3 - facts.seq) WHERE seq IN (1, 2)", "Fact 1 ("},
		"all renamed":   {"UPDATE facts SET who = 'B. Clerk'", `Fact 4 (`},
		"first deleted": {"DELETE FROM facts WHERE seq = 1", "Fact 1 is missing"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			b := newBook(t)
			appendTo(t, b, 4)
			force(t, unguard(t, b), c.harm)
			problems, err := b.Verify(ctx)
			if err != nil || !strings.Contains(message.Texts("\n", problems).String(), c.want) {
				t.Errorf("got %q, %v, want %q", problems, err, c.want)
			}
		})
	}
}

func TestAlteredEditionIsFoundAndNamed(t *testing.T) {
	b := newBook(t)
	write(t, b, func(tx *Tx) error { return tx.KeepEdition("corn 2025", digest.Of("rate"), "rate") })
	for _, harm := range []string{"UPDATE editions SET text = 'rats'", "UPDATE editions SET text = 'rate', sha256 = 'x'"} {
		force(t, unguardOnce(t, b), harm)
		problems, _, err := b.VerifyEditions(ctx)
		if err != nil || len(problems) != 1 || !strings.Contains(problems[0].String(), `"corn 2025" was changed`) {
			t.Errorf("%s: %q, %v", harm, problems, err)
		}
	}
}

// unguardOnce is unguard for a book that may have lost its triggers already.
func unguardOnce(t *testing.T, b *Book) *sql.DB {
	if guards, _ := texts(ctx, b, "SELECT name FROM sqlite_schema WHERE type = 'trigger'"); len(guards) == 0 {
		return bare(t, b.Path())
	}
	return unguard(t, b)
}

func TestMissingTriggersAreNamed(t *testing.T) {
	b := newBook(t)
	if problems, err := b.VerifyFile(ctx); err != nil || len(problems) > 0 {
		t.Fatalf("a fresh book: %q, %v", problems, err)
	}
	all, err := texts(ctx, b, "SELECT name FROM sqlite_schema WHERE type = 'trigger'")
	if err != nil {
		t.Fatal(err)
	}
	unguard(t, b)
	problems, err := b.VerifyFile(ctx)
	if err != nil || len(problems) != len(all) {
		t.Errorf("%d triggers are gone, found %q, %v", len(all), problems, err)
	}
	for _, guard := range all {
		if !strings.Contains(message.Texts("\n", problems).String(), guard) {
			t.Errorf("%s is not named", guard)
		}
	}
}

// Any page of the file that holds facts or finds them, overwritten as a bad
// disk does it.
func TestDamagedPageIsFound(t *testing.T) {
	b := newBook(t)
	appendTo(t, b, 300)
	path := b.Path()
	pages, err := texts(ctx, b, "SELECT pageno FROM dbstat WHERE name LIKE 'facts%' AND payload > 1000")
	if err != nil || len(pages) < 20 {
		t.Fatal(pages, err)
	}
	b.Close()
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for _, page := range pages {
		t.Run("page "+page, func(t *testing.T) {
			number, err := strconv.Atoi(page)
			if err != nil {
				t.Fatal(err)
			}
			harmed := slices.Clone(whole)
			copy(harmed[number*4096-512:], strings.Repeat("scratch!", 512/8))
			if err := os.WriteFile(path, harmed, 0o644); err != nil {
				t.Fatal(err)
			}
			damaged, err := Open(path, book.Options{})
			if err != nil {
				return // found at once
			}
			defer damaged.Close()
			if problems, err := damaged.Verify(ctx); err == nil && len(problems) == 0 {
				t.Error("nothing was found")
			}
		})
	}
}

func TestSentencesOfADamagedFile(t *testing.T) {
	b := newBook(t)
	appendTo(t, b, 300)
	path := b.Path()
	b.Close()
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, whole[:len(whole)/2/4096*4096], 0o644); err != nil {
		t.Fatal(err)
	}
	half, err := Open(path, book.Options{})
	if err == nil {
		defer half.Close()
		_, _, err = journal.Check(half.Facts(ctx, book.FactFilter{}))
	}
	wantError(t, err, "The file of the book "+path+" is damaged", "backup")
}
