//go:build cgo && linux

package main

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/demo"
	"tenthpoint/internal/keyfile"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/schedules"
)

// testDesktop is a real window on a display of its own, with a keyboard that only
// this test types on.
type testDesktop struct {
	t       *testing.T
	folder  string
	display string
	program *exec.Cmd
	ended   chan error
	log     bytes.Buffer
}

// patience is the timeout of anything on the display.
const patience = 60 * time.Second

// needs are the programs a display, a keyboard and the words of a paper take.
func needs(t *testing.T, programs ...string) {
	t.Helper()
	for _, name := range programs {
		if _, err := exec.LookPath(name); err != nil {
			t.Skipf("%s is not here; `go run ./cmd/task check` installs it where it may", name)
		}
	}
}

var linked struct {
	sync.Once
	folder string
	err    error
	said   []byte
}

// programOnce links the program for all tests and gives its path.
func programOnce(t *testing.T) string {
	t.Helper()
	linked.Do(func() {
		if linked.folder, linked.err = os.MkdirTemp("", "tenthpoint-test-"); linked.err == nil {
			linked.said, linked.err = exec.Command("go", "build", "-o", linked.folder, ".").CombinedOutput()
		}
	})
	if linked.err != nil {
		t.Fatalf("building the program: %v\n%s", linked.err, linked.said)
	}
	return filepath.Join(linked.folder, "tenthpoint")
}

func TestMain(m *testing.M) {
	keys, err := os.MkdirTemp("", "tenthpoint-key")
	if err != nil {
		panic(err)
	}
	os.Setenv(keyfile.Variable, filepath.Join(keys, "computer.key"))
	status := m.Run()
	_ = os.RemoveAll(keys)
	if linked.folder != "" {
		_ = os.RemoveAll(linked.folder)
	}
	os.Exit(status)
}

// newDesktop fills a book with the invented elevator and opens it in a window.
func newDesktop(t *testing.T, args ...string) *testDesktop {
	t.Helper()
	needs(t, "Xvfb", "xdotool", "pdftotext")
	d := &testDesktop{t: t, folder: t.TempDir()}
	t.Parallel() // most of the time of such a test is spent waiting for its window
	d.startDisplay()
	d.program = exec.Command(programOnce(t), args...)
	d.program.Env = append(os.Environ(), "DISPLAY="+d.display, "LANG=en_US.UTF-8",
		"XDG_CONFIG_HOME="+d.folder, "XDG_CACHE_HOME="+d.folder, "TENTHPOINT_BOOK="+d.book())
	d.program.Stdout, d.program.Stderr = &d.log, &d.log
	return d
}

func (d *testDesktop) book() string { return filepath.Join(d.folder, "house.book") }

// displayWide and displayHigh are the size of a display, in points.
const displayWide, displayHigh = 1280, 760

// startDisplay starts a display that only exists in memory and waits for it.
func (d *testDesktop) startDisplay() {
	d.t.Helper()
	server := exec.Command("Xvfb", "-displayfd", "1", "-screen", "0", fmt.Sprintf("%dx%dx24", displayWide, displayHigh), "-nolisten", "tcp", "-fbdir", d.folder)
	out, err := server.StdoutPipe()
	must(d.t, err)
	must(d.t, server.Start())
	d.t.Cleanup(func() { _ = server.Process.Kill(); _ = server.Wait() })
	number, err := bufio.NewReader(out).ReadString('\n')
	must(d.t, err)
	d.display = ":" + strings.TrimSpace(number)
}

// fill makes the book of the invented elevator.
func (d *testDesktop) fill(loads int) {
	d.t.Helper()
	d.inBook(func(book *sqlite.Book) {
		editions, err := schedules.Editions()
		must(d.t, err)
		must(d.t, demo.Fill(context.Background(), book, demo.Options{Loads: loads, Seed: 7, Now: time.Now(), Place: time.Local, Rates: editions}, nil))
	})
}

func (d *testDesktop) inBook(do func(*sqlite.Book)) {
	d.t.Helper()
	book, err := sqlite.Open(d.book(), book.Options{Create: true})
	must(d.t, err)
	do(book)
	must(d.t, book.Close())
}

// onDesk looks into the book through a desk.
func (d *testDesktop) onDesk(do func(*scalehouse.Desk)) {
	d.t.Helper()
	d.inBook(func(book *sqlite.Book) {
		editions, err := schedules.Editions()
		must(d.t, err)
		at, err := scalehouse.Open(context.Background(), book, scalehouse.Options{Name: "test", Rates: editions})
		must(d.t, err)
		do(at)
	})
}

// nextTicket is the number that the next ticket will have.
func (d *testDesktop) nextTicket() (number int64) {
	d.t.Helper()
	d.onDesk(func(at *scalehouse.Desk) {
		last, _, err := office.LastTicket(context.Background(), at)
		must(d.t, err)
		number = last + 1
	})
	return number
}

// settle gives the scale time to come to rest and the desk time to write it
// down; keys pressed meanwhile would be meant for what comes after.
func (d *testDesktop) settle() { time.Sleep(4 * time.Second) }

// open starts the program, waits for its window and gives it the keyboard.
func (d *testDesktop) open() {
	d.t.Helper()
	must(d.t, d.program.Start())
	d.ended = make(chan error, 1)
	go func() { d.ended <- d.program.Wait() }()
	d.t.Cleanup(func() { _ = d.program.Process.Kill() })
	for until := time.Now().Add(patience); d.tool("search", "--onlyvisible", "--name", "^Tenthpoint") != nil; time.Sleep(200 * time.Millisecond) {
		select {
		case err := <-d.ended:
			d.t.Fatalf("the program ended with %v before its window opened: %s", err, d.log.String())
		default:
		}
		if time.Now().After(until) {
			d.t.Fatalf("no window opened within %s; the program said: %s", patience, d.log.String())
		}
	}
	d.xdotool("search", "--onlyvisible", "--name", "^Tenthpoint", "windowfocus", "--sync")
	time.Sleep(time.Second) // the first picture; there is no event to wait for
}

// xdotool works keyboard and window of the display.
func (d *testDesktop) xdotool(args ...string) {
	d.t.Helper()
	if err := d.tool(args...); err != nil {
		d.t.Fatalf("xdotool %q: %v\nthe program said: %s", args, err, d.log.String())
	}
}

// tool runs xdotool on the display.
func (d *testDesktop) tool(args ...string) error {
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	cmd := exec.CommandContext(ctx, "xdotool", args...)
	cmd.Env = append(os.Environ(), "DISPLAY="+d.display)
	if out, err := cmd.CombinedOutput(); err != nil {
		return fmt.Errorf("%w: %s", err, out)
	}
	return nil
}

// write types each text and the keypad's Enter after it.
func (d *testDesktop) write(texts ...string) {
	d.t.Helper()
	for _, text := range texts {
		if text != "" {
			d.xdotool("type", "--delay", "25", text)
		}
		d.press("KP_Enter")
	}
}

// come types grower, grain and truck of a load, each left by Tab: Enter goes past what the form has
// filled in.
func (d *testDesktop) come(grower, grain, truck string) {
	d.t.Helper()
	for _, text := range []string{grower, grain, truck} {
		d.xdotool("type", "--delay", "25", text)
		d.press("Tab")
	}
}

// sayWhyTyped answers with the first reason of the elevator why weights are typed, which is asked
// with the first typed weight of a day.
func (d *testDesktop) sayWhyTyped() {
	d.t.Helper()
	time.Sleep(time.Second)
	d.press("KP_Enter", "KP_Enter")
	time.Sleep(time.Second)
}

// press sends keys by their names.
func (d *testDesktop) press(keys ...string) {
	d.t.Helper()
	d.xdotool(append([]string{"key", "--delay", "40"}, keys...)...)
}

// quit closes the window by its key and waits for the program to end.
func (d *testDesktop) quit() {
	d.t.Helper()
	d.press("ctrl+q")
	select {
	case err := <-d.ended:
		if err != nil {
			d.t.Fatalf("the program ended with %v: %s", err, d.log.String())
		}
	case <-time.After(patience):
		d.t.Fatalf("the program did not end: %s", d.log.String())
	}
	if strings.Contains(d.log.String(), "Error in Fyne call thread") {
		d.t.Errorf("a widget was touched from outside the window's own goroutine:\n%s", d.log.String())
	}
}

// paper waits for a printed paper and gives its words.
func (d *testDesktop) paper(name string) string {
	d.t.Helper()
	path := filepath.Join(d.folder, "papers", name)
	until := time.Now().Add(patience)
	for {
		if _, err := os.Stat(path); err == nil {
			break
		}
		if time.Now().After(until) {
			d.t.Fatalf("%s was not printed within %s; the program said: %s", name, patience, d.log.String())
		}
		time.Sleep(100 * time.Millisecond)
	}
	out, err := exec.Command("pdftotext", "-layout", path, "-").Output()
	must(d.t, err)
	return string(out)
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}
