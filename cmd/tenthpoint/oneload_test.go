//go:build cgo && linux

package main

import (
	"context"
	"strconv"
	"strings"
	"testing"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// One truck from an empty form to the printed ticket in a real window, by the
// keyboard alone: letters, figures, the keypad's own figures and Enter.
func TestOneLoadInARealWindow(t *testing.T) {
	d := newDesktop(t)
	d.fill(40)
	next := d.nextTicket()
	d.open()
	d.write("Owen", "") // who is at the desk: a few letters find the name
	d.press("ctrl+n")
	d.come("123", "corn", "77")
	d.press("KP_5", "KP_2", "KP_3", "KP_0", "KP_0", "KP_Enter")
	d.sayWhyTyped()
	d.press("KP_1", "KP_7", "KP_Decimal", "KP_2", "KP_Enter")
	d.write("56", "", "", "", "", "24120", "P1", "sold", "4.15", "typed in a window")
	d.press("F12")
	slip := d.paper("ticket-" + strconv.FormatInt(next, 10) + ".pdf")
	d.quit()
	for _, words := range []string{"52,300 lb", "24,120 lb", "28,180 lb", "17.2 %", "Winifred Aske", "typed in a window", "MANUAL WT", "Owen Tarrant"} {
		if !strings.Contains(slip, words) {
			t.Errorf("the slip does not say %q:\n%s", words, slip)
		}
	}
	d.onDesk(func(at *scalehouse.Desk) {
		l, err := office.Ticket(context.Background(), at, next)
		must(t, err)
		if l.Phase != load.Ticketed || l.Copies != 1 || l.Weigher != "Owen Tarrant" {
			t.Errorf("the book has ticket %d %s, %d copies, weighed by %s", l.Number, l.Phase, l.Copies, l.Weigher)
		}
		sound, err := audit.Verify(context.Background(), at, at.Book(), nil)
		must(t, err)
		if len(sound.Problems) > 0 {
			t.Errorf("the book is not sound: %s", message.Texts(" ", sound.Problems))
		}
	})
}
