package sqlite

import (
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"tenthpoint/internal/book"
	"testing"
	"time"
)

func draftOf(id, texts string) book.Draft {
	return book.Draft{Place: "load", ID: id, At: "2026-10-01T13:00:00Z", Who: "Cal Reyes", Texts: texts}
}

func drafts(t testing.TB, b *Book) []book.Draft {
	t.Helper()
	all, err := b.Drafts(ctx)
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// A draft is kept, takes the place of the one before it, and goes without
// texts, whether it was saved alone or kept with a write.
func TestDraftsAreKeptReplacedAndDropped(t *testing.T) {
	for name, keep := range map[string]func(*Book, book.Draft) error{
		"alone": (*Book).SaveDraft,
		"kept": func(b *Book, d book.Draft) error {
			return b.inWrite(ctx, func(tx *Tx) error { return tx.SaveDraft(d) })
		},
	} {
		t.Run(name, func(t *testing.T) {
			b := newBook(t)
			for _, d := range []book.Draft{draftOf("L1", `{"a":"1"}`), draftOf("L2", `{"a":"2"}`), draftOf("L1", `{"a":"3"}`)} {
				if err := keep(b, d); err != nil {
					t.Fatal(err)
				}
			}
			want := []book.Draft{draftOf("L1", `{"a":"3"}`), draftOf("L2", `{"a":"2"}`)}
			if got := drafts(t, b); !reflect.DeepEqual(got, want) {
				t.Errorf("the book has %v, want %v", got, want)
			}
			if err := keep(b, draftOf("L1", "")); err != nil {
				t.Fatal(err)
			}
			if got := drafts(t, b); !reflect.DeepEqual(got, want[1:]) {
				t.Errorf("after one went it has %v", got)
			}
		})
	}
}

// A draft is kept with the rest of its write or not at all.
func TestDraftGoesWithItsWrite(t *testing.T) {
	b := newBook(t)
	if err := b.SaveDraft(draftOf("L1", `{"a":"1"}`)); err != nil {
		t.Fatal(err)
	}
	changedMind := errors.New("changed my mind")
	err := b.inWrite(ctx, func(tx *Tx) error {
		return errors.Join(tx.SaveDraft(draftOf("L1", "")), tx.SaveDraft(draftOf("L2", `{"a":"2"}`)), changedMind)
	})
	if !errors.Is(err, changedMind) {
		t.Fatal(err)
	}
	if got := drafts(t, b); len(got) != 1 || got[0].ID != "L1" {
		t.Errorf("the book has %v", got)
	}
}

// Saved text is there after the program was killed: the files are copied without closing the book.
func TestJotOutlivesTheProgram(t *testing.T) {
	folder := t.TempDir()
	b, err := Open(filepath.Join(folder, "live.book"), book.Options{Create: true})
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	appendTo(t, b, 3)
	if err := b.SaveDraft(draftOf("L1", `{"field.gross":"5230"}`)); err != nil {
		t.Fatal(err)
	}
	left := filepath.Join(t.TempDir(), "left.book")
	for _, suffix := range []string{"", "-wal"} {
		content, err := os.ReadFile(b.Path() + suffix)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(left+suffix, content, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	after, err := Open(left, book.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer after.Close()
	if got := drafts(t, after); len(got) != 1 || got[0].Texts != `{"field.gross":"5230"}` {
		t.Errorf("left are %v", got)
	}
	wantSound(t, after, 3)
}

// Saving a draft does not wait for another write, and says so; a write waits for no draft.
func TestJotDoesNotWait(t *testing.T) {
	b := newBook(t)
	write(t, b, func(tx *Tx) error {
		if _, err := tx.Append(draft(0)); err != nil {
			return err
		}
		if err := b.SaveDraft(draftOf("L1", `{"a":"1"}`)); !errors.Is(err, book.ErrBusy) {
			t.Errorf("during a write: %v", err)
		}
		return nil
	})
	if err := b.SaveDraft(draftOf("L1", `{"a":"1"}`)); err != nil {
		t.Error(err)
	}
	appendTo(t, b, 1)
	wantSound(t, b, 2)
}

func TestJotInABookOpenForReadingIsRefused(t *testing.T) {
	b := newBook(t)
	read, err := Open(b.Path(), book.Options{ReadOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	defer read.Close()
	wantError(t, read.SaveDraft(draftOf("L1", `{"a":"1"}`)), "open for reading only")
}

// After saving drafts nothing is left beside a closed book.
func TestNothingLiesBesideABookAfterJots(t *testing.T) {
	path := filepath.Join(t.TempDir(), "house.book")
	b, err := Open(path, book.Options{Create: true})
	if err != nil {
		t.Fatal(err)
	}
	if err := b.SaveDraft(draftOf("L1", `{"a":"1"}`)); err != nil {
		t.Fatal(err)
	}
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	if files := beside(t, path); !slices.Equal(files, []string{""}) {
		t.Errorf("beside the book: %q", files)
	}
}

// BenchmarkSaveDraft measures the cost of a saved keystroke: it should stay far under the 16 ms of a
// frame.
func BenchmarkSaveDraft(b *testing.B) {
	book, err := Open(filepath.Join(b.TempDir(), "drafts.book"), book.Options{Create: true})
	if err != nil {
		b.Fatal(err)
	}
	defer book.Close()
	d := draftOf("L1", `{"field.gross":"52300","field.moisture":"17.2"}`)
	for i := 0; b.Loop(); i++ {
		d.At = time.Unix(int64(i), 0).UTC().Format(time.RFC3339)
		if err := book.SaveDraft(d); err != nil {
			b.Fatal(err)
		}
	}
}
