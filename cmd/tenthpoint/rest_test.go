//go:build cgo && linux

package main

import (
	"fmt"
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
		const watched = 4 * time.Second
		before := d.ticks()
		time.Sleep(watched)
		const ticksASecond = 100
		if spent := d.ticks() - before; spent*100 > mostAtRest*ticksASecond*int(watched/time.Second) {
			t.Errorf("at rest on %s the desk spent %d hundredths of a second in %s", key, spent, watched)
		}
	}
	d.quit()
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
