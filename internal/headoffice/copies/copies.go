// Package copies keeps the books of sites at the office, made from their chains.
//
// A copy is a file that any command of a desk reads. It is nothing but a convenience: what counts is
// the chain at the office. A copy that does not agree with it, was written in, or waits for a newer
// program and has met one, is thrown away and made again.
package copies

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"iter"
	"os"
	"path/filepath"

	"tenthpoint/internal/atomicfile"
	"tenthpoint/internal/book"
	"tenthpoint/internal/book/engines"
	"tenthpoint/internal/headoffice"
	"tenthpoint/internal/headoffice/mirror"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

// Office is the source that chains are copied from.
type Office interface {
	Facts(ctx context.Context, c headoffice.Chain, from int64) iter.Seq2[journal.Fact, error]
	Texts(ctx context.Context, letters string) ([]headoffice.Text, error)
}

// A Copy is a site's book as the office has it.
type Copy struct {
	headoffice.Chain
	Path string
	Waiting
}

// Waiting is the facts that a copy holds and does not show: facts of a program newer than this.
type Waiting struct {
	NotShown int64  `json:"not_shown,string"`
	Newer    string `json:"newer,omitempty"` // the first kind among them
	Program  string `json:"program"`         // that could not read them
}

// Said is a sentence about what waits; empty where all is shown.
func (c Copy) Said() message.Text {
	if c.NotShown == 0 {
		return message.Text{}
	}
	return message.New("%v speaks a newer format: %d facts are not shown, the first of the kind %v. Bring this program up to date.", c.Name(), c.NotShown, c.Newer)
}

// Name is the copy's name: the letters it goes on under, or the site's with the number of the branch.
func (c Copy) Name() string { return NameOf(c.Chain) }

// NameOf is the name of a chain for people.
func NameOf(c headoffice.Chain) string {
	if c.Letters != "" {
		return c.Letters
	}
	return fmt.Sprintf("%s-%d", c.Site, c.Branch)
}

// Folder keeps the copies in a folder, for a program of a version.
type Folder struct {
	Path, Program string
}

// Refresh brings the copy of a chain up to date and returns it. It may have to be made anew.
func (f Folder) Refresh(ctx context.Context, o Office, c headoffice.Chain) (Copy, error) {
	if err := os.MkdirAll(f.Path, 0o700); err != nil {
		return Copy{}, message.Storage.Errorf("there is no place for the copies of sites: %w", err)
	}
	name := c.Site
	if c.Branch > 1 {
		name = fmt.Sprintf("%s-%d", c.Site, c.Branch)
	}
	kept := Copy{Chain: c, Path: filepath.Join(f.Path, name+".book")}
	kept.Waiting = readNote(kept.Path)
	if kept.NotShown > 0 && kept.Program != f.Program {
		if err := kept.discard(); err != nil {
			return kept, err
		}
	}
	err := f.extend(ctx, o, &kept)
	if errors.Is(err, errApart) {
		if err := kept.discard(); err != nil {
			return kept, err
		}
		err = f.extend(ctx, o, &kept)
	}
	return kept, err
}

// errApart is a copy that does not agree with the chain.
var errApart = message.Storage.Errorf("the copy does not agree with the chain of the site")

func (f Folder) extend(ctx context.Context, o Office, c *Copy) (err error) {
	b, err := engines.Open(c.Path, book.Options{Create: true, AnyPlace: true})
	if err != nil {
		return errors.Join(errApart, err)
	}
	defer func() { err = errors.Join(err, b.Close()) }()
	last, some, err := b.Head(ctx)
	if err != nil {
		return err
	}
	if some && c.Head.Holds(last) {
		return nil
	}
	facts, err := following(o.Facts(ctx, c.Chain, max(last.Seq, 1)), last, some)
	if err != nil {
		return err
	}
	texts, err := o.Texts(ctx, c.Site)
	if err != nil {
		return err
	}
	came, err := mirror.Extend(ctx, b, texts, facts)
	if err != nil {
		return err
	}
	c.NotShown += came.NotShown
	if c.Newer == "" {
		c.Newer = came.Newer
	}
	c.Program = f.Program
	return c.note()
}

// following are the facts behind a copy's last one, which they must begin with.
func following(facts iter.Seq2[journal.Fact, error], last journal.Fact, some bool) (iter.Seq2[journal.Fact, error], error) {
	if !some {
		return facts, nil
	}
	next, stop := iter.Pull2(facts)
	first, err, there := next()
	if err != nil || !there || first.Hash != last.Hash {
		stop()
		return nil, errors.Join(errApart, err)
	}
	return func(yield func(journal.Fact, error) bool) {
		defer stop()
		for {
			f, err, there := next()
			if !there || !yield(f, err) || err != nil {
				return
			}
		}
	}, nil
}

// noteOf is the file beside a copy that says what it does not show.
func noteOf(path string) string { return path + ".waiting" }

func readNote(path string) (w Waiting) {
	text, err := os.ReadFile(noteOf(path))
	if err != nil || json.Unmarshal(text, &w) != nil {
		return Waiting{} // none, or spoilt: the copy tells anew what it cannot show
	}
	return w
}

func (c Copy) note() error {
	text, err := json.Marshal(c.Waiting)
	if err != nil {
		return err
	}
	return atomicfile.Replace(noteOf(c.Path), func(w io.Writer) error {
		_, err := w.Write(text)
		return err
	})
}

// discard removes a copy and what belongs to it.
func (c *Copy) discard() error {
	c.Waiting = Waiting{}
	for _, file := range []string{c.Path, c.Path + "-wal", c.Path + "-shm", noteOf(c.Path)} {
		if err := os.Remove(file); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return message.Storage.Errorf("the copy %s cannot be made anew: %w", c.Path, err)
		}
	}
	return nil
}

// Make makes the book of a chain at a path where there is none.
func Make(ctx context.Context, o Office, c headoffice.Chain, path string) (made Copy, err error) {
	made = Copy{Chain: c, Path: path}
	texts, err := o.Texts(ctx, c.Site)
	if err != nil {
		return made, err
	}
	b, err := engines.Open(path, book.Options{Create: true})
	if err != nil {
		return made, err
	}
	defer func() { err = errors.Join(err, b.Close()) }()
	came, err := mirror.Extend(ctx, b, texts, o.Facts(ctx, c, 1))
	made.NotShown, made.Newer = came.NotShown, came.Newer
	return made, err
}
