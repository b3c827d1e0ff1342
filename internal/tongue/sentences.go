package tongue

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Sentences are made where they are known, with their figures in them: "Net would be -380 lb (gross 24,120 lb - tare 24,500 lb). Weigh again or swap
// the two." Their formats are keys like any other, so such a sentence is taken
// apart along its format and put together again along the translated one.

// sentences are the formats of a language, the most telling first.
type sentences []format

// format is an English text with gaps, and the text it becomes.
type format struct {
	parts  []string // what stands around the gaps; one more than there are gaps
	counts []bool   // which gaps hold a whole number and nothing else
	own    []bool   // which gaps hold a name or a person's own words, never said
	into   []string // the same of the translated text
	order  []int    // which gap of the English text fills each gap of the other
	letter int      // letters around the gaps
	weak   bool     // few letters: what is in the gaps must be known too
}

var (
	verb  = regexp.MustCompile(`%(?:\[(\d)\])?[-+#0]*\d*(?:\.\d+)?[a-zA-Z]`)
	whole = regexp.MustCompile(`^-?\d+$`)
	// name is what a rule is called, "Test weight discount": a few words, the first
	// with a capital.
	name = regexp.MustCompile(`^\p{Lu}[\p{L}'-]*(,? [\p{L}'()-]+){0,5}$`)
	// typing begins as what people type does: "sour smell", and not as an id.
	typing = regexp.MustCompile(`^\p{Ll}+( |$)`)
	// figure is a figure with or without its unit: "52,300 lb", "$4.12/bu".
	figure = regexp.MustCompile(`^[-+−]?\$?\d[\d,.]*…?( ?(%|°[CF]|lb|kg|g|bu|cwt|t|pt))?(/[a-zL]+)*$`)
)

// The fewest letters a format needs to be told from any other text: around its
// gaps, and when it begins with a gap. With fewer, but for the least, it is told
// by what is in its gaps: "Corn, out" is, "%s, out" of a grain.
const (
	fewestLetters      = 4
	fewestAfterOpening = 10
	fewestOfAll        = 2
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

// newFormat makes a format of a text with gaps that can be told from others.
func newFormat(english, other string) (format, bool) {
	f := format{}
	f.parts, _ = cutAtVerbs(english)
	for _, v := range verb.FindAllString(english, -1) {
		f.counts = append(f.counts, strings.HasSuffix(v, "d"))
		f.own = append(f.own, strings.HasSuffix(v, "v"))
	}
	f.into, f.order = cutAtVerbs(other)
	f.letter = lettersIn(strings.Join(f.parts, ""))
	if len(f.parts) < 2 || len(f.parts) != len(f.into) || f.letter < fewestOfAll {
		return format{}, false
	}
	fewest := fewestLetters
	if f.parts[0] == "" {
		fewest = fewestAfterOpening
	}
	if f.counts[0] || f.counts[len(f.counts)-1] {
		fewest = fewestLetters
	}
	f.weak = f.letter < fewest
	return f, true
}

func cutAtVerbs(text string) (parts []string, order []int) {
	at := 0
	for n, place := range verb.FindAllStringSubmatchIndex(text, -1) {
		parts = append(parts, strings.ReplaceAll(text[at:place[0]], "%%", "%"))
		which := n
		if place[2] >= 0 {
			which = int(text[place[2]] - '1')
		}
		order, at = append(order, which), place[1]
	}
	return append(parts, strings.ReplaceAll(text[at:], "%%", "%")), order
}

func lettersIn(text string) int {
	n := 0
	for _, r := range text {
		if unicode.IsLetter(r) {
			n++
		}
	}
	return n
}

// lookup finds a text as it stands.
type lookup func(english string) (text string, known bool)

// translate puts a text into the language. What was in the gaps is looked up too;
// what is no text at all stays.
func (s sentences) translate(text string, exact lookup) string {
	out, _ := s.said(text, exact)
	return out
}

// betweens are the places a text of no known format is taken apart at, the ones
// that part most first.
var betweens = []*regexp.Regexp{
	regexp.MustCompile(`\n`), regexp.MustCompile(sentenceEnd), regexp.MustCompile(`; `), regexp.MustCompile(colon), regexp.MustCompile(comma),
}

// colon and comma part a name from what it names, and a list.
const (
	colon = `: `
	comma = `, `
)

// sentenceEnd is a point that ends a sentence and no initial: "T. Tester" is a
// name.
const sentenceEnd = `[\p{L}\p{N})%'"…]{2}(\. )`

var endsWithin = regexp.MustCompile(sentenceEnd)

// said says a text and reports whether all of it is known. A format whose gaps
// would swallow the end of a sentence is taken only when the sentences are not
// known by themselves.
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

// each says the parts of a text by themselves. A list is taken apart only if what
// is not known of it are names: what people typed is not said word by word.
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

// inSmall finds a text as it stands, or where it begins with a small letter the
// same with a capital: "corn" is "Corn".
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

// one finds a text as it stands. A format may swallow the end of a sentence in
// its gaps if it is allowed to.
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

// known reports whether every gap of a format of few letters holds a figure or
// something known, or, where the format is a word behind a name, a name.
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

// match takes a text apart along the format.
func (f format) match(text string) (gaps []string, ok bool) {
	last := len(f.parts) - 1
	rest, ok := strings.CutPrefix(text, f.parts[0])
	if !ok {
		return nil, false
	}
	for _, part := range f.parts[1:last] {
		gap, after, found := strings.Cut(rest, part)
		if !found || part == "" {
			return nil, false
		}
		gaps, rest = append(gaps, gap), after
	}
	gap, ok := strings.CutSuffix(rest, f.parts[last])
	gaps = append(gaps, gap)
	for i, gap := range gaps {
		ok = ok && (!f.counts[i] || whole.MatchString(gap))
	}
	return gaps, ok
}

// fill puts the translated text together.
func (f format) fill(gaps []string, look func(string) string) string {
	var b strings.Builder
	for i, part := range f.into {
		b.WriteString(part)
		if i < len(f.order) {
			gap := gaps[f.order[i]]
			if !f.own[f.order[i]] {
				gap = look(gap)
			}
			b.WriteString(gap)
		}
	}
	return b.String()
}
