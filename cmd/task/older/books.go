package older

import (
	"compress/gzip"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"tenthpoint/cmd/task/toolchain"

	"tenthpoint/internal/transcript"
)

// Books makes the books of testdata/books again from their recipes, with the programs of the
// revisions they name, and records what the program before the rebuild says of them, or another one
// that they name. Today's program is not involved.
func Books(args []string) error {
	paths, err := filepath.Glob(filepath.Join(booksFolder, "*.recipe"))
	if err != nil {
		return err
	}
	scratch, err := os.MkdirTemp("", "books-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(scratch)
	w := workshop{scratch: scratch}
	var failed error
	for _, path := range paths {
		r, err := readRecipe(path)
		if err != nil {
			return err
		}
		if len(args) > 0 && args[0] != r.name {
			continue
		}
		if err := w.make(r); err != nil {
			failed = errors.Join(failed, fmt.Errorf("%s: %w", r.name, err))
		}
	}
	return failed
}

// A workshop keeps the programs built for one run.
type workshop struct{ scratch string }

// tree is the unpacked source of a revision.
func (w workshop) tree(revision string) (string, error) {
	tree := filepath.Join(w.scratch, revision, "tree")
	if _, err := os.Stat(tree); err == nil {
		return tree, nil
	}
	return tree, unpackRevision(revision, tree)
}

// program is the terminal program of a revision.
func (w workshop) program(revision string) (string, error) {
	tree, err := w.tree(revision)
	if err != nil {
		return "", err
	}
	program := filepath.Join(w.scratch, revision, "tenth")
	if _, err := os.Stat(program); err == nil {
		return program, nil
	}
	return terminalProgram(tree, filepath.Join(w.scratch, revision))
}

// make makes one book, asks for all its papers, and stores both.
func (w workshop) make(r recipe) error {
	dir := filepath.Join(w.scratch, "work", r.name)
	if err := w.cook(r, dir); err != nil {
		return err
	}
	asking, err := w.program(r.asked)
	if err != nil {
		return err
	}
	book := filepath.Join(dir, transcript.BookName)
	if err := writePacked(filepath.Join(booksFolder, r.name+".book.gz"), func(out io.Writer) error { return copyFile(out, book) }); err != nil {
		return err
	}
	a := asker{program: transcript.Program{Path: asking, Dir: dir}, measure: full, now: "2026-10-09 13:00"}
	if len(r.seed) > 0 {
		a.measure = short
	}
	if err := a.all(); err != nil {
		return err
	}
	err = writePacked(filepath.Join(booksFolder, r.name+".said.gz"), func(out io.Writer) error { return transcript.Write(out, a.said) })
	toolchain.Say("%-10s %d answers", r.name, len(a.said))
	return err
}

// cook follows a recipe in a fresh folder.
func (w workshop) cook(r recipe, dir string) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	for name, text := range r.files {
		if err := writeFrom(strings.NewReader(text), filepath.Join(dir, name)); err != nil {
			return err
		}
	}
	if len(r.seed) > 0 {
		tree, err := w.tree(r.revision)
		if err != nil {
			return err
		}
		source := filepath.Join(booksFolder, r.seed[0])
		if err := runSeed(tree, source, append([]string{filepath.Join(dir, transcript.BookName)}, r.seed[1:]...)...); err != nil {
			return err
		}
	}
	if len(r.commands) == 0 {
		return nil
	}
	program, err := w.program(r.revision)
	if err != nil {
		return err
	}
	p := transcript.Program{Path: program, Dir: dir}
	for _, c := range r.commands {
		said, err := p.Say(context.Background(), c.Now, c.Args...)
		if err != nil {
			return err
		}
		if said.Status != 0 {
			return fmt.Errorf("%s: %s%s", said.Line(), said.Out, said.Err)
		}
	}
	return nil
}

func writePacked(path string, write func(io.Writer) error) error {
	file, err := os.Create(path)
	if err != nil {
		return err
	}
	packed, err := gzip.NewWriterLevel(file, gzip.BestCompression)
	if err != nil {
		return err
	}
	return errors.Join(write(packed), packed.Close(), file.Close())
}

func copyFile(out io.Writer, path string) error {
	file, err := os.Open(path)
	if err != nil {
		return err
	}
	defer file.Close()
	_, err = io.Copy(out, file)
	return err
}
