package sqlite

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"tenthpoint/internal/atomicfile"
	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite/filecopy"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

// Backup copies the book to a new file, of one moment, while it is in use, and then
// checks the copy: what was entered since the last backup in that folder, and once a
// week all of it. An existing file is never written over, and a copy that is not
// sound is not kept. A book on a stick can be opened like any other. The head of the copy is
// noted beside it in the words that note finds for it.
func (b *Book) Backup(ctx context.Context, path string, note func(journal.Head) string) error {
	target, err := filepath.Abs(path)
	if err != nil {
		return message.Errorf("%q is no place for a backup: %w", path, err)
	}
	atLeast, _, err := b.Head(ctx)
	if err != nil {
		return err
	}
	since := b.lastChecked(ctx, filepath.Dir(target))
	var checked headNote
	err = filecopy.Make(ctx, b.read, target, func(partial string) error {
		checked, err = b.verifyCopy(ctx, partial, atLeast, since)
		return err
	})
	if err != nil || checked.head.Seq == 0 {
		return b.file.sentence(err)
	}
	return checked.write(target, note(checked.head))
}

// verifyCopy checks that a copy is sound, whole or since a head, and of this book: its
// last fact is one of ours, no earlier than what had been entered before.
func (b *Book) verifyCopy(ctx context.Context, path string, atLeast journal.Fact, since headNote) (headNote, error) {
	copied, err := Open(path, book.Options{ReadOnly: true})
	if err != nil {
		return headNote{}, err
	}
	defer copied.Close()
	note := since
	var problems []message.Text
	if since.isDue() {
		note = wholeNow()
		problems, err = copied.Verify(ctx)
	} else {
		problems, err = copied.verifySince(ctx, since.head)
	}
	if err != nil {
		return headNote{}, err
	}
	if len(problems) > 0 {
		return headNote{}, message.Storage.Errorf("The backup was not kept, because the book has %d problems. The first: %s "+
			"Verify the book; to keep it as it is, close every program and copy its file.", len(problems), problems[0])
	}
	last, some, err := copied.Head(ctx)
	if err != nil || !some && atLeast.Seq == 0 {
		return headNote{}, err
	}
	note.head = journal.HeadOf(last)
	if holds, err := b.holds(ctx, note.head); err != nil || holds && last.Seq >= atLeast.Seq {
		return note, err
	}
	return headNote{}, message.Storage.Errorf("The backup was not kept: it ends with fact %d (%.12s), which is not the book's. "+
		"Is the disk in order?", last.Seq, last.Hash)
}

// holds reports whether the book has a fact of that number and hash.
func (b *Book) holds(ctx context.Context, head journal.Head) (bool, error) {
	for f, err := range b.Facts(ctx, book.FactFilter{FromSeq: head.Seq, ToSeq: head.Seq}) {
		return err == nil && head.Holds(f), err
	}
	return false, nil
}

// A headNote stands in a small file beside a copy: the head of the copy, and when all
// of the book was last checked for a copy in that folder. The file goes where the copy
// does not: into a letter, on another stick.
type headNote struct {
	head  journal.Head
	whole time.Time
}

const (
	noteEnding = ".head.txt"
	wholeWords = "All of it was checked on "
	// wholeEvery is the interval after which a copy is checked from its first fact again.
	wholeEvery = 7 * 24 * time.Hour
)

func wholeNow() headNote { return headNote{whole: time.Now()} }

// isDue reports whether all of the book is to be checked. A time to come is no proof
// of a check.
func (n headNote) isDue() bool {
	age := time.Since(n.whole)
	return n.head.Seq == 0 || age < 0 || age > wholeEvery
}

// write puts the note beside a copy, with the head in the words found for it.
func (n headNote) write(target, head string) error {
	return atomicfile.Replace(target+noteEnding, func(w io.Writer) error {
		_, err := fmt.Fprintf(w, "%s\n%s%s\n", head, wholeWords, journal.Stamp(n.whole))
		return err
	})
}

// readNote reads a note; its zero where it is none, or one of an earlier program.
func readNote(path string) (n headNote) {
	text, err := os.ReadFile(path)
	if err != nil {
		return n
	}
	heads := journal.FindHeads(string(text))
	_, when, _ := strings.Cut(string(text), wholeWords)
	whole, err := time.Parse(journal.TimeLayout, strings.TrimSpace(when))
	if err != nil || len(heads) != 1 {
		return n
	}
	return headNote{heads[0], whole}
}

// lastChecked is the furthest note beside the copies of a folder whose head this book
// holds; its zero where there is none.
func (b *Book) lastChecked(ctx context.Context, folder string) (last headNote) {
	notes, _ := filepath.Glob(filepath.Join(escapeGlob(folder), "*"+noteEnding)) // a pattern of ours
	for _, path := range notes {
		n := readNote(path)
		if n.head.Seq <= last.head.Seq {
			continue
		}
		if holds, err := b.holds(ctx, n.head); err == nil && holds {
			last = n
		}
	}
	return last
}

// escapeGlob is a folder's name in which no sign means another.
var escapeGlob = strings.NewReplacer("*", "[*]", "?", "[?]", "[", "[[]").Replace

// Build makes a book in a new file of what fill writes, which comes from a book of another engine. It
// is verified whole, and has its name only then: an existing file is never written over, and a book
// that is not sound is not kept. Its head is noted beside it in the words that note finds for it.
func Build(ctx context.Context, path string, note func(journal.Head) string, fill func(book.Tx) error) error {
	target, err := filepath.Abs(path)
	if err != nil {
		return message.Errorf("%q is no place for a backup: %w", path, err)
	}
	var checked headNote
	err = filecopy.New(target, func(partial string) error {
		checked, err = buildAt(ctx, partial, fill)
		return err
	})
	if err != nil || checked.head.Seq == 0 {
		return err
	}
	return checked.write(target, note(checked.head))
}

// buildAt fills an empty file and verifies what came of it.
func buildAt(ctx context.Context, partial string, fill func(book.Tx) error) (note headNote, err error) {
	b, err := Open(partial, book.Options{Create: true, AnyPlace: true})
	if err != nil {
		return note, err
	}
	defer func() { err = errors.Join(err, b.Close()) }()
	if err := b.Write(ctx, fill); err != nil {
		return note, err
	}
	problems, err := b.Verify(ctx)
	if err == nil {
		stock, failed := b.VerifyStock(ctx)
		problems, err = append(problems, stock...), failed
	}
	if err != nil {
		return note, err
	}
	if len(problems) > 0 {
		return note, message.Storage.Errorf("The backup was not kept, because the book has %d problems. The first: %s "+
			"Verify the book.", len(problems), problems[0])
	}
	note = wholeNow()
	last, some, err := b.Head(ctx)
	if some {
		note.head = journal.HeadOf(last)
	}
	return note, err
}
