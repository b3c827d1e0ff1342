package tongue

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
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
	into   []string // the same of the translated text
	order  []int    // which gap of the English text fills each gap of the other
	letter int      // letters around the gaps
	weak   bool     // few letters: what is in the gaps must be known too
}

var (
	verb  = regexp.MustCompile(`%(?:\[(\d)\])?[-+ #0]*\d*(?:\.\d+)?[a-zA-Z]`)
	whole = regexp.MustCompile(`^-?\d+$`)
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
	}
	f.into, f.order = cutAtVerbs(other)
	f.letter = lettersIn(strings.Join(f.parts, ""))
	fewest := fewestLetters
	if f.parts[0] == "" {
		fewest = fewestAfterOpening
	}
	f.weak = f.letter < fewest
	return f, len(f.parts) > 1 && len(f.parts) == len(f.into) && f.letter >= fewestOfAll
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

// translate puts a text into the language line by line and sentence by sentence.
// What was in the gaps is looked up too. A text of no known format is taken apart
// at its points, colons and commas; what is no text at all stays.
func (s sentences) translate(text string, exact func(string) (string, bool)) string {
	if out, ok := s.whole(text, exact); ok {
		return out
	}
	for _, between := range []string{"\n", ". ", "; ", ": ", ", "} {
		if parts := strings.Split(text, between); len(parts) > 1 {
			return s.each(parts, between, exact)
		}
	}
	return text
}

// each translates parts of a text by themselves.
func (s sentences) each(parts []string, between string, exact func(string) (string, bool)) string {
	end := ""
	if between == ". " {
		end = "."
	}
	for i, part := range parts {
		if i < len(parts)-1 {
			parts[i] = strings.TrimSuffix(s.translate(part+end, exact), end)
		} else {
			parts[i] = s.translate(part, exact)
		}
	}
	return strings.Join(parts, between)
}

// whole finds a text or its format, with or without the point at its end.
func (s sentences) whole(text string, exact func(string) (string, bool)) (string, bool) {
	if out, ok := s.one(text, exact); ok || text == "" {
		return out, true
	}
	if bare, pointed := strings.CutSuffix(text, "."); pointed {
		out, ok := s.one(bare, exact)
		return out + ".", ok
	}
	return "", false
}

// one finds a text as it stands.
func (s sentences) one(text string, exact func(string) (string, bool)) (string, bool) {
	if out, known := exact(text); known {
		return out, true
	}
	for _, f := range s {
		if gaps, ok := f.match(text); ok && (!f.weak || s.known(gaps, exact)) {
			return f.fill(gaps, func(gap string) string { return s.translate(gap, exact) }), true
		}
	}
	return "", false
}

// known reports whether every gap holds a figure or something known.
func (s sentences) known(gaps []string, exact func(string) (string, bool)) bool {
	return !slices.ContainsFunc(gaps, func(gap string) bool {
		if lettersIn(gap) == 0 || figure.MatchString(gap) {
			return gap == ""
		}
		_, ok := s.whole(gap, exact)
		return !ok
	})
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
			b.WriteString(look(gaps[f.order[i]]))
		}
	}
	return b.String()
}
