package sqlite

import (
	"context"
	"fmt"
	"io"
	"path/filepath"

	"tenthpoint/internal/atomicfile"
	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

// Backup copies a snapshot of the book to a new file while it is in use, and then verifies the
// copy. An existing file is never overwritten, and a copy that does not verify is not kept. A
// backup can be opened like any book.
func (b *Book) Backup(ctx context.Context, path string) error {
	target, err := filepath.Abs(path)
	if err != nil {
		return message.Errorf("%q is no place for a backup: %w", path, err)
	}
	atLeast, _, err := b.Head(ctx)
	if err != nil {
		return err
	}
	err = b.file.copyTo(ctx, target, func(partial string) error {
		return b.verifyCopy(ctx, partial, atLeast)
	})
	if err != nil {
		return b.file.sentence(err)
	}
	return noteHead(ctx, target)
}

// noteHead writes the head of a copy into a small file beside it, which goes where
// the copy does not: into a letter, on another stick.
func noteHead(ctx context.Context, target string) error {
	copied, err := Open(target, Options{ReadOnly: true})
	if err != nil {
		return err
	}
	defer copied.Close()
	last, some, err := copied.Head(ctx)
	if err != nil || !some {
		return err
	}
	return atomicfile.Replace(target+".head.txt", func(w io.Writer) error {
		_, err := fmt.Fprintln(w, journal.HeadOf(last))
		return err
	})
}

// verifyCopy checks that a copy is complete, valid, and of this book: its last fact is one of ours,
// no earlier than the last one before the copy.
func (b *Book) verifyCopy(ctx context.Context, path string, atLeast journal.Fact) error {
	copied, err := Open(path, Options{ReadOnly: true})
	if err != nil {
		return err
	}
	defer copied.Close()
	problems, err := copied.Verify(ctx)
	if err != nil {
		return err
	}
	if len(problems) > 0 {
		return message.Storage.Errorf("The backup was not kept, because the book has %d problems. The first: %s "+
			"Verify the book; to keep it as it is, close every program and copy its file.", len(problems), problems[0])
	}
	last, some, err := copied.Head(ctx)
	if err != nil || !some && atLeast.Seq == 0 {
		return err
	}
	for ours, err := range b.Facts(ctx, book.FactFilter{FromSeq: last.Seq, ToSeq: last.Seq}) {
		if err != nil {
			return err
		}
		if ours.Hash == last.Hash && last.Seq >= atLeast.Seq {
			return nil
		}
	}
	return message.Storage.Errorf("The backup was not kept: it ends with fact %d (%.12s), which is not the book's. "+
		"Is the disk in order?", last.Seq, last.Hash)
}
