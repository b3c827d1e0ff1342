package desktop

import (
	"regexp"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/ui/handbook"
	"tenthpoint/ui/help"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/shell"
	ticketspkg "tenthpoint/ui/tickets"
)

// F1 opens the chapter of the screen in front, and Escape goes back there.
func TestHelpOfEveryScreen(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	book := screenOf[*help.HandbookScreen](s)
	for _, row := range Screens {
		if row.ID == "handbook" {
			continue
		}
		s.Go(row.ID)
		s.press(fyne.KeyF1)
		want := handbook.In(handbook.English).For(row.ID)
		if !s.IsFront(indexOf("handbook")) || book.Chapter != want.ID || book.FocusOrder().Current() != "page" {
			t.Errorf("F1 on %s opens %q on %q, want %q", row.ID, book.Chapter, book.FocusOrder().Current(), want.ID)
		}
		if page := book.Prose.Passages(); len(page) != len(want.Blocks) || page[0].Spans[0].Text != want.Title {
			t.Errorf("F1 on %s shows %d passages", row.ID, len(page))
		}
		s.press(fyne.KeyEscape)
		if !s.IsFront(indexOf(row.ID)) {
			t.Errorf("Escape does not lead back to %s", row.ID)
		}
	}
}

// Help is there before anything has been set up.
func TestHelpInANewBook(t *testing.T) {
	s := newScene(t, shell.Look{}, 0)
	s.press(fyne.KeyF1)
	if book := screenOf[*help.HandbookScreen](s); book.Chapter != "start" {
		t.Errorf("F1 in a new book opens %q", book.Chapter)
	}
	s.press(fyne.KeyEscape)
	if !s.IsFront(indexOf("setup")) {
		t.Error("Escape does not lead back to the set-up")
	}
}

func TestHandbookByKeyboard(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.Go("handbook")
	book := screenOf[*help.HandbookScreen](s)
	s.letters("grate")
	if book.Chapter != "cautions" || book.Table.Chosen() != 0 || !strings.Contains(book.Found.Text(), "grate") {
		t.Errorf("grate opens %q, %q", book.Chapter, book.Found.Text())
	}
	if book.Prose.Offset() == 0 {
		t.Error("the page stands at its top, not at the passage")
	}
	s.press(fyne.KeyReturn)
	if book.FocusOrder().Current() != "page" {
		t.Errorf("Enter leads to %q", book.FocusOrder().Current())
	}
	at := book.Prose.Offset()
	s.press(fyne.KeyHome)
	if at == 0 || book.Prose.Offset() != 0 {
		t.Errorf("Home leads from %v to %v", at, book.Prose.Offset())
	}
	s.press(fyne.KeyEscape)
	if book.Line.Text != "" || book.FocusOrder().Current() != "line" || len(book.Table.Rows()) != len(handbook.In(handbook.English).All()) {
		t.Errorf("Escape leaves %q with %d rows", book.Line.Text, len(book.Table.Rows()))
	}
	s.letters("zebra")
	if len(book.Table.Rows()) != 0 || book.Table.Empty == "" {
		t.Error("zebra is found")
	}
}

// In an elevator that speaks French the handbook is French: its chapters, and what is found in them
// without accents.
func TestHandbookInFrench(t *testing.T) {
	s := inFrench(t, shell.Look{}, 40)
	s.press(fyne.KeyF1)
	book := screenOf[*help.HandbookScreen](s)
	if title := book.Prose.Passages()[0].Spans[0].Text; title != "Un camion, du brut au bon" {
		t.Errorf("F1 on the yard opens %q", title)
	}
	s.press(fyne.KeyEscape)
	s.Go("handbook")
	s.letters("GRILLE")
	if book.Chapter != "cautions" || !strings.Contains(book.Found.Text(), "grille") {
		t.Errorf("GRILLE opens %q, %q", book.Chapter, book.Found.Text())
	}
	s.shoot("french-1280", "handbook-search", shell.Look{})
}

// What the chapter on tickets says can be typed is understood as more than a
// part of a name, in every language.
func TestWordsForTicketsAreUnderstood(t *testing.T) {
	for _, code := range handbook.Languages {
		s := newScene(t, shell.Look{}, 40)
		s.speak(code)
		s.Go("tickets")
		tickets := screenOf[*ticketspkg.Screen](s).Tickets
		asName := strings.SplitN(s.Session.Say("“%s” in a number, name, truck, or grain", "x"), "x", 2)[0]
		chapter, _ := handbook.In(code).ByID("tickets")
		if chapter.Language != code {
			continue // not written yet
		}
		tried := 0
		for _, b := range chapter.Blocks {
			for _, row := range b.Rows[min(1, len(b.Rows)):] {
				for _, line := range strings.Split(row[0], ", ") {
					if line == "1042" || strings.HasPrefix(line, "aske") || line == strings.ToLower(s.Session.Say("Corn")) {
						continue // names, numbers and grains
					}
					tried++
					if tickets.Type(line); strings.HasPrefix(tickets.Reading(), asName) {
						t.Errorf("%s: %q is read as %s", code, line, tickets.Reading())
					}
				}
			}
		}
		if tried < 10 {
			t.Errorf("%s: only %d lines were tried", code, tried)
		}
	}
}

// Every key the handbook names is a key of the desk.
func TestKeysInTheHandbook(t *testing.T) {
	s := newScene(t, shell.Look{}, 0)
	known := map[string]bool{}
	for _, row := range s.Commands.HelpRows() {
		for _, key := range strings.Split(row.Keys, ", ") {
			known[key] = true
		}
	}
	key := regexp.MustCompile(`(?:Ctrl|Alt)\+(?:Shift\+)?(?:[A-Z][a-z]\w+|F?[0-9]+|[A-Z.])|\bF[0-9]+\b`)
	for _, c := range handbook.In(handbook.English).All() {
		for _, named := range key.FindAllString(c.Text, -1) {
			if !known[named] {
				t.Errorf("chapter %s names %s, which does nothing", c.ID, named)
			}
		}
	}
}

// Every form of the handbook has one of package widgets.
func TestPassages(t *testing.T) {
	seen := map[paperview.PassageKind]bool{}
	for _, c := range handbook.In(handbook.English).All() {
		for i, p := range help.Passages(c) {
			seen[p.Kind] = true
			if c.Blocks[i].Kind == handbook.Step && p.Mark == "" {
				t.Errorf("%s: step %d has lost its number", c.ID, i)
			}
		}
	}
	if len(seen) != len(help.PassageKinds)-1 { // steps and bullets are both points
		t.Errorf("the chapters use %d kinds of passage", len(seen))
	}
}
