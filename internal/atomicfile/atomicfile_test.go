package atomicfile

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
)

// holds asks that a folder has these files, "name=content", and nothing hidden.
func holds(t *testing.T, folder string, want ...string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, e := range entries {
		text, err := os.ReadFile(filepath.Join(folder, e.Name()))
		if err != nil {
			t.Fatal(err)
		}
		got = append(got, e.Name()+"="+string(text))
	}
	if strings.Join(got, ",") != strings.Join(want, ",") {
		t.Errorf("the folder holds %q, not %q", got, want)
	}
}

func TestCreateNeverWritesOver(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "slip.pdf")
	if err := Create(path, []byte("first")); err != nil {
		t.Fatal(err)
	}
	if err := Create(path, []byte("second")); !errors.Is(err, fs.ErrExist) {
		t.Errorf("a name that is taken: %v", err)
	}
	holds(t, folder, "slip.pdf=first")
}

// Of many programs that want one name, one gets it, with its own bytes.
func TestCreateIsForOne(t *testing.T) {
	folder := t.TempDir()
	var made atomic.Int32
	var wg sync.WaitGroup
	for i := range 16 {
		wg.Go(func() {
			err := Create(filepath.Join(folder, "x"), bytes.Repeat([]byte{byte('a' + i)}, 5000))
			if err == nil {
				made.Add(1)
			} else if !errors.Is(err, fs.ErrExist) {
				t.Error(err)
			}
		})
	}
	wg.Wait()
	text, err := os.ReadFile(filepath.Join(folder, "x"))
	if err != nil || made.Load() != 1 || len(text) != 5000 || strings.Trim(string(text), string(text[:1])) != "" {
		t.Errorf("%d wrote it; %d bytes, %v", made.Load(), len(text), err)
	}
	holds(t, folder, "x="+string(text))
}

func TestReplaceKeepsTheOldFileUntilTheNewIsWhole(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "out.csv")
	say := func(text string, err error) func(io.Writer) error {
		return func(w io.Writer) error {
			fmt.Fprint(w, text)
			holds(t, folder, append(dirNames(t, folder), "out.csv=old")...)
			return err
		}
	}
	if err := os.WriteFile(path, []byte("old"), 0o644); err != nil {
		t.Fatal(err)
	}
	broken := errors.New("broken off")
	if err := Replace(path, say("half", broken)); !errors.Is(err, broken) || err.Error() != broken.Error() {
		t.Errorf("the writer's own error: %v", err)
	}
	holds(t, folder, "out.csv=old")
	if err := Replace(path, say("new", nil)); err != nil {
		t.Error(err)
	}
	holds(t, folder, "out.csv=new")
}

// dirNames are the part-files of a folder, with their content.
func dirNames(t *testing.T, folder string) []string {
	t.Helper()
	parts, err := filepath.Glob(filepath.Join(folder, ".part-*"))
	if err != nil || len(parts) != 1 {
		t.Fatalf("%d part-files, %v", len(parts), err)
	}
	text, err := os.ReadFile(parts[0])
	if err != nil {
		t.Fatal(err)
	}
	return []string{filepath.Base(parts[0]) + "=" + string(text)}
}

// A failure names the file that was asked for, and leaves nothing behind.
func TestFailuresNameTheFile(t *testing.T) {
	folder := t.TempDir()
	missing := filepath.Join(folder, "missing", "x")
	full := filepath.Join(folder, "full")
	if err := os.MkdirAll(filepath.Join(full, "inside"), 0o755); err != nil {
		t.Fatal(err)
	}
	write := func(w io.Writer) error { _, err := io.WriteString(w, "x"); return err }
	for name, err := range map[string]error{
		missing: Create(missing, []byte("x")), missing + " ": Replace(missing, write), full: Replace(full, write),
	} {
		var at *fs.PathError
		if !errors.As(err, &at) || at.Path != strings.TrimSpace(name) || strings.Contains(err.Error(), ".part-") {
			t.Errorf("%s: %v", name, err)
		}
	}
	if entries, _ := os.ReadDir(folder); len(entries) != 1 {
		t.Errorf("%d entries are left", len(entries))
	}
}
