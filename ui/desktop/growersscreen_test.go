package desktop

import (
	"strings"
	"tenthpoint/ui/growers"
	"tenthpoint/ui/shell"
	"testing"

	"fyne.io/fyne/v2"
)

// A grower is found, given shares and a truck, by the keyboard alone.
func TestGrowersByKeyboard(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.Go("growers")
	screen := screenOf[*growers.Screen](s)
	s.letters("101")
	if screen.Growers.Chosen() != "101" || !strings.Contains(paperText(screen.Card.View), "Abner Quist") {
		t.Fatalf("current is %q", screen.Growers.Chosen())
	}
	s.Commands.Run("growers.shares")
	s.answer("101", "2/3", "901", "1/3", "", "", "", "")
	if text := paperText(screen.Card.View); !strings.Contains(text, "Estate of R. Pomfret | 1/3") {
		t.Errorf("the card says:\n%s\nthe status line %q", text, s.Status.Text())
	}
	s.Commands.Run("growers.truck")
	s.answer("700", "XMP 700", "", "", "24000", "")
	if text := paperText(screen.Card.View); !strings.Contains(text, "700, XMP 700 | 24,000 lb") {
		t.Errorf("the card says:\n%s\nthe status line %q", text, s.Status.Text())
	}
	s.Commands.Run("growers.tickets")
	if !s.IsFront(indexOf("tickets")) || s.tickets().Line.Text != "grower 101" {
		t.Errorf("the tickets are looked for by %q", s.tickets().Line.Text)
	}
}

func TestGrowersEscape(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.Go("growers")
	s.letters("zebra")
	screen := screenOf[*growers.Screen](s)
	if screen.Card.View.Visible() || len(screen.List.Rows()) != 0 {
		t.Error("nobody fits and a card shows")
	}
	s.press(fyne.KeyEscape)
	if screen.Line.Text != "" || len(screen.List.Rows()) == 0 {
		t.Errorf("Escape leaves %q", screen.Line.Text)
	}
	s.press(fyne.KeyEscape)
	if !s.IsFront(0) {
		t.Error("the second Escape does not leave")
	}
}

// In a book without growers the list says what to do.
func TestGrowersEmpty(t *testing.T) {
	s := newScene(t, shell.Look{}, 0)
	s.Go("growers")
	if screen := screenOf[*growers.Screen](s); !strings.Contains(screen.List.Empty, "Ctrl+G") {
		t.Errorf("the empty list says %q", screen.List.Empty)
	}
}
