package handbook

import (
	"strings"
	"testing"
)

func TestSearch(t *testing.T) {
	for _, c := range []struct{ query, chapter, section string }{
		{"grate", "cautions", "The pit"},
		{"pit grate", "cautions", "The pit"},
		{"GRATE", "cautions", "The pit"},
		{"stored tare", "growers", "Trucks and stored tares"},
		{"void", "tickets", "Voiding"},
		{"iowa 1.18", "shrink", "A fixed rate for each point"},
		{"two weeks", "bench", "Checking the meter"},
		{"writing edition", "rates", "Writing your own"},
		{"seven calendar days", "disputes", "If the moisture is doubted"},
		{"bin entry", "cautions", "Bin entry"},
		{"zebra grate", "cautions", "The pit"}, // no section has both
		{"power cut", "backup", "After a power cut"},
	} {
		hits := In(English).Search(c.query)
		if len(hits) == 0 {
			t.Errorf("%q finds nothing", c.query)
			continue
		}
		if hits[0].Chapter != c.chapter || hits[0].Section != c.section {
			t.Errorf("%q finds %s, %q first; want %s, %q", c.query, hits[0].Chapter, hits[0].Section, c.chapter, c.section)
		}
	}
}

func TestSearchNarrowsAsTyped(t *testing.T) {
	before := len(In(English).Search("m")) + 1
	for _, query := range []string{"m", "mo", "moi", "moist", "moisture", "moisture t", "moisture tenth"} {
		hits := In(English).Search(query)
		if len(hits) == 0 || len(hits) > before {
			t.Errorf("%q finds %d, the shorter one %d", query, len(hits), before)
		}
		before = len(hits)
	}
	if hits := In(English).Search("zebra"); len(hits) != 0 {
		t.Errorf("zebra is found: %+v", hits)
	}
	if all := In(English).Search("  "); len(all) != len(order) || all[0].Chapter != order[0] {
		t.Errorf("nothing typed finds %d passages", len(all))
	}
}

// Each hit can be opened: its block is the heading, and its passage has the
// words or stands under them.
func TestHitsCanBeOpened(t *testing.T) {
	for _, query := range []string{"tare", "moisture", "edition", "ctrl", "lb"} {
		for _, h := range In(English).Search(query) {
			c, ok := In(English).ByID(h.Chapter)
			if !ok {
				t.Fatalf("%q finds chapter %q, which is not there", query, h.Chapter)
			}
			if h.Section != "" && (c.Blocks[h.Block].Kind != Heading || c.Blocks[h.Block].Plain() != h.Section) {
				t.Errorf("%q: block %d of %s is not the heading %q", query, h.Block, h.Chapter, h.Section)
			}
			if strings.TrimSpace(h.Passage) == "" && h.Section != "" {
				t.Errorf("%q: %s, %s has no passage", query, h.Chapter, h.Section)
			}
		}
	}
}
