package scaleticket

import (
	"reflect"
	"strings"
	"testing"
)

// TestEveryWordHasEnglish: no field of Words is left empty, and none is said
// twice by mistake with another spelling of blanks.
func TestEveryWordHasEnglish(t *testing.T) {
	words := reflect.ValueOf(EnglishWords())
	for i := range words.NumField() {
		if f := words.Field(i); f.Kind() == reflect.String && (f.String() == "" || f.String() != strings.TrimSpace(f.String())) {
			t.Errorf("%s is %q", words.Type().Field(i).Name, f.String())
		}
	}
	if n := len(EnglishWords().List()); n < 100 {
		t.Errorf("only %d words are listed for translators", n)
	}
}

// TestEveryWordIsTranslated: with a translator no English word of the slip is
// left on any ticket. What people typed, names and figures stay as they are.
func TestEveryWordIsTranslated(t *testing.T) {
	for _, c := range ticketTable {
		ticket := c.make(t)
		ticket.Words = EnglishWords().Translated(angleBrackets)
		for _, s := range Compose(ticket).Sections {
			for _, l := range s.Lines {
				for _, word := range EnglishWords().List() {
					if l.Label == word || l.Value == word {
						t.Errorf("%s: %q in %s is not translated", c.name, word, s.ID)
					}
				}
			}
		}
	}
}

// TestRollFits: no line of any ticket is wider than its paper.
func TestRollFits(t *testing.T) {
	for _, c := range ticketTable {
		d := Compose(c.make(t))
		for _, width := range []int{leastColumns, 32, RollColumns, 48, PageColumns, 132} {
			for _, l := range strings.Split(d.Text(width), "\n") {
				if letters(l) > width || strings.ContainsAny(l, "−×÷→…\t") {
					t.Errorf("%s in %d columns: %q", c.name, width, l)
				}
			}
		}
	}
}

// TestSameWordsEverywhere: what stands on the paper stands on the roll and on
// the screen, in one order.
func TestSameWordsEverywhere(t *testing.T) {
	for _, c := range ticketTable {
		d := Compose(c.make(t))
		var screen strings.Builder
		for _, l := range Paper(d) {
			screen.WriteString(l.Left + l.Right + l.Note)
		}
		inOrder(t, c.name+" on the screen", squashed(screen.String()), d, func(text string) string { return text })
		inOrder(t, c.name+" on the roll", squashed(strings.NewReplacer("-----", "").Replace(d.Text(RollColumns))), d, plain)
	}
}

func inOrder(t *testing.T, name, words string, d Document, written func(string) string) {
	t.Helper()
	for _, s := range d.Sections {
		for _, l := range s.Lines {
			for _, text := range append([]string{l.Label, l.Value}, l.Notes...) {
				text = squashed(written(text))
				at := strings.Index(words, text)
				if at < 0 {
					t.Errorf("%s: %q of %s is missing or out of order", name, text, s.ID)
					continue
				}
				words = words[at+len(text):]
			}
		}
	}
}
