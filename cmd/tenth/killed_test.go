package main

import (
	"compress/gzip"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

var (
	kills    = flag.Int("kills", 2, "how often each command is killed")
	killSeed = flag.Uint64("kill-seed", 14, "the moments of the kills are drawn from")
)

// folder is a place with a book, and the program to work on it.
type folder struct {
	t     *testing.T
	place string
}

func (h folder) path(name string) string { return filepath.Join(h.place, name) }

// command is the program, started by a line that is typed in the folder.
func (h folder) command(args ...string) *exec.Cmd {
	c := exec.Command("tenth", args...)
	c.Dir = h.place
	c.Env = append(os.Environ(), nowVariable+"=2026-10-05 13:00", "TZ=UTC", "XDG_CONFIG_HOME="+h.path("data"), "HOME="+h.path("home"),
		"TENTHPOINT_BOOK="+h.path("house.book"))
	return c
}

// run lets the program end, and returns what it said.
func (h folder) run(args ...string) (string, error) {
	out, err := h.command(args...).CombinedOutput()
	return string(out), err
}

func (h folder) must(args ...string) string {
	h.t.Helper()
	out, err := h.run(args...)
	if err != nil {
		h.t.Fatalf("tenth %q: %v\n%s", args, err, out)
	}
	return out
}

// killed starts the program, kills it when some of the time has passed that it takes, and says
// whether it had ended by itself.
func (h folder) killed(after time.Duration, args ...string) (ended bool) {
	h.t.Helper()
	c := h.command(args...)
	if err := c.Start(); err != nil {
		h.t.Fatal(err)
	}
	time.Sleep(after)
	_ = c.Process.Kill() // it may have ended
	return c.Wait() == nil
}

const manager = "Mae Orton"

// newHouse sets an elevator up with its own rates.
func newHouse(t *testing.T) folder {
	h := folder{t, t.TempDir()}
	rates, err := os.ReadFile(filepath.Join(scripts, "house-corn.toml"))
	if err == nil {
		err = os.Mkdir(h.path("schedules"), 0o755)
	}
	if err == nil {
		err = os.WriteFile(h.path("schedules/house-corn.toml"), rates, 0o644)
	}
	if err != nil {
		t.Fatal(err)
	}
	h.must("setup", "--business", "Our Elevator", "--street", "1 Siding Road", "--town", "Nowhere", "--phone", "555-0100",
		"--scale", "1=20lb,120000lb", "--grain", "corn=house", "--who", manager)
	h.must("grower", "add", "103", "Cobb Hollow Farm", "--who", manager)
	return h
}

// pastList is a list of past loads.
func (h folder) pastList(name string, rows int) string {
	var text strings.Builder
	text.WriteString("day,commodity,grower,truck,gross,tare,moisture\n")
	for i := range rows {
		fmt.Fprintf(&text, "2026-09-%02d,corn,103,7,%d,24300,1%d.4\n", 1+i%28, 50000+20*i, i%9)
	}
	if err := os.WriteFile(h.path(name), []byte(text.String()), 0o644); err != nil {
		h.t.Fatal(err)
	}
	return name
}

// moments are drawn times from the start of a program to a little after it would have ended.
func moments(usual time.Duration) func(yield func(time.Duration) bool) {
	draw := rand.New(rand.NewPCG(*killSeed, 3))
	return func(yield func(time.Duration) bool) {
		for range *kills {
			if !yield(time.Duration(draw.Int64N(int64(usual) * 11 / 10))) {
				return
			}
		}
	}
}

func timed(f func()) time.Duration {
	start := time.Now()
	f()
	return time.Since(start)
}

// A list of past loads that was being taken over is in the book whole or not at all, and can be
// taken over then.
func TestAKilledImportIsAllOrNothing(t *testing.T) {
	const rows = 120
	h := newHouse(t)
	usual := timed(func() { h.must("import", "loads", h.pastList("first.csv", rows), "--who", manager) })
	taken := 1
	for after := range moments(usual) {
		list := h.pastList("next.csv", rows+taken)
		h.killed(after, "import", "loads", list, "--who", manager)
		h.must("verify")
		again, err := h.run("import", "loads", list, "--who", manager)
		if whole := strings.Contains(again, "has been taken over before"); err != nil && !whole {
			t.Errorf("killed after %s, and again: %v\n%s", after, err, again)
		}
		taken++
		h.must("verify")
		if is, want := h.tickets(), ticketsOf(rows, taken); is != want {
			t.Errorf("killed after %s: %d tickets of %d lists, want %d", after, is, taken, want)
		}
	}
}

// tickets is how many a check of the book counts.
func (h folder) tickets() int {
	h.t.Helper()
	var counted struct {
		Tickets int `json:"tickets,string"`
	}
	if err := json.Unmarshal([]byte(h.must("verify", "--json")), &counted); err != nil {
		h.t.Fatal(err)
	}
	return counted.Tickets
}

// ticketsOf is how many come of so many lists, each a row longer than the one before.
func ticketsOf(rows, lists int) (all int) {
	for i := range lists {
		all += rows + i
	}
	return all
}

// What stands under the name of a backup is whole, and a backup that was killed can be made again.
func TestAKilledBackupLeavesNothingUnderItsName(t *testing.T) {
	h := newHouse(t)
	h.must("import", "loads", h.pastList("loads.csv", 300), "--who", manager)
	usual := timed(func() { h.must("backup", "first.book") })
	n := 0
	for after := range moments(usual) {
		n++
		copied := fmt.Sprintf("copy-%d.book", n)
		h.killed(after, "backup", copied)
		if _, err := os.Stat(h.path(copied)); err != nil {
			h.must("backup", copied)
		}
		h.must("verify", "--book", h.path(copied))
		h.must("verify", "--against", copied)
	}
}

// A book that was being brought up to date goes on from there, and the copy of before is whole.
func TestAKilledMigrationGoesOn(t *testing.T) {
	for _, step := range []string{"step4", "season"} {
		h := folder{t, t.TempDir()}
		whole := unpacked(t, step)
		fresh := func() {
			old, err := filepath.Glob(h.path("house.book*"))
			for _, name := range old {
				err = os.Remove(name)
			}
			if err == nil {
				err = os.WriteFile(h.path("house.book"), whole, 0o600)
			}
			if err != nil {
				t.Fatal(err)
			}
		}
		// Entering a truck is what brings a book up to date.
		bringUp := []string{"truck", "add", "99", "--plate", "NEW 1"}
		fresh()
		usual := timed(func() { h.must(bringUp...) })
		for after := range moments(usual) {
			fresh()
			h.killed(after, bringUp...)
			h.must(bringUp...)
			h.must("verify")
			before, err := filepath.Glob(h.path("house.book.before-????"))
			if err != nil || len(before) == 0 {
				t.Fatalf("%s, killed after %s: no copy of before: %v", step, after, err)
			}
			for _, copied := range before {
				h.must("verify", "--book", copied)
			}
		}
	}
}

func unpacked(t *testing.T, name string) []byte {
	packed, err := os.Open(filepath.Join(oldBooks, name+".book.gz"))
	if err != nil {
		t.Fatal(err)
	}
	defer packed.Close()
	text, err := gzip.NewReader(packed)
	if err != nil {
		t.Fatal(err)
	}
	whole, err := io.ReadAll(text)
	if err != nil {
		t.Fatal(err)
	}
	return whole
}
