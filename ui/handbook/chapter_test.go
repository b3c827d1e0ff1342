package handbook

import (
	"regexp"
	"slices"
	"strings"
	"testing"
)

// lacks are how many chapters a language does not have yet; a new one lowers it.
var lacks = map[string]int{"es": 0}

// eachChapter runs a check on every chapter of every language.
func eachChapter(t *testing.T, check func(t *testing.T, c Chapter)) {
	t.Helper()
	for _, language := range Languages {
		for _, c := range In(language).All() {
			t.Run(language+"/"+c.ID, func(t *testing.T) { check(t, c) })
		}
	}
}

func TestEveryFileIsAChapterInOrder(t *testing.T) {
	for _, language := range Languages {
		entries, err := files.ReadDir("chapters/" + language)
		if err != nil {
			t.Fatal(err)
		}
		if len(entries) != len(order)-lacks[language] {
			t.Errorf("%s: %d files, %d chapters in the order, of which %d may be missing", language, len(entries), len(order), lacks[language])
		}
		for _, entry := range entries {
			if id := strings.TrimSuffix(entry.Name(), ".md"); !slices.Contains(order, id) {
				t.Errorf("%s: %s is in no order", language, entry.Name())
			}
		}
		seen := map[string]bool{}
		for _, c := range In(language).All() {
			if seen[c.Title] || c.Title == "" {
				t.Errorf("%s: chapter %s is called %q, which is empty or taken", language, c.ID, c.Title)
			}
			seen[c.Title] = true
		}
	}
	folders, err := files.ReadDir("chapters")
	if err != nil || len(folders) != len(Languages) {
		t.Errorf("%d folders of chapters, %d languages (%v)", len(folders), len(Languages), err)
	}
}

// longestInCell is the longest word, in letters, that a column has room for.
const longestInCell = 40

// A chapter uses only the forms the reader knows: nothing of Markdown is left
// over in the words people read. The line in a word such as after_weight_discount is no Markdown.
func TestChaptersAreWhole(t *testing.T) {
	leftOver := regexp.MustCompile("[*`#<>]|\\b_|_\\b[^a-z]|_$|\\]\\(|^ *[-|]")
	eachChapter(t, func(t *testing.T, c Chapter) {
		titles, headings := 0, 0
		for i, b := range c.Blocks {
			switch b.Kind {
			case Title:
				titles++
				if i != 0 {
					t.Error("a title in the middle")
				}
			case Heading:
				headings++
			}
			if found := leftOver.FindString(Block{Text: b.Text}.Plain()); found != "" {
				t.Errorf("%q stands in %q", found, b.Plain())
			}
			for _, row := range b.Rows {
				if len(row) != len(b.Rows[0]) {
					t.Errorf("the row %q has %d cells, the heading %d", row, len(row), len(b.Rows[0]))
				}
				for _, word := range strings.Fields(strings.Join(row, " ")) {
					if len(word) > longestInCell {
						t.Errorf("%q is wider than the column of a table", word)
					}
				}
			}
			if strings.TrimSpace(b.Plain()) == "" {
				t.Errorf("block %d is empty", i)
			}
		}
		if titles != 1 || c.ID != "glossary" && headings == 0 {
			t.Errorf("%d titles and %d headings", titles, headings)
		}
	})
}

// The elevator writes American English, French that breaks no line before a colon: the reader
// ties the blank, so it has to be there, and Spanish without a blank before its signs.
func TestSpelling(t *testing.T) {
	wrong := map[string]*regexp.Regexp{
		"en": regexp.MustCompile(`(?i)\b(colour|odour|mould|grey|licence|metre|litre|favour|labelled|centre|cheque|afterwards)`),
		"fr": regexp.MustCompile(`[a-zé]: | [;?!]|«[^ \x{a0}]|[^ \x{a0}]»|[’"]`),
		"es": regexp.MustCompile(` [:;?!]|« | »|["’]`),
	}
	for _, language := range Languages {
		for _, c := range In(language).All() {
			for _, found := range wrong[c.Language].FindAllString(typed.ReplaceAllString(c.Text, "X"), -1) {
				t.Errorf("%s/%s: %q", language, c.ID, found)
			}
		}
	}
}

func TestFor(t *testing.T) {
	for screen, want := range map[string]string{
		"yard": "truck", "tickets": "tickets", "rates": "rates", "growers": "growers", "gear": "gear",
		"setup": "start", "keys": "keyboard", "bench": "bench", "day": "day", "meters": "bench", "samples": "bench",
		"disputes": "disputes", "a screen of tomorrow": "start",
	} {
		for _, language := range Languages {
			if got := In(language).For(screen).ID; got != want {
				t.Errorf("%s: from %s the handbook opens at %s, want %s", language, screen, got, want)
			}
		}
	}
}

func TestReadChapter(t *testing.T) {
	c := readChapter("x", strings.Join([]string{
		"# The scale", "", "It weighs", "**trucks**.", "", "## Use", "1. Zero it", "   first.", "2. Weigh.",
		"- one", "- two", "", "> Look", "> out.", "", "| a | b |", "|---|---|", "| **1** | `2` |", "", "```", "1 + 1", "```", "",
		"See [Cautions](cautions.md), `over` and 15 %.", "",
	}, "\n"))
	want := []struct {
		kind  Kind
		plain string
	}{
		{Title, "The scale"}, {Paragraph, "It weighs trucks."}, {Heading, "Use"}, {Step, "Zero it first."}, {Step, "Weigh."},
		{Bullet, "one"}, {Bullet, "two"}, {Caution, "Look out."}, {Table, "a b 1 2 "}, {Sum, "1 + 1 "},
		{Paragraph, "See Cautions, over and 15\u00a0%."},
	}
	if len(c.Blocks) != len(want) {
		t.Fatalf("%d blocks, want %d: %+v", len(c.Blocks), len(want), c.Blocks)
	}
	for i, w := range want {
		if b := c.Blocks[i]; b.Kind != w.kind || b.Plain() != w.plain {
			t.Errorf("block %d is %d %q, want %d %q", i, b.Kind, b.Plain(), w.kind, w.plain)
		}
	}
	if spans := c.Blocks[1].Text; len(spans) != 3 || !spans[1].Bold || spans[1].Text != "trucks" {
		t.Errorf("the spans are %+v", spans)
	}
	if last := c.Blocks[10].Text; len(last) != 5 || last[1] != (Span{Text: "Cautions", Bold: true, Chapter: "cautions"}) || last[3] != (Span{Text: "over", Bold: true}) {
		t.Errorf("the spans of the last are %+v", last)
	}
	if c.Title != "The scale" || c.Blocks[3].Number != "1" || c.Blocks[4].Number != "2" {
		t.Errorf("title %q, steps %q and %q", c.Title, c.Blocks[3].Number, c.Blocks[4].Number)
	}
}

func FuzzReadChapter(f *testing.F) {
	for _, language := range Languages {
		for _, c := range In(language).All() {
			f.Add(c.Text)
		}
	}
	f.Add("```\nnever closed")
	f.Add("|\n|--|\n**")
	f.Fuzz(func(t *testing.T, text string) {
		c := readChapter("x", text)
		for _, b := range c.Blocks {
			if b.Kind == Table && (len(b.Rows) == 0 || len(b.Rows[0]) == 0) {
				t.Errorf("a table without cells from %q", text)
			}
		}
	})
}
