package handbook

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"tenthpoint/internal/i18n"
	"testing"
)

// shape is a chapter without its words: what a translation has to keep.
func shape(c Chapter) []string {
	out := make([]string, 0, len(c.Blocks))
	for _, b := range c.Blocks {
		switch b.Kind {
		case Table:
			out = append(out, fmt.Sprintf("a table of %d rows by %d", len(b.Rows), len(b.Rows[0])))
		case Sum:
			out = append(out, fmt.Sprintf("a sum of %d lines", len(b.Lines)))
		default:
			out = append(out, fmt.Sprintf("kind %d %s%s", b.Kind, b.Number, strings.Join(leads(b), " ")))
		}
	}
	return out
}

// leads are the chapters a block sends its reader to.
func leads(b Block) []string {
	var out []string
	for _, s := range b.Text {
		if s.Chapter != "" {
			out = append(out, s.Chapter)
		}
	}
	return out
}

// aFigure is a number as the chapters write it, without the stop or comma that
// ends a sentence.
var aFigure = regexp.MustCompile(`\d(?:[\d.,]*\d)?`)

// typed matches what is in a file or is typed, the same in every language.
var typed = regexp.MustCompile("`[^`\n]+`")

// differences returns where a translated chapter is not the chapter: in its blocks, its figures in
// their order, the words of files it names.
func differences(first, other Chapter) []string {
	var out []string
	compare := func(what string, a, b []string) {
		for i := range max(len(a), len(b)) {
			if i >= len(a) || i >= len(b) || a[i] != b[i] {
				out = append(out, fmt.Sprintf("%s %d: %q and %q", what, i, around(a, i), around(b, i)))
				return
			}
		}
	}
	compare("block", shape(first), shape(other))
	compare("figure", aFigure.FindAllString(first.Text, -1), aFigure.FindAllString(englishSigns(other), -1))
	compare("word of a file", sorted(typed.FindAllString(first.Text, -1)), sorted(typed.FindAllString(other.Text, -1)))
	return out
}

// englishSigns is the text of a chapter with the signs of English, where its language has a comma before
// decimals and a narrow space between thousands.
func englishSigns(c Chapter) string {
	if i18n.In(c.Language).Figures() == i18n.In(English).Figures() {
		return c.Text
	}
	return strings.ReplaceAll(decimalComma.ReplaceAllString(c.Text, "$1.$2"), "\u202f", ",")
}

var decimalComma = regexp.MustCompile(`(\d),(\d)`)

// around returns an item with its neighbors, to locate it.
func around(all []string, i int) []string { return all[min(max(0, i-2), len(all)):min(i+2, len(all))] }

func sorted(all []string) []string { slices.Sort(all); return all }

// Every language has the chapters of the first, block for block and figure for
// figure.
func TestLanguagesSayTheSame(t *testing.T) {
	for _, language := range Languages[1:] {
		for i, c := range In(language).All() {
			if c.Language != language {
				continue // not written yet
			}
			for _, d := range differences(In(English).All()[i], c) {
				t.Errorf("%s/%s: %s", language, c.ID, d)
			}
		}
	}
}

// The comparison finds what it is there for.
func TestDifferencesAreFound(t *testing.T) {
	first := "# A\n\n## B\n\nTake 1.4 of 15, see [C](c.md).\n\n- `over`\n\n| a | b |\n|--|--|\n| 1 | 2 |\n\n```\n1 + 2 = 3\n```\n"
	if d := differences(readChapter("x", first), readChapter("x", first)); d != nil {
		t.Errorf("a chapter differs from itself: %q", d)
	}
	for name, change := range map[string][2]string{
		"a heading less": {"## B\n", "B\n"}, "a figure changed": {"1.4", "1.5"}, "figures in another order": {"1.4 of 15", "15 of 1.4"},
		"another chapter": {"c.md", "d.md"}, "a word of a file translated": {"`over`", "`plus`"},
		"a row more": {"| 1 | 2 |\n", "| 1 | 2 |\n| x | y |\n"}, "a line of a sum less": {"1 + 2 = 3\n", ""}, "a point less": {"- `over`", "`over`"},
	} {
		other := strings.Replace(first, change[0], change[1], 1)
		if d := differences(readChapter("x", first), readChapter("x", other)); d == nil {
			t.Errorf("%s: nothing is found", name)
		}
	}
}

// A link names another chapter by its title, as in the list beside it.
func TestLinksLeadSomewhere(t *testing.T) {
	links := 0
	for _, language := range Languages {
		for _, c := range In(language).All() {
			for _, b := range c.Blocks {
				for _, s := range b.Text {
					if s.Chapter == "" || c.Language != language {
						continue
					}
					links++
					there, ok := In(language).ByID(s.Chapter)
					if !ok || there.ID == c.ID || plain(tied.Replace(s.Text)) != there.Title {
						t.Errorf("%s/%s: %q leads to %q, which is called %q", language, c.ID, s.Text, s.Chapter, there.Title)
					}
				}
			}
			if strings.Count(c.Text, "](") != strings.Count(c.Text, ".md)") {
				t.Errorf("%s/%s: a link to something that is no chapter", language, c.ID)
			}
		}
	}
	if links < 10 {
		t.Errorf("only %d links were found", links)
	}
}

// A language there is no handbook in gets the English one.
func TestOtherLanguages(t *testing.T) {
	for _, language := range []string{"", "xx", English} {
		if b := In(language); b.Language != English || len(b.All()) != len(order) {
			t.Errorf("in %q the handbook is %q with %d chapters", language, b.Language, len(b.All()))
		}
	}
	for language, n := range lacks {
		missing := 0
		for i, c := range In(language).All() {
			if c.Language != language {
				missing++
				if c.Language != English || c.Title != In(English).All()[i].Title {
					t.Errorf("a chapter that %s lacks is in %q, %q", language, c.Language, c.Title)
				}
			}
		}
		if missing != n {
			t.Errorf("%s: %d chapters are in English, not %d", language, missing, n)
		}
	}
	if title := In("fr").For("yard").Title; title != "Un camion, du brut au bon" {
		t.Errorf("in French the chapter of the yard is called %q", title)
	}
}
