package i18n

import (
	"strings"
	"testing"
)

// Texts are found exactly, by their formats, sentence by sentence and part by part; names and what
// people typed stay.
func TestSay(t *testing.T) {
	french := For("fr")
	for english, want := range map[string]string{
		"":                              "",
		"Yard of Quill":                 "Yard of Quill",
		"Corn":                          "Maïs",
		"corn":                          "maïs",
		"Corn, out":                     "Maïs, sorti",
		"Quill, out":                    "Quill, sorti",
		"52,300 lb":                     "52,300 lb",
		"tested by T. Tester":           "analysé par T. Tester",
		"Test weight discount for each": "Escompte, poids spécifique : pour chacune",
		"Ruby corn discount for each":   "Ruby corn discount : pour chacune",
		"Lucinda Vail: Charges":         "Lucinda Vail : Frais",
		"in the ditch, wet":             "in the ditch, wet",
		"MANUAL WT, typed by Hard Corn: beam read, wet":                                                                      "POIDS MANUEL, tapé par Hard Corn : beam read, wet",
		"corn-main-2026: shrink, to, line 39":                                                                                "corn-main-2026: shrink, to, ligne 39",
		"142 to 159, 18 in all: 18 in force, 0 void, 0 corrected; no number is missing":                                      "142 à 159, 18 en tout : 18 en vigueur, 0 annulés, 0 corrigés; aucun numéro ne manque",
		"Meter D1 has no check that counts under calibration A-2025. Meter M1 has no check that counts under calibration B.": "Humidimètre D1 n'a aucune vérification qui compte sous l'étalonnage A-2025. Humidimètre M1 n'a aucune vérification qui compte sous l'étalonnage B.",
	} {
		if got := french.Say(english); got != want {
			t.Errorf("%q is said as\n%q, want\n%q", english, got, want)
		}
	}
}

// English is unchanged, and so is an unknown language.
func TestEnglishSaysWhatIsWritten(t *testing.T) {
	for _, code := range []string{"", "en", "xx"} {
		if got := For(code).Say("Corn, out"); got != "Corn, out" {
			t.Errorf("%q says %q", code, got)
		}
	}
	if !Known("") || !Known("fr") || Known("xx") {
		t.Error("the languages known are not none, en and fr")
	}
}

// What has been said may be said again, as a paper and a screen both may do: it
// stays.
func TestSaidTwiceIsSaidOnce(t *testing.T) {
	french := For("fr")
	for english, text := range Texts("fr") {
		if strings.Contains(text, "%") {
			continue
		}
		if again := french.Say(text); again != text {
			t.Errorf("%q, which says %q, becomes %q", text, english, again)
		}
	}
}
