package message

import (
	_ "embed"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode"
)

// Facts of earlier versions hold finished English sentences: doubts about a moisture, questions
// about a load, notes of the evening. Papers printed them in the language of the house, and must
// again. These are the formats those versions wrote them by. The list is frozen: a fact written
// now keeps key and arguments.
//
//go:embed old.txt
var oldFormats string

// oldFormat is one of the formats.
type oldFormat struct {
	key   string
	verbs []verb
	begin string         // the words before the first gap
	whole *regexp.Regexp // a text that begins with the format, and what follows
}

var oldOnes = sync.OnceValue(func() []oldFormat {
	var out []oldFormat
	for _, key := range strings.Split(strings.TrimSpace(oldFormats), "\n") {
		out = append(out, newOldFormat(key))
	}
	slices.SortStableFunc(out, func(a, b oldFormat) int { return letters(b.key) - letters(a.key) })
	return out
})

// letters are the letters of a key: of two formats the one with more of them tells more.
func letters(key string) int {
	n := 0
	for _, r := range plain(key) {
		if unicode.IsLetter(r) {
			n++
		}
	}
	return n
}

func newOldFormat(key string) oldFormat {
	f := oldFormat{key: key, verbs: verbsOf(key)}
	pattern, at := "", 0
	for _, v := range f.verbs {
		pattern += regexp.QuoteMeta(key[at:v.from]) + map[byte]string{'d': `(-?\d+)`, 'q': `"(.+?)"`}[v.letter]
		if v.letter == 's' || v.letter == 'v' {
			pattern += `(.+?)`
		}
		at = v.to
	}
	f.begin = key
	if len(f.verbs) > 0 {
		f.begin = key[:f.verbs[0].from]
	}
	last := `(?: (.+))?$`
	if at == len(key) && at > 0 { // the last gap takes all the rest
		last = `()$`
	}
	f.whole = regexp.MustCompile(`(?s)^` + pattern + regexp.QuoteMeta(key[at:]) + last)
	return f
}

// readOld finds the message of a sentence, or of several, that an earlier version wrote. It reports
// false for any other text, which stays as it is.
func readOld(english string) (Text, bool) {
	texts, ok := oldSentences(english)
	if !ok {
		return Text{}, false
	}
	text := List(" ", texts...)
	if len(texts) == 1 {
		text = texts[0].(Text)
	}
	return text, text.String() == english
}

func oldSentences(english string) ([]any, bool) {
	for _, f := range oldOnes() {
		if !strings.HasPrefix(english, f.begin) {
			continue
		}
		found := f.whole.FindStringSubmatch(english)
		if found == nil {
			continue
		}
		first, rest := f.text(found[1:len(found)-1]), found[len(found)-1]
		if rest == "" {
			return []any{first}, true
		}
		if others, ok := oldSentences(rest); ok {
			return append([]any{first}, others...), true
		}
	}
	return nil, false
}

// text is the message with what stood in its gaps.
func (f oldFormat) text(gaps []string) Text {
	args := make([]any, len(gaps))
	for i, v := range f.verbs {
		args[i] = oldArgument(v.letter, gaps[i])
	}
	return New(f.key, args...)
}

func oldArgument(letter byte, english string) any {
	switch letter {
	case 'v', 'q':
		return Own(english)
	case 'd':
		if n, err := strconv.Atoi(english); err == nil {
			return n
		}
	}
	if text, ok := readOld(english); ok {
		return text
	}
	return english // a word of the program, a figure or a name
}
