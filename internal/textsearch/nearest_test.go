package textsearch

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestNearest(t *testing.T) {
	words := []string{"corn", "soybeans", "wheat-hrw", "wheat-srw", "barley", "Réfaction"}
	for typed, want := range map[string][]string{
		"crn": {"corn"}, "cron": {"corn"}, "soybean": {"soybeans"}, "wheat": {"wheat-hrw", "wheat-srw"},
		"refacton": {"Réfaction"}, "zzzz": nil, "": nil,
	} {
		if got := Nearest(typed, words); !slices.Equal(got, want) {
			t.Errorf("%q is near %q, want %q", typed, got, want)
		}
	}
}

// A word itself is the nearest to it, and one letter taken out stays near.
func TestNearestFindsSlips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.StringMatching("[a-z]{4,12}").Draw(t, "word")
		out := rapid.IntRange(0, len(word)-1).Draw(t, "left out")
		if got := Nearest(word[:out]+word[out+1:], []string{word}); !slices.Equal(got, []string{word}) {
			t.Fatalf("%q without a letter is near %q", word, got)
		}
	})
}
