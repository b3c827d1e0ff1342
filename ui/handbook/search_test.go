package handbook

import (
	"slices"
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
		{"writing edition", "rates", "Writing a file yourself"},
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

// French is found as it is typed in a hurry: without accents or capitals, and by
// the noun behind an apostrophe.
func TestSearchInFrench(t *testing.T) {
	for _, c := range []struct{ query, chapter, section string }{
		{"grille", "cautions", "La fosse"},
		{"réfaction d'eau", "shrink", "L'eau seule"},
		{"REFACTION D'EAU", "shrink", "L'eau seule"},
		{"refaction eau", "shrink", "L'eau seule"},
		{"tares en memoire", "growers", "Camions et tares en mémoire"},
		{"annuler un bon", "tickets", "Annuler"},
		{"etuve", "bench", "Vérifier l'humidimètre"},
		{"échantillon garde", "bench", "Garder l'échantillon"},
		{"oxygene", "cautions", "Entrer dans un silo"},
		{"panne de courant", "backup", "Après une panne de courant"},
		{"jours civils", "disputes", "Si l'humidité est contestée"},
		{"zebre grille", "cautions", "La fosse"},
	} {
		hits := In("fr").Search(c.query)
		if len(hits) == 0 || hits[0].Chapter != c.chapter || hits[0].Section != c.section {
			t.Errorf("%q finds %+v first; want %s, %q", c.query, hits[:min(1, len(hits))], c.chapter, c.section)
		}
	}
	if hits := In("fr").Search("zebre"); len(hits) != 0 {
		t.Errorf("zebre is found: %+v", hits)
	}
}

// With accents, without them and with each written as a mark of its own, the
// same places are found.
func TestAccentsDoNotMatter(t *testing.T) {
	for _, same := range [][]string{
		{"échantillon", "echantillon", "ECHANTILLON", "e\u0301chantillon", "ÉCHANTILLON"},
		{"échelon", "echelon", "Échelon"},
		{"reçoit", "recoit"}, {"où", "ou"}, {"été", "ete", "E\u0301TE\u0301"},
	} {
		want := In("fr").Search(same[0])
		if len(want) == 0 {
			t.Errorf("%q finds nothing", same[0])
		}
		for _, query := range same[1:] {
			if got := In("fr").Search(query); !slices.Equal(got, want) {
				t.Errorf("%q finds %d passages, %q %d", query, len(got), same[0], len(want))
			}
		}
	}
	if hits := In(English).Search("môisture"); len(hits) == 0 || !slices.Equal(hits, In(English).Search("moisture")) {
		t.Errorf("in the English handbook môisture finds %d passages", len(hits))
	}
	if got, want := wordsOf("L'œuf qu’on paie: N° 1.18, ça…"), []string{"oeuf", "on", "paie", "n", "1.18", "ca"}; !slices.Equal(got, want) {
		t.Errorf("the words are %q, want %q", got, want)
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

// Each hit can be opened: its block is the heading, and its passage has the words or is under them.
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
