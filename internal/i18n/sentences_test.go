package i18n

import (
	"strings"
	"testing"
)

func FuzzSentences(f *testing.F) {
	for _, text := range []string{"", ".", "No gross yet: weigh the loaded truck.", "a; b. c\nd", "%s %d %%"} {
		f.Add(text)
	}
	all := newSentences(map[string]string{"at %s, below %s": "à %s, sous %s", "%d tests were made here": "%d analyses ont été faites ici", "swap %s and %s": "échanger %[2]s et %[1]s"})
	f.Fuzz(func(t *testing.T, text string) {
		unknown := func(english string) (string, bool) { return english, false }
		out := all.translate(text, unknown)
		if strings.Count(out, "\n") != strings.Count(text, "\n") {
			t.Errorf("%q becomes %q: a line came or went", text, out)
		}
	})
}
