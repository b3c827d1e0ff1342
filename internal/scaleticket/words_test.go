package scaleticket_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/i18n"
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
		ticket.Words = scaleticket.WordsOf(tickettest.AngleBrackets())
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

// Every language has every word of the slip.
func TestEveryLanguageHasTheWordsOfTheSlip(t *testing.T) {
	for _, code := range i18n.Codes()[1:] {
		catalog, _ := i18n.Catalog(code)
		for _, word := range scaleticket.WordKeys() {
			if !catalog.Has(word) {
				t.Errorf("%s has no %q", code, word)
			}
		}
	}
}

// Three elevators print the same ticket, each in its language and with its signs.
func TestOneTicketInThreeLanguages(t *testing.T) {
	for code, want := range map[string][]string{
		"":   {"Gross", "52,300 lb", "18.4 %"},
		"fr": {"Brut", "52\u202f300\u00a0lb", "18,4\u00a0%"},
		"es": {"Bruto", "52,300 lb", "18.4 %"},
	} {
		ticket := tickettest.Table[0].Make(t)
		ticket.House.Language = code
		var all []string
		for _, s := range scaleticket.Compose(ticket).Sections {
			for _, l := range s.Lines {
				all = append(all, l.Label, l.Value)
			}
		}
		for _, text := range want {
			if !slices.Contains(all, text) {
				t.Errorf("%q: %q is not on the slip: %q", code, text, all)
			}
		}
	}
}
