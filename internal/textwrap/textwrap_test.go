package textwrap

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestWordsKeepFigureAndUnit(t *testing.T) {
	for text, want := range map[string][]string{
		"":                         nil,
		"net 52,300 lb of corn":    {"net", "52,300 lb", "of", "corn"},
		"0.5 %, or 56 lb/bu.":      {"0.5 %,", "or", "56 lb/bu."},
		"Pit 2 t and test 3 again": {"Pit", "2 t", "and", "test", "3", "again"},
		"% of 12 …":                {"%", "of", "12", "…"},
	} {
		if got := Words(text); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

func TestLinesByHand(t *testing.T) {
	words := strings.Fields("a settlement is written on a worksheet")
	if got := Lines(words, InWidth(12)); !slices.Equal(got, []string{"a settlement", "is written", "on a", "worksheet"}) {
		t.Errorf("%q", got)
	}
	if got := Lines([]string{"abcdef", "gh"}, InWidth(3)); !slices.Equal(got, []string{"abcdef", "gh"}) {
		t.Errorf("a long word stays whole: %q", got)
	}
	if got := Broken([]string{"ab", "cdefghi", "j"}, InWidth(3)); !slices.Equal(got, []string{"ab", "cde", "fgh", "i j"}) {
		t.Errorf("a long word is broken: %q", got)
	}
	if got := Broken([]string{"ab"}, InWidth(0)); !slices.Equal(got, []string{"a", "b"}) {
		t.Errorf("no width at all: %q", got)
	}
}

// No letter is lost, and every line fits, where one letter does.
func TestNothingIsLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := strings.Fields(rapid.StringMatching(`([a-zäø]{1,12} ){0,20}`).Draw(t, "text"))
		width := rapid.IntRange(1, 15).Draw(t, "width")
		for name, wrap := range map[string]func([]string, func(string) bool) []string{"lines": Lines, "broken": Broken} {
			lines := wrap(words, InWidth(width))
			if got := strings.ReplaceAll(strings.Join(lines, ""), " ", ""); got != strings.Join(words, "") {
				t.Fatalf("%s: %q became %q", name, words, lines)
			}
			for _, line := range lines {
				if !InWidth(width)(line) && (name == "broken" || strings.Contains(line, " ")) {
					t.Fatalf("%s: %q is wider than %d", name, line, width)
				}
			}
		}
	})
}
