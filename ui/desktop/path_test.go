package desktop

import (
	"bytes"
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/ui/shell"
)

// One load from an empty form to the printed ticket, by the keyboard alone:
// every field is filled in the order of the focus them.
func TestOneLoadByKeyboard(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.Commands.Run("load.new")
	s.come("123", "corn", "77")
	s.write("52300", "17.2", "56", "", "", "", "", "24120", "P1", "sold", "4.15", "typed by test")
	s.press(fyne.KeyReturn, fyne.KeyReturn)
	if got := yardOf(s.Window).FocusOrder().Current(); got != "remark" || len(s.drawer.papers) > 0 {
		t.Fatalf("Enter after the last field: the keyboard is on %q, %d tickets", got, len(s.drawer.papers))
	}
	s.press(fyne.KeyTab)
	if got := yardOf(s.Window).FocusOrder().Current(); got != "issue" {
		t.Fatalf("Tab after the last field reaches %q, want the ticket", got)
	}
	s.press(fyne.KeyF12)
	if len(s.drawer.papers) != 1 {
		t.Fatalf("printed %d papers, want 1; the status line says %q", len(s.drawer.papers), s.Status.Text())
	}
	for name, pdf := range s.drawer.papers {
		if !bytes.HasPrefix(pdf, []byte("%PDF")) {
			t.Errorf("%s is no PDF", name)
		}
	}
	last, found, err := office.LastLoad(t.Context(), s.desk, "123", "")
	must(t, err)
	if !found || last.Phase != load.Ticketed || last.Details.Remark != "typed by test" || last.Copies != 1 {
		t.Errorf("the book has %+v", last)
	}
	if !yardOf(s.Window).Yard.Form().IsBlank() {
		t.Error("after the ticket the form in hand is not blank")
	}
}

// wholeLoad puts a load on the yard that lacks nothing but its ticket.
func (s *scene) wholeLoad(tare string) {
	s.Commands.Run("load.new")
	s.come("123", "corn", "77")
	s.write("52300", "17.2", "56", "", "", "", "", tare)
}

// unissued fails when the focus is on the button that issues the ticket, or Enter there prints one.
func (s *scene) unissued(how string) {
	s.t.Helper()
	if got := yardOf(s.Window).FocusOrder().Current(); got == "issue" || got == "" {
		s.t.Errorf("%s: the keyboard is on %q", how, got)
	}
	s.press(fyne.KeyReturn)
	if len(s.drawer.papers) > 0 {
		s.t.Fatalf("%s: Enter issued a ticket", how)
	}
}

// A load that lacks nothing is taken up again to change something. The focus goes to the field
// edited last, else to the first, and Enter issues nothing.
func TestTruckTakenUpAgainIsNotIssuedByEnter(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.wholeLoad("24120")
	whole := yardOf(s.Window).Form().ID()
	key := ""
	for _, row := range yardOf(s.Window).Trucks() {
		if row.ID == whole {
			key = row.Key
		}
	}
	if key == "" || !yardOf(s.Window).Form().Now.CanIssue() {
		t.Fatalf("the load is not whole or has no key: %q, %s", key, yardOf(s.Window).Form().Now.WhyNotIssue())
	}
	s.press(fyne.KeyName(key))
	if got := yardOf(s.Window).FocusOrder().Current(); got != "tare" {
		t.Errorf("%s while the truck is in hand: the keyboard is on %q, want the field edited last", key, got)
	}
	s.letters("24140")
	if got := s.entryText("tare"); got != "24140" {
		t.Errorf("what is typed now makes the tare %q, want it in place of the old one", got)
	}
	s.unissued(key + ", the truck in hand")
	s.press(fyne.KeyF2)
	s.press(fyne.KeyName(key))
	s.unissued(key + ", from another truck")
	s.Commands.Run("go.tickets")
	s.Commands.Run("go.yard")
	s.unissued("back on the yard")
	s = s.again()
	s.press(fyne.KeyF2)
	s.press(fyne.KeyName(key))
	s.unissued(key + " after a new start")
}

// After the stored tare the focus is on the next empty field: bin and price are still to come, and
// Enter moves on from there.
func TestStoredTareLeavesTheKeyboardInTheForm(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.wholeLoad("24120")
	s.Commands.Run("load.store")
	s.press(fyne.KeyF12)
	clear(s.drawer.papers)
	s.Commands.Run("load.new")
	s.come("123", "corn", "77")
	s.write("52300", "17.2", "56")
	s.Commands.Run("load.tare")
	if got := yardOf(s.Window).FocusOrder().Current(); got != "bin" {
		t.Errorf("after the stored tare the keyboard is on %q (%s), want the bin", got, s.Status.Text())
	}
	s.unissued("stored tare")
}
