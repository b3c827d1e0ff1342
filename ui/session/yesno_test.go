package session

import (
	"testing"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
)

// A desk that asks "o/n" accepts an o, and shows "oui".
func TestYesAndNoInTheLanguageOfTheDesk(t *testing.T) {
	musty := grain.Factor{Name: "Musty odor", YesNo: true}
	read := func(in Language, text string) string {
		a, err := musty.Parse(PlainText(in, musty, text))
		if err != nil {
			return "neither"
		}
		return in.YesOrNo(a.Sign() > 0)
	}
	for text, want := range map[string]string{"y": "yes", "No": "no", " n ": "no", "YES": "yes", "o": "neither", "": "neither"} {
		if got := read(Language{}, text); got != want {
			t.Errorf("%q is %s, want %s", text, got, want)
		}
	}
	french, err := message.ReadCatalog([]byte(`{"language": "fr", "texts": {"yes": "oui", "no": "non"}}`))
	if err != nil {
		t.Fatal(err)
	}
	inFrench := Language{message.NewPrinter(french)}
	for text, want := range map[string]string{"o": "oui", "OUI": "oui", "n": "non", "non": "non", "yes": "oui", "no": "non", "i": "neither"} {
		if got := read(inFrench, text); got != want {
			t.Errorf("in French %q is %s, want %s", text, got, want)
		}
	}
}
