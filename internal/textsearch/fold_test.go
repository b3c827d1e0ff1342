package textsearch

import (
	"testing"

	"pgregory.net/rapid"
)

func TestText(t *testing.T) {
	for text, want := range map[string]string{
		"Réfaction d'eau": "refaction d'eau", "MAÏS": "mais", "œuf": "oeuf", "Œuvre": "oeuvre", "Straße": "strasse",
		"e\u0301te\u0301": "ete", "Ꭰ": "ꭰ", "ꭰ": "ꭰ", "Åse Bjørn": "ase bjorn", "XMP 255": "xmp 255", "": "",
	} {
		if got := Fold(text); got != want {
			t.Errorf("%q is folded to %q, want %q", text, got, want)
		}
	}
	if !Contains("Blé dur ambré", "BLE") || Contains("Blé", "bla") || !Equal("Orge", "ORGE") || Equal("Orge", "Orges") {
		t.Error("folded texts are compared otherwise")
	}
}

// Folding twice changes nothing more, so that either side of a comparison may
// have been folded before.
func TestFoldedStays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.String().Draw(t, "text")
		if once := Fold(text); Fold(once) != once {
			t.Fatalf("%q is folded to %q, and that to %q", text, once, Fold(once))
		}
	})
}
