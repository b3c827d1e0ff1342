package main

import (
	"bufio"
	"compress/gzip"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/transcript"
)

// oldBooks holds books made by older programs, with all that those programs
// said of them. "go run ./cmd/task books" makes them; the program of today
// never does.
const oldBooks = "../../testdata/books"

// TestOldBooks opens books of older programs, one of every step of the tables among them, and
// requires that each verifies and every slip, working, day sheet and account reads as before.
// Allowed differences are in allowed.txt.
func TestOldBooks(t *testing.T) {
	names, err := filepath.Glob(filepath.Join(oldBooks, "*.book.gz"))
	if err != nil || len(names) < 11 {
		t.Fatalf("%d books: %v", len(names), err)
	}
	allowed, french := allowedFor(t, "allowed.txt"), allowedFor(t, "allowed-french.txt")
	if allowed.Masks() || french.Masks() {
		t.Error("a rule masks something: of an old book all is compared")
	}
	french.Join(allowed)
	t.Run("each", func(t *testing.T) {
		for _, name := range names {
			t.Run(strings.TrimSuffix(filepath.Base(name), ".book.gz"), func(t *testing.T) {
				t.Parallel()
				if strings.Contains(name, "french") {
					oldBook(t, name, french)
				} else {
					oldBook(t, name, allowed)
				}
			})
		}
	})
	for _, why := range french.Unused() { // its own and all others
		t.Errorf("nothing needs this difference any more: %s", why)
	}
}

func allowedFor(t *testing.T, name string) *transcript.Allowed {
	t.Helper()
	file, err := os.Open(filepath.Join(oldBooks, name))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	allowed, err := transcript.ReadAllowed(file)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return allowed
}

// oldBook asks the program of today what an older one was asked of a book.
func oldBook(t *testing.T, packed string, allowed *transcript.Allowed) {
	dir := t.TempDir()
	file, err := os.Create(filepath.Join(dir, transcript.BookName))
	if err != nil {
		t.Fatal(err)
	}
	unpack(t, packed, file)
	if err := file.Close(); err != nil {
		t.Fatal(err)
	}
	questions := said(t, strings.Replace(packed, ".book.gz", ".said.gz", 1))
	if len(questions) < 20 || !strings.Contains(questions[0].Out, "\nAll is sound.\n") {
		t.Fatalf("of %d answers the first says %q", len(questions), questions[0].Out)
	}
	for _, q := range questions {
		answer := inThisProcess(t, q.Now, q.Args, file.Name())
		for _, problem := range transcript.Compare(q, answer, allowed) {
			t.Error(problem)
		}
	}
}

// inThisProcess types a command line without starting a program, which would
// take most of the time of the test.
func inThisProcess(t *testing.T, at string, args []string, book string) transcript.Entry {
	t.Helper()
	now, err := time.Parse("2006-01-02 15:04", at)
	if err != nil {
		t.Fatal(err)
	}
	var out, complaints strings.Builder
	place := terminal.New(func() time.Time { return now }, time.UTC)
	place.Stdin, place.Stdout, place.Stderr, place.Typing = bufio.NewReader(strings.NewReader("")), &out, &complaints, false
	status := run(t.Context(), append(slices.Clone(args), "--book", book), place)
	return transcript.Entry{Now: at, Args: args, Out: out.String(), Err: complaints.String(), Status: status}
}

func said(t *testing.T, name string) []transcript.Entry {
	t.Helper()
	var text strings.Builder
	unpack(t, name, &text)
	entries, err := transcript.Read(strings.NewReader(text.String()))
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return entries
}

func unpack(t *testing.T, name string, into io.Writer) {
	t.Helper()
	file, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	packed, err := gzip.NewReader(file)
	if err == nil {
		_, err = io.Copy(into, packed)
	}
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
}
