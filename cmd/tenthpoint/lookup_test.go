//go:build cgo && linux

package main

import (
	"context"
	"path/filepath"
	"slices"
	"strconv"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// In a real window, by the keyboard alone: a ticket is found by its number,
// printed again and voided, rates are tried, help is read, a grower is added,
// and the book is backed up and checked.
func TestLookingThingsUp(t *testing.T) {
	d := newDesktop(t, "--who", "Harriet Blume")
	d.fill(60)
	var number int64
	d.onDesk(func(at *scalehouse.Desk) {
		page, _, err := office.FindTickets(context.Background(), at, office.Search{Phases: []string{string(load.Ticketed)}, Limit: 1})
		must(t, err)
		number = page[0].Ticket
	})
	d.open()
	d.press("ctrl+f")
	d.xdotool("type", "--delay", "25", "ticket "+strconv.FormatInt(number, 10))
	d.settle()
	d.press("ctrl+p")
	d.paper("ticket-" + strconv.FormatInt(number, 10) + "-reprint-1.pdf")
	d.press("ctrl+w", "F1", "Page_Down", "Escape", "ctrl+shift+v")
	d.xdotool("type", "--delay", "25", "weighed twice")
	d.press("KP_Enter", "Tab", "Return")
	d.press("ctrl+5", "Down", "ctrl+t", "Down", "ctrl+k", "End", "ctrl+6", "ctrl+g")
	d.write("700", "Fern Hollow", "", "", "")
	d.press("ctrl+7", "ctrl+k", "Return", "Return") // the folder that is offered
	d.settle()
	d.press("ctrl+j")
	d.settle()
	d.quit()

	d.onDesk(func(at *scalehouse.Desk) {
		l, err := office.Ticket(context.Background(), at, number)
		must(t, err)
		if l.Phase != load.Void || l.Ended.Reason != "weighed twice" || l.Copies != 2 {
			t.Errorf("ticket %d is %s (%s), printed %d times", number, l.Phase, l.Ended.Reason, l.Copies)
		}
		growers, err := office.Growers(context.Background(), at)
		must(t, err)
		if !slices.ContainsFunc(growers, func(g elevator.Grower) bool { return g.ID == "700" && g.Name == "Fern Hollow" }) {
			t.Errorf("Fern Hollow is not among the growers")
		}
	})
	copies, err := filepath.Glob(filepath.Join(d.folder, "backups", "house-*.book"))
	must(t, err)
	if len(copies) != 1 {
		t.Fatalf("the backups are %q", copies)
	}
	copied, err := sqlite.Open(copies[0], book.Options{ReadOnly: true})
	must(t, err)
	must(t, copied.Close())
}
