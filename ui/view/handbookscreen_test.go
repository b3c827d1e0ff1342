package view

import (
	"regexp"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/ui/handbook"
	"tenthpoint/ui/kit"
	"tenthpoint/ui/present"
)

// F1 opens the chapter of the screen in front, and Escape goes back there.
func TestHelpOfEveryScreen(t *testing.T) {
	s := newScene(t, Look{}, 40)
	book := screenOf[*handbookScreen](s)
	for _, row := range screens {
		if row.id == "handbook" {
			continue
		}
		s.Go(row.id)
		s.press(fyne.KeyF1)
		want := handbook.In(Language()).For(row.id)
		if !s.isFront(indexOf("handbook")) || book.chapter != want.ID || book.ring.Current() != "page" {
			t.Errorf("F1 on %s opens %q on %q, want %q", row.id, book.chapter, book.ring.Current(), want.ID)
		}
		if page := book.prose.Passages(); len(page) != len(want.Blocks) || page[0].Spans[0].Text != want.Title {
			t.Errorf("F1 on %s shows %d passages", row.id, len(page))
		}
		s.press(fyne.KeyEscape)
		if !s.isFront(indexOf(row.id)) {
			t.Errorf("Escape does not lead back to %s", row.id)
		}
	}
}

// Help is there before anything has been set up.
func TestHelpInANewBook(t *testing.T) {
	s := newScene(t, Look{}, 0)
	s.press(fyne.KeyF1)
	if book := screenOf[*handbookScreen](s); book.chapter != "start" {
		t.Errorf("F1 in a new book opens %q", book.chapter)
	}
	s.press(fyne.KeyEscape)
	if !s.isFront(indexOf("setup")) {
		t.Error("Escape does not lead back to the set-up")
	}
}

func TestHandbookByKeyboard(t *testing.T) {
	s := newScene(t, Look{}, 40)
	s.Go("handbook")
	book := screenOf[*handbookScreen](s)
	s.letters("grate")
	if book.chapter != "cautions" || book.table.Chosen() != 0 || !strings.Contains(book.found.Text(), "grate") {
		t.Errorf("grate opens %q, %q", book.chapter, book.found.Text())
	}
	if book.prose.Offset() == 0 {
		t.Error("the page stands at its top, not at the passage")
	}
	s.press(fyne.KeyReturn)
	if book.ring.Current() != "page" {
		t.Errorf("Enter leads to %q", book.ring.Current())
	}
	at := book.prose.Offset()
	s.press(fyne.KeyHome)
	if at == 0 || book.prose.Offset() != 0 {
		t.Errorf("Home leads from %v to %v", at, book.prose.Offset())
	}
	s.press(fyne.KeyEscape)
	if book.line.Text != "" || book.ring.Current() != "line" || len(book.table.Rows()) != len(handbook.In(Language()).All()) {
		t.Errorf("Escape leaves %q with %d rows", book.line.Text, len(book.table.Rows()))
	}
	s.letters("zebra")
	if len(book.table.Rows()) != 0 || book.table.Empty == "" {
		t.Error("zebra is found")
	}
}

// In a house that speaks French the handbook is French: its chapters, and what
// is found in them without accents.
func TestHandbookInFrench(t *testing.T) {
	speak(t, "fr")
	s := newScene(t, Look{}, 40)
	s.press(fyne.KeyF1)
	book := screenOf[*handbookScreen](s)
	if title := book.prose.Passages()[0].Spans[0].Text; title != "Un camion, du brut au bon" {
		t.Errorf("F1 on the yard opens %q", title)
	}
	s.press(fyne.KeyEscape)
	s.Go("handbook")
	s.letters("GRILLE")
	if book.chapter != "cautions" || !strings.Contains(book.found.Text(), "grille") {
		t.Errorf("GRILLE opens %q, %q", book.chapter, book.found.Text())
	}
	s.shoot("french-1280", "handbook-search", Look{})
}

// What the chapter on tickets says can be typed is understood as more than a
// part of a name, in every language.
func TestWordsForTicketsAreUnderstood(t *testing.T) {
	for _, code := range handbook.Languages {
		speak(t, code)
		s := newScene(t, Look{}, 40)
		s.Go("tickets")
		tickets := screenOf[*ticketsScreen](s).tickets
		asName := strings.SplitN(present.Say("“%s” in a number, name, truck, or grain", "x"), "x", 2)[0]
		chapter, _ := handbook.In(Language()).ByID("tickets")
		tried := 0
		for _, b := range chapter.Blocks {
			for _, row := range b.Rows[min(1, len(b.Rows)):] {
				for _, line := range strings.Split(row[0], ", ") {
					if line == "1042" || strings.HasPrefix(line, "aske") || line == strings.ToLower(present.Say("Corn")) {
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
	s := newScene(t, Look{}, 0)
	known := map[string]bool{}
	for _, row := range s.commands.HelpRows() {
		for _, key := range strings.Split(row.Keys, ", ") {
			known[key] = true
		}
	}
	key := regexp.MustCompile(`(?:Ctrl|Alt)\+(?:Shift\+)?(?:[A-Z][a-z]\w+|F?[0-9]+|[A-Z.])|\bF[0-9]+\b`)
	for _, c := range handbook.In(Language()).All() {
		for _, named := range key.FindAllString(c.Text, -1) {
			if !known[named] {
				t.Errorf("chapter %s names %s, which does nothing", c.ID, named)
			}
		}
	}
}

// Every form of the handbook has one of the kit.
func TestPassages(t *testing.T) {
	seen := map[kit.PassageKind]bool{}
	for _, c := range handbook.In(Language()).All() {
		for i, p := range passages(c) {
			seen[p.Kind] = true
			if c.Blocks[i].Kind == handbook.Step && p.Mark == "" {
				t.Errorf("%s: step %d has lost its number", c.ID, i)
			}
		}
	}
	if len(seen) != len(passageKinds)-1 { // steps and bullets are both points
		t.Errorf("the chapters use %d kinds of passage", len(seen))
	}
}
