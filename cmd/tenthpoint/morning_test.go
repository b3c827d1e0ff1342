//go:build cgo && linux

package main

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// A morning in a real window: three trucks half done at once and switched by
// their keys, one refused, one on its stored tare; then one ticket void and
// reissued, one corrected by another, and the day sheet printed.
func TestMorningOfThreeTrucks(t *testing.T) {
	d := newDesktop(t, "--who", "Harriet Blume")
	d.fill(40)
	next := d.nextTicket()
	var stored string
	d.onDesk(func(at *scalehouse.Desk) {
		yard, err := office.Yard(context.Background(), at)
		must(t, err)
		for _, l := range yard { // an empty yard, so that the keys are known
			must(t, at.SignIn("Harriet Blume"))
			must(t, scalehouse.Refuse(context.Background(), at, l.ID, "cleared for the test"))
		}
		trucks, err := office.Trucks(context.Background(), at)
		must(t, err)
		for _, truck := range trucks {
			if truck.ID == "23" {
				stored = truck.Tare.String()
			}
		}
	})
	d.open()
	d.press("ctrl+n")
	d.come("123", "corn", "23")
	d.write("52300") // F2
	d.sayWhyTyped()
	d.press("ctrl+n")
	d.come("106", "soybeans", "88")
	d.write("41000") // F3
	d.press("ctrl+n")
	d.come("103", "corn", "89")
	d.write("60000") // F4
	d.press("F2")
	d.write("17.2")
	d.press("F4")
	d.write("24.8")
	d.press("ctrl+r") // musty: turned away
	d.write("musty in the pit sample")
	d.press("Return")
	d.press("F3")
	d.write("12.4", "57")
	d.press("F2", "ctrl+t") // back to the first, which uses its stored tare
	d.press("F12")
	first := d.paper(fmt.Sprintf("ticket-%d.pdf", next))
	d.press("F3")
	d.write("20000")
	d.press("F12")
	second := d.paper(fmt.Sprintf("ticket-%d.pdf", next+1))
	d.voidTicket(next, "torn in the printer")
	d.reissueTicket(next)
	void, again := d.paper(fmt.Sprintf("ticket-%d-reprint-1.pdf", next)), d.paper(fmt.Sprintf("ticket-%d.pdf", next+2))
	d.correctTicket(next+1, "tare misread", "20200")
	third := d.paper(fmt.Sprintf("ticket-%d.pdf", next+3))
	sheet := d.printDay()
	d.quit()
	for _, words := range []string{"52,300 lb", stored, "stored tare", "17.2 %"} {
		if !strings.Contains(first, words) {
			t.Errorf("the first slip does not say %q:\n%s", words, first)
		}
	}
	for _, words := range []string{"41,000 lb", "20,000 lb", "21,000 lb", "12.4 %", "Soybeans"} {
		if !strings.Contains(second, words) {
			t.Errorf("the second slip does not say %q:\n%s", words, second)
		}
	}
	for _, words := range []string{"41,000 lb", "20,200 lb", "20,800 lb", fmt.Sprintf("%d", next+1), "tare misread"} {
		if !strings.Contains(third, words) {
			t.Errorf("the slip of the correction does not say %q:\n%s", words, third)
		}
	}
	for _, words := range []string{"VOID", fmt.Sprintf("REISSUED AS TICKET %d", next+2), fmt.Sprintf("Reissued as: ticket %d", next+2), "torn in the printer"} {
		if !strings.Contains(void, words) {
			t.Errorf("the void slip printed again does not say %q:\n%s", words, void)
		}
	}
	for _, words := range []string{fmt.Sprintf("IN PLACE OF TICKET %d", next), fmt.Sprintf("In place of: ticket %d, void; torn in the printer", next), "52,300 lb", stored, "stored tare", "17.2 %"} {
		if !strings.Contains(again, words) {
			t.Errorf("the slip in its place does not say %q:\n%s", words, again)
		}
	}
	for _, words := range []string{d.numbersToday(next + 3), "torn in the printer", fmt.Sprintf("reissued as %d", next+2), fmt.Sprintf("in place of %d", next), "tare misread", "musty in the pit sample"} {
		if !strings.Contains(sheet, words) {
			t.Errorf("the day sheet does not say %q:\n%s", words, sheet)
		}
	}
	d.onDesk(func(at *scalehouse.Desk) {
		yard, err := office.Yard(context.Background(), at)
		must(t, err)
		if len(yard) != 0 {
			t.Errorf("%d trucks are left on the yard", len(yard))
		}
		sound, err := audit.Verify(context.Background(), at, at.Book(), nil)
		must(t, err)
		if len(sound.Problems) > 0 {
			t.Errorf("the book is not sound: %s", message.Texts(" ", sound.Problems))
		}
		refused := refusedOf(t, at, "103")
		if refused == nil || refused.Ended.Reason != "musty in the pit sample" || refused.Sample.Moisture.Percent.Figure() != "24.8" {
			t.Errorf("the refused load is %+v", refused)
		}
		changedTickets(t, at, next)
	})
}

// refusedOf is the newest load of a grower, if it was turned away.
func refusedOf(t *testing.T, at *scalehouse.Desk, grower string) *load.Load {
	t.Helper()
	for n := 200; n > 0; n-- {
		l, err := office.Load(context.Background(), at, fmt.Sprintf("L%d", n))
		if err == nil && l.Details.Grower.ID == grower {
			if l.Phase != load.TurnedAway {
				return nil
			}
			return l
		}
	}
	return nil
}
