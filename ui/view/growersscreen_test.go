package view

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
)

// A grower is found, given shares and a truck, by the keyboard alone.
func TestGrowersByKeyboard(t *testing.T) {
	s := newScene(t, Look{}, 40)
	s.Go("growers")
	screen := screenOf[*growersScreen](s)
	s.letters("101")
	if screen.growers.Chosen() != "101" || !strings.Contains(paperText(screen.card), "Abner Quist") {
		t.Fatalf("in hand is %q", screen.growers.Chosen())
	}
	s.commands.Run("growers.shares")
	s.write("101", "2/3", "901", "1/3", "", "", "", "")
	if text := paperText(screen.card); !strings.Contains(text, "Estate of R. Pomfret | 1/3") {
		t.Errorf("the card says:\n%s\nthe status line %q", text, s.status.Text())
	}
	s.commands.Run("growers.truck")
	s.write("700", "XMP 700", "", "", "24000", "")
	if text := paperText(screen.card); !strings.Contains(text, "700, XMP 700 | 24,000 lb") {
		t.Errorf("the card says:\n%s\nthe status line %q", text, s.status.Text())
	}
	s.commands.Run("growers.tickets")
	if !s.isFront(indexOf("tickets")) || s.tickets().line.Text != "grower 101" {
		t.Errorf("the tickets are looked for by %q", s.tickets().line.Text)
	}
}

func TestGrowersEscape(t *testing.T) {
	s := newScene(t, Look{}, 40)
	s.Go("growers")
	s.letters("zebra")
	screen := screenOf[*growersScreen](s)
	if screen.card.Visible() || len(screen.table.Rows()) != 0 {
		t.Error("nobody fits and a card shows")
	}
	s.press(fyne.KeyEscape)
	if screen.line.Text != "" || len(screen.table.Rows()) == 0 {
		t.Errorf("Escape leaves %q", screen.line.Text)
	}
	s.press(fyne.KeyEscape)
	if !s.isFront(0) {
		t.Error("the second Escape does not leave")
	}
}

// In a book without growers the list says what to do.
func TestGrowersEmpty(t *testing.T) {
	s := newScene(t, Look{}, 0)
	s.Go("growers")
	if screen := screenOf[*growersScreen](s); !strings.Contains(screen.table.Empty, "Ctrl+G") {
		t.Errorf("the empty list says %q", screen.table.Empty)
	}
}
