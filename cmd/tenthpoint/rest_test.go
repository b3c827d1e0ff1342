//go:build cgo && linux

package main

import (
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"
)

// mostAtRest is how much of a core a desk may take that nobody touches, in hundredths.
const mostAtRest = 2

// The desk rests on every screen, also with the caret in a field: where a picture is drawn without a
// graphics card, each frame is paid for by the processor.
func TestTheDeskRests(t *testing.T) {
	d := newDesktop(t, "--who", "Harriet Blume", "--full")
	d.fill(40)
	d.open()
	for _, key := range []string{"ctrl+1", "ctrl+2", "ctrl+3", "ctrl+shift+y"} {
		d.press(key)
		time.Sleep(time.Second)
		if spent := d.spentAtRest(); spent > mostTicks {
			t.Errorf("at rest on %s the desk spent %d hundredths of a second in %s", key, spent, watched)
		}
	}
	d.quit()
}

// watched is how long a screen is watched at rest, mostTicks what it may spend in that time.
const (
	watched   = 4 * time.Second
	mostTicks = mostAtRest * int(watched/time.Second) // in hundredths of a second, as ticks are
)

// spentAtRest is the least that the program spends in a while, of up to three: whatever else the machine
// does can only add to it.
func (d *testDesktop) spentAtRest() int {
	least := math.MaxInt
	for range 3 {
		before := d.ticks()
		time.Sleep(watched)
		least = min(least, d.ticks()-before)
		if least <= mostTicks {
			break
		}
	}
	return least
}

// ticks is the processor time of the program so far, in hundredths of a second.
func (d *testDesktop) ticks() int {
	d.t.Helper()
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", d.program.Process.Pid))
	must(d.t, err)
	_, fields, _ := strings.Cut(string(text), ") ") // after the program's name
	used := strings.Fields(fields)
	const user, system = 11, 12
	a, err := strconv.Atoi(used[user])
	must(d.t, err)
	b, err := strconv.Atoi(used[system])
	must(d.t, err)
	return a + b
}
