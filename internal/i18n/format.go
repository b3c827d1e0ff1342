package i18n

import (
	"regexp"
	"strings"
	"unicode"
)

// format is an English text with gaps, and the text it becomes.
type format struct {
	parts  []string // texts around the gaps; one more than there are gaps
	counts []bool   // which gaps hold a whole number and nothing else
	own    []bool   // which gaps hold a name or a person's own words, never translated
	into   []string // the same of the translated text
	order  []int    // which gap of the English text fills each gap of the other
	letter int      // letters around the gaps
	weak   bool     // few letters: the text in the gaps must be known too
}

var (
	verb  = regexp.MustCompile(`%(?:\[(\d)\])?[-+#0]*\d*(?:\.\d+)?[a-zA-Z]`)
	whole = regexp.MustCompile(`^-?\d+$`)
)

// The least number of letters a format needs to be distinct from other texts: around its gaps, and
// when it begins with a gap. With fewer, but at least the minimum, it is recognized by the text in
// its gaps: "Corn, out" is, "%s, out" of a grain.
const (
	fewestLetters      = 4
	fewestAfterOpening = 10
	fewestOfAll        = 2
)

// newFormat makes a format of a text with gaps, if it is distinct enough.
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
