package i18n

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Sentences are built with their figures in them: "Net would be -380 lb (gross 24,120 lb - tare
// 24,500 lb). Weigh again or swap the two." Their formats are keys like any other, so such a
// sentence is parsed by its format and rebuilt by the translated one.

// sentences are the formats of a language, the most telling first.
type sentences []format

var (
	// name matches the name of a rule, "Test weight discount": a few words, the first with a
	// capital.
	name = regexp.MustCompile(`^\p{Lu}[\p{L}'-]*(,? [\p{L}'()-]+){0,5}$`)
	// typing matches the beginning of typed text: "sour smell", and not an id.
	typing = regexp.MustCompile(`^\p{Ll}+( |$)`)
	// figure is a figure with or without its unit: "52,300 lb", "$4.12/bu".
	figure = regexp.MustCompile(`^[-+−]?\$?\d[\d,.]*…?( ?(%|°[CF]|lb|kg|g|bu|cwt|t|pt))?(/[a-zL]+)*$`)
)

func newSentences(texts map[string]string) sentences {
	var out sentences
	for english, other := range texts {
		if f, ok := newFormat(english, other); ok {
			out = append(out, f)
		}
	}
	slices.SortFunc(out, func(a, b format) int {
		if a.letter != b.letter {
			return b.letter - a.letter
		}
		return strings.Compare(strings.Join(a.parts, "\x00"), strings.Join(b.parts, "\x00"))
	})
	return out
}

// lookup finds an exact text.
type lookup func(english string) (text string, known bool)

// translate translates a text. Texts in gaps are looked up too; unknown text stays.
func (s sentences) translate(text string, exact lookup) string {
	out, _ := s.said(text, exact)
	return out
}

// betweens are the places a text of no known format is taken apart at, the ones
// that part most first.
var betweens = []*regexp.Regexp{
	regexp.MustCompile(`\n`), regexp.MustCompile(sentenceEnd), regexp.MustCompile(`; `), regexp.MustCompile(colon), regexp.MustCompile(comma),
}

// colon and comma separate a name from what it names, and the items of a list.
const (
	colon = `: `
	comma = `, `
)

// sentenceEnd matches a full stop that ends a sentence, and no initial: "T. Tester" is a name.
const sentenceEnd = `[\p{L}\p{N})%'"…]{2}(\. )`

var endsWithin = regexp.MustCompile(sentenceEnd)

// said translates a text and reports whether all of it is known. A format whose gaps would swallow
// the end of a sentence is used only when the single sentences are not known.
func (s sentences) said(text string, exact lookup) (out string, known bool) {
	if out, ok := s.whole(text, false, exact); ok {
		return out, true
	}
	apart, isApart := text, false
	for _, between := range betweens {
		out, parted, known := s.each(text, between, exact)
		if known {
			return out, true
		}
		if parted && !isApart {
			apart, isApart = out, true
		}
	}
	if out, ok := s.whole(text, true, exact); ok {
		return out, true
	}
	return apart, !isApart && (lettersIn(text) == 0 || figure.MatchString(text))
}

// each translates the parts of a text. A list is split only if its unknown parts are names: typed
// text is not translated word by word.
func (s sentences) each(text string, between *regexp.Regexp, exact lookup) (out string, parted, known bool) {
	known, typed := true, false
	var b strings.Builder
	say := func(part string) {
		said, ok := s.said(part, exact)
		b.WriteString(said)
		known, typed = known && ok, typed || !ok && typing.MatchString(part)
	}
	at := 0
	for _, place := range between.FindAllStringSubmatchIndex(text, -1) {
		from, to := place[len(place)-2], place[len(place)-1]
		if from <= at {
			continue
		}
		if text[from] == '.' {
			from++ // a sentence keeps its point
		}
		say(text[at:from])
		mark := text[from:to]
		if text[from-1] != ' ' { // else it is set as the language sets it
			mark, _ = exact(mark)
		}
		b.WriteString(mark)
		at, parted = to, true
	}
	if !parted {
		return "", false, false
	}
	if at < len(text) {
		say(text[at:])
	}
	if typed && (between.String() == colon || between.String() == comma) {
		return "", false, false
	}
	return b.String(), true, known
}

// whole finds a text or its format, with or without the point at its end.
func (s sentences) whole(text string, swallowing bool, exact lookup) (string, bool) {
	if out, ok := s.one(text, swallowing, exact); ok || text == "" {
		return out, true
	}
	if bare, pointed := strings.CutSuffix(text, "."); pointed {
		out, ok := s.one(bare, swallowing, exact)
		return out + ".", ok
	}
	out, ok := s.one(text+".", swallowing, exact)
	return strings.TrimSuffix(out, "."), ok
}

// inSmall finds a text, or if it begins with a small letter the same with a capital: "corn" is
// "Corn".
func inSmall(text string, exact lookup) (string, bool) {
	if out, known := exact(text); known {
		return out, true
	}
	first, size := utf8.DecodeRuneInString(text)
	if !unicode.IsLower(first) {
		return "", false
	}
	out, known := exact(string(unicode.ToUpper(first)) + text[size:])
	first, size = utf8.DecodeRuneInString(out)
	return string(unicode.ToLower(first)) + out[size:], known
}

// one finds a text. A format may match the end of a sentence in its gaps if swallowing is allowed.
func (s sentences) one(text string, swallowing bool, exact lookup) (string, bool) {
	if out, known := inSmall(text, exact); known {
		return out, true
	}
	for _, f := range s {
		gaps, ok := f.match(text)
		if !ok || !swallowing && slices.ContainsFunc(gaps, endsWithin.MatchString) {
			continue
		}
		if !f.weak || s.known(f, gaps, exact) {
			return f.fill(gaps, func(gap string) string { return s.translate(gap, exact) }), true
		}
	}
	return "", false
}

// known reports whether every gap of a format with few letters holds a figure or a known text, or,
// where the format is a word after a name, a name.
func (s sentences) known(f format, gaps []string, exact lookup) bool {
	if len(gaps) == 1 && f.letter >= fewestLetters && name.MatchString(gaps[0]) {
		return true
	}
	for i, gap := range gaps {
		if gap == "" || i == 0 && f.own[0] && f.parts[0] == "" && strings.Contains(gap, " ") {
			return false // it may be half a sentence
		}
		if f.own[i] || lettersIn(gap) == 0 || figure.MatchString(gap) {
			continue
		}
		if _, ok := s.whole(gap, false, exact); !ok {
			return false
		}
	}
	return true
}
