package digest

import "testing"

// The hashes of the standard's own examples: what is in a book must never be known by another.
func TestDigestsAreThoseOfTheStandard(t *testing.T) {
	for text, want := range map[string]string{
		"":    "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
		"abc": "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
	} {
		if got := Of(text); got != want || Of([]byte(text)) != want {
			t.Errorf("%q has the hash %s, want %s", text, got, want)
		}
	}
}
