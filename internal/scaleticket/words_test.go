package scaleticket_test

import (
	"reflect"
	"strings"
	"testing"

	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/tickettest"
)

// TestEveryWordHasEnglish: no field of Words is left empty, and none is said
// twice by mistake with another spelling of blanks.
func TestEveryWordHasEnglish(t *testing.T) {
	words := reflect.ValueOf(scaleticket.EnglishWords())
	for i := range words.NumField() {
		if f := words.Field(i); f.Kind() == reflect.String && (f.String() == "" || f.String() != strings.TrimSpace(f.String())) {
			t.Errorf("%s is %q", words.Type().Field(i).Name, f.String())
		}
	}
	if n := len(scaleticket.WordKeys()); n < 100 {
		t.Errorf("only %d words are listed for translators", n)
	}
}

// TestEveryWordIsTranslated: with a translator no English word of the slip is
// left on any ticket. What people typed, names and figures stay as they are.
func TestEveryWordIsTranslated(t *testing.T) {
	for _, c := range tickettest.Table {
		ticket := c.Make(t)
		ticket.Words = scaleticket.EnglishWords().Translated(tickettest.AngleBrackets)
		for _, s := range scaleticket.Compose(ticket).Sections {
			for _, l := range s.Lines {
				for _, word := range scaleticket.WordKeys() {
					if l.Label == word || l.Value == word {
						t.Errorf("%s: %q in %s is not translated", c.Name, word, s.ID)
					}
				}
			}
		}
	}
}
