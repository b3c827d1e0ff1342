package sqlite

import (
	"bufio"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"tenthpoint/internal/book"
	"tenthpoint/internal/book/booktest"
	"testing"
	"time"
)

// The test binary, started again with these set, is the other program.
const (
	childTask = "TENTHPOINT_STORE_TEST_TASK"
	childBook = "TENTHPOINT_STORE_TEST_BOOK"
)

func TestMain(m *testing.M) {
	if booktest.WriteUntilKilled(func(path string) (*Book, error) { return Open(path, book.Options{}) }) {
		os.Exit(1)
	}
	tasks := map[string]func(*Book) error{"hold": holdForever, "open": func(*Book) error { return nil }}
	task, ok := tasks[os.Getenv(childTask)]
	if !ok {
		os.Exit(m.Run())
	}
	b, err := Open(os.Getenv(childBook), book.Options{Create: true})
	if err == nil {
		err = task(b)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	b.Close()
}

// holdForever starts a write and does not finish it.
func holdForever(b *Book) error {
	return b.inWrite(ctx, func(tx *Tx) error {
		_, err := tx.Append(draft(0))
		fmt.Println("holding")
		if err == nil {
			time.Sleep(time.Hour)
		}
		return err
	})
}

// startChild starts the other program on the book and returns what it says.
func startChild(t *testing.T, task, path string) (*exec.Cmd, *bufio.Scanner) {
	t.Helper()
	child := exec.Command(os.Args[0])
	child.Env = append(os.Environ(), childTask+"="+task, childBook+"="+path)
	child.Stderr = os.Stderr
	out, err := child.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := child.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		_ = child.Process.Kill()
		_ = child.Wait()
	})
	return child, bufio.NewScanner(out)
}

func TestAnotherProgramsWriteIsWaitedForThenToldOf(t *testing.T) {
	path := filepath.Join(t.TempDir(), "shared.book")
	child, said := startChild(t, "hold", path)
	if !said.Scan() || said.Text() != "holding" {
		t.Fatalf("the other program said %q", said.Text())
	}
	// Opening and reading work during the other's write.
	b, err := Open(path, book.Options{Busy: 50 * time.Millisecond})
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	wantSound(t, b, 0)
	acted := false
	err = b.inWrite(ctx, func(*Tx) error { acted = true; return nil })
	wantError(t, err, "Another program is writing in the book "+path, "within 50ms", "Nothing was entered", book.ErrBusy.Error())
	if acted {
		t.Error("the act was begun")
	}
	// Its end, however sudden, frees the book.
	if err := child.Process.Kill(); err != nil {
		t.Fatal(err)
	}
	_ = child.Wait()
	appendTo(t, b, 1)
	wantSound(t, b, 1)
}

// Two programs that both found the same book at the same moment.
func TestTwoProgramsMayBeginTheSameBook(t *testing.T) {
	path := filepath.Join(t.TempDir(), "begun.book")
	var children []*exec.Cmd
	for range 4 {
		child, _ := startChild(t, "open", path)
		children = append(children, child)
	}
	for _, child := range children {
		if err := child.Wait(); err != nil {
			t.Error(err)
		}
	}
	b, err := Open(path, book.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	appendTo(t, b, 1)
	wantSound(t, b, 1)
}
