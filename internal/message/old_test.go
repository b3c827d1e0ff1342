package message

import (
	"strings"
	"testing"
)

// A sentence of an earlier version is found by its format, sentence by sentence, with the texts in its
// gaps; anything else stays as it was written.
func TestOldSentences(t *testing.T) {
	for _, c := range []struct {
		english string
		keys    []string
	}{
		{"No moisture yet: test the sample.", []string{"No moisture yet: test the sample."}},
		{"Load L88, Odessa Crane, truck 4, came for 2026-10-01: No tare yet: weigh the empty truck, or use its stored tare. No moisture yet: test the sample.",
			[]string{"Load %v, %s, truck %s, came for %s: %s"}},
		{"Meter D1 (dial. A) was last checked on 2026-08-29 and was due on 2026-09-12. A meter may drift without anyone seeing it. Check it with an oven-dried reference before relying on it.",
			[]string{"%s was last checked on %s and was due on %s.", "A meter may drift without anyone seeing it.", "Check it with an oven-dried reference before relying on it."}},
		{"Test 2: The sample was at 36 °F, below 40 °F. Let it warm in a sealed jar and test again.", []string{"Test %d: %s"}},
		{"2 tests, and the house asks for 3 tests. One test may be off by chance. Test once more.",
			[]string{"%s, and the house asks for %s.", "One test may be off by chance.", "Test %s more."}},
		{"the grower says that it is fine", nil}, {"The sample was at 36 °F, and wet.", nil}, {"", nil},
	} {
		text, found := readOld(c.english)
		if found != (c.keys != nil) {
			t.Errorf("%q is known: %v, as %q", c.english, found, text)
			continue
		}
		keys := []string{text.Key()}
		if text.form == list {
			keys = nil
			for _, part := range text.args {
				keys = append(keys, part.(Text).Key())
			}
		}
		if found && (strings.Join(keys, "\n") != strings.Join(c.keys, "\n") || text.String() != c.english) {
			t.Errorf("%q is read as %q: %q", c.english, text, keys)
		}
	}
}

// The texts in the gaps are messages too, and names are names.
func TestOldSentencesWithinOthers(t *testing.T) {
	text, _ := readOld("Load L88, not known yet, truck Corn, came for 2026-10-01: No tare yet: weigh the empty truck, or use its stored tare.")
	if args := text.Args(); args[0] != Own("L88") || args[1].(Text).Key() != "not known yet" || args[4].(Text).IsZero() {
		t.Errorf("the gaps hold %q", args)
	}
}

// Each of the frozen formats finds itself, so that none hides another.
func TestEveryOldFormatIsFound(t *testing.T) {
	for _, f := range oldOnes() {
		args := make([]any, len(f.verbs))
		for i, v := range f.verbs {
			args[i] = []any{Own("Crane"), 7}[map[bool]int{true: 1}[v.letter == 'd']]
		}
		want := New(f.key, args...)
		if got, found := readOld(want.String()); !found || got.Key() != f.key {
			t.Errorf("%q is read as %q", want, got.Key())
		}
	}
}

func FuzzOldSentences(f *testing.F) {
	f.Add("Test 2: Test 2: %s")
	f.Fuzz(func(t *testing.T, english string) {
		if text, found := readOld(english); found && text.String() != english {
			t.Errorf("%q becomes %q", english, text)
		}
	})
}
