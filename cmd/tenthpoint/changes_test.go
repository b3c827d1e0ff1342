//go:build cgo && linux

package main

import (
	"context"
	"fmt"
	"testing"

	"tenthpoint/internal/desk"
	"tenthpoint/internal/load"
)

// voidTicket finds a ticket by its number and makes it void.
func (d *desktop) voidTicket(number int64, reason string) {
	d.t.Helper()
	d.findTicket(number)
	d.press("ctrl+shift+v")
	d.write(reason, "") // past the manager, who is at the desk
	d.press("Tab", "Return")
	d.settle()
}

// correctTicket finds a ticket by its number and issues another in its place
// with another tare.
func (d *desktop) correctTicket(number int64, reason, tare string) {
	d.t.Helper()
	d.findTicket(number)
	d.press("ctrl+e")
	d.write(reason, "") // past the manager: the correcting load opens
	d.settle()
	// The load is whole, so the keyboard is on Issue: back over remark, price,
	// terms and pit to the tare.
	d.press("shift+Tab", "shift+Tab", "shift+Tab", "shift+Tab", "shift+Tab")
	d.write(tare)
	d.press("F12")
}

// findTicket brings one ticket into hand on the screen of tickets.
func (d *desktop) findTicket(number int64) {
	d.t.Helper()
	d.press("ctrl+f")
	d.write(fmt.Sprintf("ticket %d", number))
	d.settle()
}

// printDay prints the day sheet of today and gives its words.
func (d *desktop) printDay() string {
	d.t.Helper()
	var day string
	d.onDesk(func(at *desk.Desk) { day = at.Today().String() })
	d.press("ctrl+4")
	d.settle()
	d.press("ctrl+p")
	return d.paper("day-" + day + ".pdf")
}

// changedTickets holds the void ticket and the corrected one against the book.
func changedTickets(t *testing.T, at *desk.Desk, first int64) {
	t.Helper()
	ticket := func(number int64) *load.Load {
		l, err := at.Ticket(context.Background(), number)
		must(t, err)
		return l
	}
	if l := ticket(first); l.Phase != load.Void || l.Ended.Reason != "same truck written twice" || l.Ended.Who != "Harriet Blume" {
		t.Errorf("ticket %d is %s: %+v", first, l.Phase, l.Ended)
	}
	if l := ticket(first + 1); l.Phase != load.Corrected || l.Ended.By != first+2 {
		t.Errorf("ticket %d is %s: %+v", first+1, l.Phase, l.Ended)
	}
	l := ticket(first + 2)
	if tare, ok := l.Weight(load.Tare, ""); l.Phase != load.Ticketed || l.Corrects != first+1 || l.Why != "tare misread" || !ok || tare.Weight.Figure() != "20,200" {
		t.Errorf("ticket %d is %s, corrects %d: %+v", first+2, l.Phase, l.Corrects, l)
	}
}

// numbersToday is how the day sheet says which tickets the day had, counted
// back through the book from the last one.
func (d *desktop) numbersToday(last int64) string {
	d.t.Helper()
	first := last
	d.onDesk(func(at *desk.Desk) {
		for first > 1 {
			l, err := at.Ticket(context.Background(), first-1)
			must(d.t, err)
			if l.IssuedDay != at.Today() {
				return
			}
			first--
		}
	})
	return fmt.Sprintf("%d to %d, %d in all", first, last, last-first+1)
}
