package sqlite

import (
	"os"
	"path/filepath"
	"strings"
	"tenthpoint/internal/book"
	"tenthpoint/internal/digest"
	"tenthpoint/internal/message"
	"testing"
)

// keptHead is the hash of the last fact of the books under testdata/store. It
// depends on every byte of every fact, on the canonical form and on the chain's
// spelling: if it changes, books out there can no longer be verified.
const keptHead = "b86bcae9f11842ea206d657c1204297736be37bd84705b405777bf70fbdc187e"

// keptBook is a copy of a book under testdata/store, with what lay beside it.
func keptBook(t *testing.T, name string) string {
	t.Helper()
	const kept = "../../../testdata/store"
	path := filepath.Join(t.TempDir(), name)
	for _, suffix := range []string{"", "-wal"} {
		content, err := os.ReadFile(filepath.Join(kept, name+suffix))
		if suffix != "" && os.IsNotExist(err) {
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path+suffix, content, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return path
}

func TestOldBooksStillOpenVerifyAndGoOn(t *testing.T) {
	for _, name := range []string{"0001-sound.sqlite", "0001-killed.sqlite"} {
		t.Run(name, func(t *testing.T) {
			b, err := Open(keptBook(t, name), book.Options{})
			if err != nil {
				t.Fatal(err)
			}
			defer b.Close()
			if problems, err := b.Verify(ctx); err != nil || len(problems) > 0 {
				t.Fatalf("%q, %v", problems, err)
			}
			last, _, err := b.Head(ctx)
			if err != nil || last.Seq != 6 || last.Hash != keptHead {
				t.Errorf("ends with %d, %s, %v", last.Seq, last.Hash, err)
			}
			facts, err := b.FactsOf(ctx, "load 2")
			if err != nil || len(facts) != 3 || string(facts[0].Body) != `{"figure":"20003","note":"Körner ½"}` {
				t.Errorf("%v, %v", facts, err)
			}
			text := "# example - not for trade\n[drying]\nrate = \"0.055\"\n"
			if id, kept, err := b.Edition(ctx, digest.Of(text)); id != "demo corn 2025" || kept != text || err != nil {
				t.Errorf("%q, %q, %v", id, kept, err)
			}
			write(t, b, func(tx *Tx) error {
				number, err := tx.NextNumber("ticket")
				if number != 3 {
					t.Errorf("the next ticket is %d", number)
				}
				return err
			})
			appendTo(t, b, 1)
			wantSound(t, b, 7)
		})
	}
}

func TestOldAlteredBookIsFoundOut(t *testing.T) {
	b, err := Open(keptBook(t, "0001-altered.sqlite"), book.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	problems, err := b.Verify(ctx)
	all := message.Texts("\n", problems).String()
	if err != nil || len(problems) != 11 {
		t.Errorf("%d problems, %v:\n%s", len(problems), err, all)
	}
	for _, want := range []string{
		`Fact 4 ("gross weighed" of "load 2") was changed after it was entered`,
		`The edition "demo corn 2025" was changed after it was kept`,
		"The trigger facts_never_change was removed",
	} {
		if !strings.Contains(all, want) {
			t.Errorf("not found: %s\nin\n%s", want, all)
		}
	}
}
