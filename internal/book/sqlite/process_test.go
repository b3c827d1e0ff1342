package sqlite

import (
	"bufio"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"tenthpoint/internal/book"
	"testing"
	"time"
)

// The test binary, started again with these set, is the other program.
const (
	childTask = "TENTHPOINT_STORE_TEST_TASK"
	childBook = "TENTHPOINT_STORE_TEST_BOOK"
)

func TestMain(m *testing.M) {
	tasks := map[string]func(*Book) error{"append": appendForever, "hold": holdForever, "open": func(*Book) error { return nil }}
	task, ok := tasks[os.Getenv(childTask)]
	if !ok {
		os.Exit(m.Run())
	}
	b, err := Open(os.Getenv(childBook), Options{Create: true})
	if err == nil {
		err = task(b)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	b.Close()
}

// appendForever writes load after load and says which one is on the disk. A
// load is three facts, a number and an edition; it is kept whole or not.
func appendForever(b *Book) error {
	last, _, err := b.Head(ctx)
	for i := int(last.Seq); err == nil; i += 3 {
		var number int64
		err = b.inWrite(ctx, func(tx *Tx) error {
			for step := range 3 {
				if _, err := tx.Append(draft(i + step)); err != nil {
					return err
				}
			}
			text := fmt.Sprint("edition ", i)
			if err := tx.KeepEdition("demo", hashOf(text), text); err != nil {
				return err
			}
			number, err = tx.NextNumber("ticket")
			return err
		})
		fmt.Println(number)
	}
	return err
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

// Killed in the middle of writing, again and again, at whatever moment that
// happens to be: what was reported as written is there, and the rest is whole
// loads or nothing.
func TestBookSurvivesBeingKilled(t *testing.T) {
	path := filepath.Join(t.TempDir(), "killed.book")
	for round := range 6 {
		child, said := startChild(t, "append", path)
		var reported int64
		for lines := 0; lines < 5+round*7 && said.Scan(); lines++ {
			if _, err := fmt.Sscan(said.Text(), &reported); err != nil {
				t.Fatal(err)
			}
		}
		if err := child.Process.Kill(); err != nil {
			t.Fatal(err)
		}
		for said.Scan() { // what it said between our last look and the kill
			if strings.TrimSpace(said.Text()) != "" {
				_, _ = fmt.Sscan(said.Text(), &reported)
			}
		}
		_ = child.Wait()
		wantWholeLoads(t, path, reported)
	}
}

func wantWholeLoads(t *testing.T, path string, reported int64) {
	t.Helper()
	b, err := Open(path, Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	problems, err := b.Verify(ctx)
	if err != nil || len(problems) > 0 {
		t.Fatalf("after the kill: %q, %v", problems, err)
	}
	var facts, editions, tickets int64
	err = b.read.QueryRow(`SELECT (SELECT count(*) FROM facts), (SELECT count(*) FROM editions),
		(SELECT last FROM series WHERE name = 'ticket')`).Scan(&facts, &editions, &tickets)
	if err != nil {
		t.Fatal(err)
	}
	if reported == 0 || tickets < reported || tickets > reported+1 || facts != 3*tickets || editions != tickets {
		t.Errorf("reported %d loads, found %d facts, %d editions, %d numbers", reported, facts, editions, tickets)
	}
}

func TestAnotherProgramsWriteIsWaitedForThenToldOf(t *testing.T) {
	path := filepath.Join(t.TempDir(), "shared.book")
	child, said := startChild(t, "hold", path)
	if !said.Scan() || said.Text() != "holding" {
		t.Fatalf("the other program said %q", said.Text())
	}
	// Opening and reading work during the other's write.
	b, err := Open(path, Options{Busy: 50 * time.Millisecond})
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
	b, err := Open(path, Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	appendTo(t, b, 1)
	wantSound(t, b, 1)
}
