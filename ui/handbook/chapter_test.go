package handbook

import (
	"regexp"
	"strings"
	"testing"
)

func TestEveryFileIsAChapterInOrder(t *testing.T) {
	entries, err := files.ReadDir("chapters")
	if err != nil {
		t.Fatal(err)
	}
	if len(entries) != len(order) {
		t.Errorf("%d files, %d chapters in the order", len(entries), len(order))
	}
	seen := map[string]bool{}
	for _, c := range All() {
		if seen[c.Title] || c.Title == "" {
			t.Errorf("chapter %s is called %q, which is empty or taken", c.ID, c.Title)
		}
		seen[c.Title] = true
	}
}

// A chapter uses only the forms the reader knows: nothing of Markdown is left
// over in the words people read.
func TestChaptersAreWhole(t *testing.T) {
	leftOver := regexp.MustCompile("[*`#<>_]|\\]\\(|^ *[-|]")
	for _, c := range All() {
		titles, headings := 0, 0
		for i, b := range c.Blocks {
			switch b.Kind {
			case Title:
				titles++
				if i != 0 {
					t.Errorf("%s: a title in the middle", c.ID)
				}
			case Heading:
				headings++
			}
			if found := leftOver.FindString(Block{Text: b.Text}.Plain()); found != "" {
				t.Errorf("%s: %q stands in %q", c.ID, found, b.Plain())
			}
			for _, row := range b.Rows {
				if len(row) != len(b.Rows[0]) {
					t.Errorf("%s: the row %q has %d cells, the heading %d", c.ID, row, len(row), len(b.Rows[0]))
				}
			}
			if strings.TrimSpace(b.Plain()) == "" {
				t.Errorf("%s: block %d is empty", c.ID, i)
			}
		}
		if titles != 1 || c.ID != "glossary" && headings == 0 {
			t.Errorf("%s has %d titles and %d headings", c.ID, titles, headings)
		}
		if strings.Count(c.Text, "**")%2 != 0 {
			t.Errorf("%s has a ** without its other", c.ID)
		}
	}
}

// The house writes American English.
func TestSpelling(t *testing.T) {
	for _, c := range All() {
		for _, word := range wordsOf(c.Text) {
			for _, other := range []string{"colour", "odour", "mould", "grey", "licence", "metre", "litre", "favour", "labelled", "centre", "cheque", "afterwards"} {
				if strings.HasPrefix(word, other) {
					t.Errorf("%s: %q", c.ID, word)
				}
			}
		}
	}
}

func TestFor(t *testing.T) {
	for screen, want := range map[string]string{
		"yard": "truck", "tickets": "tickets", "rates": "rates", "growers": "growers", "gear": "gear",
		"setup": "start", "keys": "keyboard", "bench": "bench", "day": "day", "a screen of tomorrow": "start",
	} {
		if got := For(screen).ID; got != want {
			t.Errorf("from %s the handbook opens at %s, want %s", screen, got, want)
		}
	}
}

func TestReadChapter(t *testing.T) {
	c := readChapter("x", strings.Join([]string{
		"# The scale", "", "It weighs", "**trucks**.", "", "## Use", "1. Zero it", "   first.", "2. Weigh.",
		"- one", "- two", "", "> Look", "> out.", "", "| a | b |", "|---|---|", "| 1 | 2 |", "", "```", "1 + 1", "```", "",
	}, "\n"))
	want := []struct {
		kind  Kind
		plain string
	}{
		{Title, "The scale"}, {Paragraph, "It weighs trucks."}, {Heading, "Use"}, {Step, "Zero it first."}, {Step, "Weigh."},
		{Bullet, "one"}, {Bullet, "two"}, {Caution, "Look out."}, {Table, "a b 1 2 "}, {Sum, "1 + 1 "},
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
	if c.Title != "The scale" || c.Blocks[3].Number != "1" || c.Blocks[4].Number != "2" {
		t.Errorf("title %q, steps %q and %q", c.Title, c.Blocks[3].Number, c.Blocks[4].Number)
	}
}

func FuzzReadChapter(f *testing.F) {
	for _, c := range All() {
		f.Add(c.Text)
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
