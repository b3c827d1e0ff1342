//go:build cgo && linux

package main

import (
	"context"
	"fmt"
	"testing"

	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// voidTicket finds a ticket by its number and makes it void.
func (d *testDesktop) voidTicket(number int64, reason string) {
	d.t.Helper()
	d.findTicket(number)
	d.press("ctrl+shift+v")
	d.write(reason, "") // past the manager, who is at the desk
	d.press("Return")
	d.settle()
}

// reissueTicket issues another ticket for the grain of the void ticket, and
// prints the void one again.
func (d *testDesktop) reissueTicket(number int64) {
	d.t.Helper()
	d.press("ctrl+shift+r")
	d.press("KP_Enter", "KP_Enter", "KP_Enter") // the void's own reason, the manager at the desk, the button
	d.settle()
	d.press("F12") // the load on the yard is whole
	d.paper(fmt.Sprintf("ticket-%d.pdf", number+2))
	d.findTicket(number)
	d.press("ctrl+p")
}

// correctTicket finds a ticket by its number and issues another in its place
// with another tare.
func (d *testDesktop) correctTicket(number int64, reason, tare string) {
	d.t.Helper()
	d.findTicket(number)
	d.press("ctrl+e")
	d.write(reason, "", "") // past the manager, and the button: the correcting load opens
	d.settle()
	// The focus is on the first field: back over the slip (with nothing changed there is no issuing),
	// then over remark, price, terms and pit to the tare.
	d.press("shift+Tab", "shift+Tab", "shift+Tab", "shift+Tab", "shift+Tab", "shift+Tab")
	d.write(tare)
	d.press("F12")
}

// findTicket brings one ticket into hand on the screen of tickets.
func (d *testDesktop) findTicket(number int64) {
	d.t.Helper()
	d.press("ctrl+f")
	d.write(fmt.Sprintf("ticket %d", number))
	d.settle()
}

// printDay prints the day sheet of today and gives its words.
func (d *testDesktop) printDay() string {
	d.t.Helper()
	var day string
	d.onDesk(func(at *scalehouse.Desk) { day = at.Today().String() })
	d.press("ctrl+4")
	d.settle()
	d.press("ctrl+p")
	return d.paper("day-" + day + ".pdf")
}

// changedTickets holds the void ticket, the one in its place and the corrected one
// against the book.
func changedTickets(t *testing.T, at *scalehouse.Desk, first int64) {
	t.Helper()
	ticket := func(number int64) *load.Load {
		l, err := office.Ticket(context.Background(), at, number)
		must(t, err)
		return l
	}
	void, again := ticket(first), ticket(first+2)
	if void.Phase != load.Void || void.Ended.Reason != "torn in the printer" || void.Ended.Who != "Harriet Blume" || void.Reissue.By != first+2 || void.Copies != 2 {
		t.Errorf("ticket %d is %s, printed %d times: %+v, %+v", first, void.Phase, void.Copies, void.Ended, void.Reissue)
	}
	if again.Phase != load.Ticketed || again.Reissues != first || again.Why != "torn in the printer" || fmt.Sprint(again.Details.Grower, again.Details.Truck) != fmt.Sprint(void.Details.Grower, void.Details.Truck) {
		t.Errorf("ticket %d is %s, for %d: %+v", first+2, again.Phase, again.Reissues, again)
	}
	for i, w := range again.Weighings {
		if w.Stamp != void.Weighings[i].Stamp || !w.Weight.Equal(void.Weighings[i].Weight) || w.Source != void.Weighings[i].Source {
			t.Errorf("carried is %+v, was %+v", w, void.Weighings[i])
		}
	}
	if l := ticket(first + 1); l.Phase != load.Corrected || l.Ended.By != first+3 {
		t.Errorf("ticket %d is %s: %+v", first+1, l.Phase, l.Ended)
	}
	l := ticket(first + 3)
	if tare, ok := l.Weight(load.Tare, ""); l.Phase != load.Ticketed || l.Corrects != first+1 || l.Why != "tare misread" || !ok || tare.Weight.Figure() != "20,200" {
		t.Errorf("ticket %d is %s, corrects %d: %+v", first+3, l.Phase, l.Corrects, l)
	}
}

// numbersToday returns the day sheet's text for the day's ticket numbers, counted back through the
// book from the last one.
func (d *testDesktop) numbersToday(last int64) string {
	d.t.Helper()
	first := last
	d.onDesk(func(at *scalehouse.Desk) {
		for first > 1 {
			l, err := office.Ticket(context.Background(), at, first-1)
			must(d.t, err)
			if l.IssuedDay != at.Today() {
				return
			}
			first--
		}
	})
	return fmt.Sprintf("%d to %d, %d in all", first, last, last-first+1)
}
