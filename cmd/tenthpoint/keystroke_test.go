//go:build cgo && linux && keys

package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"
	"time"
)

// `go run ./cmd/task keys` measures on a large book and with the limits of the desk; a check is too busy
// for figures worth keeping. Without its flags the limits only find a key that hangs.
var (
	keyBook   = flag.String("key-book", "", "book that keystrokes are measured on; without it a small one is made")
	keyRounds = flag.Int("key-rounds", 4, "how often each key is pressed and taken back")
	keyMedian = flag.Duration("key-median", 500*time.Millisecond, "most that the median may take over an empty entry")
	keyWorst  = flag.Duration("key-p99", 3*time.Second, "most that the slowest hundredth may take over an empty entry")
)

// From a key to the picture that stays, in a real window, over the same key in a box whose entry does
// nothing but show it: a letter that looks for a grower, a figure that settles the load and writes the
// slip beside the form, a letter of a remark, a letter that searches the tickets.
func TestKeysAreDrawnAtOnce(t *testing.T) {
	d := newDesktop(t, "--who", "Harriet Blume")
	d.bookForKeys()
	d.open()
	screen, keys := d.pixels(), d.keyboard()
	timed := func(key string) (took []time.Duration) {
		for range *keyRounds {
			for _, k := range []string{key, "BackSpace"} {
				took = append(took, screen.after(t, func() { keys.press(k) }))
			}
		}
		slices.Sort(took)
		return took
	}

	d.press("ctrl+n", "ctrl+g")
	empty := timed("5")
	d.press("Escape")
	t.Logf("an empty entry: median %s, p99 %s", part(empty, 50), part(empty, 99))

	judge := func(name string, took []time.Duration) {
		median, worst := part(took, 50)-part(empty, 50), part(took, 99)-part(empty, 99)
		t.Logf("%s: median %+.1f ms, p99 %+.1f ms", name, milliseconds(median), milliseconds(worst))
		if median > *keyMedian || worst > *keyWorst {
			t.Errorf("%s is drawn %s (p99 %s) after an empty entry would be", name, median, worst)
		}
	}
	judge("a grower looked up", timed("w"))
	d.come("123", "corn", "77")
	d.write("52300")
	d.sayWhyTyped()
	d.write("17.2", "56", "", "", "", "")
	d.xdotool("type", "--delay", "25", "2412")
	screen.rest()
	unsettled := screen.slip()
	judge("a figure that settles the load", timed("0"))
	if _ = screen.after(t, func() { keys.press("0") }); screen.slip() == unsettled {
		t.Error("the figure that settles the load leaves the slip as it was")
	}
	d.press("ctrl+f")
	judge("a search of tickets", timed("7"))
	d.quit()
}

// bookForKeys is a copy of the book that was named, or a small one.
func (d *testDesktop) bookForKeys() {
	d.t.Helper()
	if *keyBook == "" {
		d.fill(40)
		return
	}
	from, err := os.Open(*keyBook)
	must(d.t, err)
	defer from.Close()
	to, err := os.Create(filepath.Clean(d.book()))
	must(d.t, err)
	_, err = io.Copy(to, from)
	must(d.t, err)
	must(d.t, to.Close())
}

// keyboard presses keys without a program to be started for each, which would take longer than what
// is measured.
type keyboard struct {
	t  *testing.T
	in io.Writer
}

func (d *testDesktop) keyboard() keyboard {
	d.t.Helper()
	types := exec.Command("xdotool", "-")
	types.Env = append(os.Environ(), "DISPLAY="+d.display)
	in, err := types.StdinPipe()
	must(d.t, err)
	must(d.t, types.Start())
	d.t.Cleanup(func() { _ = in.Close(); _ = types.Wait() })
	return keyboard{d.t, in}
}

func (k keyboard) press(key string) {
	k.t.Helper()
	_, err := fmt.Fprintf(k.in, "key --delay 0 %s\n", key)
	must(k.t, err)
}

// part is the duration that so many hundredths of the sorted ones do not exceed.
func part(sorted []time.Duration, hundredths int) time.Duration {
	return sorted[min(len(sorted)-1, len(sorted)*hundredths/100)]
}

func milliseconds(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 }
