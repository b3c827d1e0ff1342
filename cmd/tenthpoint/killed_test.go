//go:build cgo && linux

package main

import (
	"context"
	"fmt"
	"os/exec"
	"strings"
	"testing"
	"time"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// untilTyped waits until the window has taken the keys in: a text that was typed
// is a draft in the book.
func (d *testDesktop) untilTyped(text string) {
	d.t.Helper()
	kept, err := sqlite.Open(d.book(), book.Options{ReadOnly: true})
	must(d.t, err)
	defer func() { must(d.t, kept.Close()) }()
	var typed []book.Draft
	for until := time.Now().Add(patience); time.Now().Before(until); time.Sleep(200 * time.Millisecond) {
		typed, err = kept.Drafts(context.Background())
		must(d.t, err)
		for _, draft := range typed {
			if strings.Contains(draft.Texts, text) {
				return
			}
		}
	}
	d.t.Fatalf("%s was not typed within %s; there is %v", text, patience, typed)
}

// kill ends the program as a power cut or the system would: it is told nothing.
func (d *testDesktop) kill() {
	d.t.Helper()
	must(d.t, d.program.Process.Kill())
	<-d.ended
}

// again starts the program again on the same book.
func (d *testDesktop) again() {
	d.t.Helper()
	before := d.program
	d.program = exec.Command(before.Path, before.Args[1:]...)
	d.program.Env = before.Env
	d.program.Stdout, d.program.Stderr = &d.log, &d.log
	d.open()
}

// The program is killed in the middle of a truck: with a weight on the form that
// cannot be, two tests made at the bench and not written down, and the next
// figure half typed. Started again it has all of it, and the load is finished by
// the keyboard.
func TestKilledInTheMiddleOfATruck(t *testing.T) {
	d := newDesktop(t, "--who", "Harriet Blume")
	d.fill(40)
	next := d.nextTicket()
	d.open()
	d.press("ctrl+n")
	d.come("123", "corn", "77")
	d.xdotool("type", "--delay", "25", "52337") // not a whole number of divisions
	d.untilTyped("52337")
	d.press("ctrl+b")
	d.settle()
	d.write("250", "65", "68", "", "17.2", "17.4") // two tests on the digital meter
	d.xdotool("type", "--delay", "25", "5")        // of its test weight, 56
	d.untilTyped(`"result.test-weight":"5"`)
	d.kill()
	id := killedLoad(t, d)

	d.again()
	d.write("52340") // over the weight that cannot be, which has the focus
	d.sayWhyTyped()
	d.press("ctrl+b")
	d.settle()
	d.write("56")  // over the half typed result, which has the focus
	d.press("F12") // the tests go to the load, and the yard is back
	d.settle()
	d.write("24120")
	d.press("F12")
	slip := d.paper(fmt.Sprintf("ticket-%d.pdf", next))
	d.quit()
	for _, words := range []string{"52,340 lb", "24,120 lb", "17.3 %", "56.0 lb/bu", "Winifred Aske"} {
		if !strings.Contains(slip, words) {
			t.Errorf("the slip does not say %q:\n%s", words, slip)
		}
	}
	d.onDesk(func(at *scalehouse.Desk) {
		l, err := office.Ticket(context.Background(), at, next)
		must(t, err)
		if l.ID != id || l.Phase != load.Ticketed || len(l.Sample.Moisture.Bench.Tests.Readings) != 2 {
			t.Errorf("ticket %d is %s of load %s: %+v", next, l.Phase, l.ID, l.Sample.Moisture)
		}
		if left, lost, err := scalehouse.Drafts(context.Background(), at); err != nil || len(lost) > 0 || hasDraftOf(left, id) {
			t.Errorf("after the ticket there is %v, %q, %v", left, lost, err)
		}
		sound, err := audit.Verify(context.Background(), at, at.Book(), nil)
		must(t, err)
		if len(sound.Problems) > 0 {
			t.Errorf("the book is not sound: %s", message.Texts(" ", sound.Problems))
		}
	})
}

// killedLoad is the load that was on the form when the program was killed: the
// book has neither its weight nor its tests as facts, and both as drafts.
func killedLoad(t *testing.T, d *testDesktop) (id string) {
	t.Helper()
	d.onDesk(func(at *scalehouse.Desk) {
		yard, err := office.Yard(context.Background(), at)
		must(t, err)
		l := yard[len(yard)-1]
		if _, weighed := l.Weight(load.Gross, ""); weighed || l.Details.Truck.ID != "77" || l.Sample.Moisture != nil {
			t.Errorf("the last load on the yard is %+v", l)
		}
		id = l.ID
		drafts, _, err := scalehouse.Drafts(context.Background(), at)
		must(t, err)
		texts := map[string]string{}
		for _, draft := range drafts {
			for name, text := range draft.Texts {
				texts[draft.Place+" "+draft.ID+" "+name] = text
			}
		}
		for name, part := range map[string]string{
			"load " + id + " field.gross": "52337", "bench " + id + " result.test-weight": "5",
			"bench " + id + " test.0001": "17.2 %", "bench " + id + " test.0002": "17.4 %",
		} {
			if !strings.Contains(texts[name], part) {
				t.Errorf("%s is %q; there are %q", name, texts[name], texts)
			}
		}
	})
	return id
}

func hasDraftOf(drafts []scalehouse.Draft, id string) bool {
	for _, d := range drafts {
		if d.ID == id {
			return true
		}
	}
	return false
}
