package desktop

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/i18n"
	"tenthpoint/ui/handbook"
)

// Two stars in a chapter are kept for texts of the screen and for keys: nothing else is marked so.
// So everything the chapters name can be looked up among the texts of the desk.
var starred = regexp.MustCompile(`\*\*([^*]+)\*\*`)

// starredIn returns the words in stars of every section of a chapter, so that a translation may
// order them within a section as its grammar asks.
func starredIn(c handbook.Chapter) [][]string {
	var out [][]string
	for _, section := range regexp.MustCompile(`(?m)^#+ `).Split(c.Text, -1) {
		var words []string
		for _, m := range starred.FindAllStringSubmatch(section, -1) {
			words = append(words, strings.Join(strings.Fields(m[1]), " "))
		}
		out = append(out, words)
	}
	return out
}

// plainKey is a part of a key that every keyboard calls the same.
var plainKey = regexp.MustCompile(`^([A-Z0-9.]|F[0-9]+)$`)

// shown returns the text of a word in stars on the screens of a language; false for one that is on
// none.
func shown(word string, texts map[string]string) (string, bool) {
	if text, ok := texts[word]; ok {
		return text, true
	}
	if text, ok := texts[strings.ToUpper(word[:1])+word[1:]]; ok { // typed in small letters
		return strings.ToLower(text), true
	}
	parts := strings.Split(word, "+")
	for i, part := range parts {
		if plainKey.MatchString(part) {
			continue
		}
		text, ok := texts[part]
		if !ok {
			return "", false
		}
		parts[i] = text
	}
	return strings.Join(parts, "+"), true
}

// wrongWords tells which words in stars of a translated chapter are not what
// the screen shows for those of the chapter.
func wrongWords(first, other handbook.Chapter, texts map[string]string) []string {
	var out []string
	theirs := starredIn(other)
	for i, words := range starredIn(first) {
		var want []string
		for _, w := range words {
			text, ok := shown(w, texts)
			if !ok {
				out = append(out, fmt.Sprintf("%q stands on no screen and is no key", w))
				continue
			}
			want = append(want, text)
		}
		if i >= len(theirs) {
			return append(out, "a section is missing")
		}
		slices.Sort(want)
		slices.Sort(theirs[i])
		if !slices.Equal(want, theirs[i]) {
			out = append(out, fmt.Sprintf("section %d names\n%q, the screen shows\n%q", i, theirs[i], want))
		}
	}
	return out
}

// Every screen, button, field, answer and key a chapter names is called there
// as on the screen, in every language.
func TestHandbookNamesWhatTheScreenShows(t *testing.T) {
	english := handbook.In(handbook.English).All()
	for _, code := range handbook.Languages {
		texts := i18n.Texts(code)
		for key, text := range texts { // a chapter writes what the screen shows
			if english, of := strings.CutPrefix(key, "screen|"); of {
				texts[english] = strings.TrimPrefix(text, "screen|")
			}
		}
		for i, c := range handbook.In(code).All() {
			if c.Language != code {
				continue // not written yet
			}
			for _, wrong := range wrongWords(english[i], c, texts) {
				t.Errorf("%s/%s: %s", code, c.ID, wrong)
			}
		}
	}
}

// The lines of the worked sums are called as the steps of a ticket are.
func TestHandbookNamesTheStepsOfATicket(t *testing.T) {
	texts := i18n.Texts("fr")
	first, _ := handbook.In(handbook.English).ByID("shrink")
	other, _ := handbook.In("fr").ByID("shrink")
	named := 0
	for i, b := range first.Blocks {
		for n, line := range b.Lines {
			name, _, _ := strings.Cut(line, "  ")
			text, known := texts[name]
			if got, _, _ := strings.Cut(other.Blocks[i].Lines[n], "  "); known && got != text {
				t.Errorf("%q is called %q, on the ticket %q", name, got, text)
			}
			if known {
				named++
			}
		}
	}
	if named < 10 {
		t.Errorf("only %d lines have the name of a step", named)
	}
}

// The comparison finds a label that the screen does not have, one that is
// translated otherwise, and one left out.
func TestWrongWordsAreFound(t *testing.T) {
	texts := map[string]string{"Yard": "Cour", "Esc": "Échap", "Ctrl": "Ctrl", "Shift": "Maj"}
	first := handbook.Chapter{Text: "# A\n**Yard** and **Esc**\n## B\n**Ctrl+Shift+W**, **F2**"}
	for text, finds := range map[string]bool{
		"# A\n**Échap** puis **Cour**\n## B\n**Ctrl+Maj+W**, **F2**":     false,
		"# A\n**Échap** puis **Chantier**\n## B\n**Ctrl+Maj+W**, **F2**": true,
		"# A\n**Échap** puis cour\n## B\n**Ctrl+Maj+W**, **F2**":         true,
		"# A\n**Échap** puis **Cour**\n## B\n**Ctrl+Shift+W**, **F2**":   true,
		"# A\n**Échap** puis **Cour**":                                   true,
	} {
		if found := wrongWords(first, handbook.Chapter{Text: text}, texts); (len(found) > 0) != finds {
			t.Errorf("in %q is found: %q", text, found)
		}
	}
	if found := wrongWords(handbook.Chapter{Text: "**Office**"}, handbook.Chapter{Text: "**Office**"}, texts); len(found) == 0 {
		t.Error("a label of no screen is not found")
	}
	if _, english := i18n.Texts(i18n.English)["Moisture"]; !english {
		t.Error("the words of the trade are not among the texts")
	}
}
