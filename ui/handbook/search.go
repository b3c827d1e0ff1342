package handbook

import (
	"cmp"
	"slices"
	"strings"
)

// Hit is a passage that was found.
type Hit struct {
	Chapter string // its id
	Title   string // of the chapter
	// Section is the heading above the passage; empty before the first.
	Section string
	// Block is the index of the passage's first block in the chapter: the
	// heading, or the block itself before the first heading.
	Block int
	// Passage is the text around the match, or the beginning.
	Passage string

	worth int
}

// Search finds the sections in which every word of the query begins some word,
// the best first: words in a title count most, then in a heading, then the
// text. Capitals and accents do not matter. Where no section has all the words,
// those that have some are found. An empty query finds the chapters themselves.
func (b Book) Search(query string) []Hit {
	words := wordsOf(query)
	if len(words) == 0 {
		var chapters []Hit
		for _, c := range b.chapters {
			chapters = append(chapters, Hit{Chapter: c.ID, Title: c.Title, Passage: opening(c)})
		}
		return chapters
	}
	for least := len(words); least > 0; least-- {
		if hits := b.having(words, least); len(hits) > 0 {
			return hits
		}
	}
	return nil
}

// having are the sections with at least so many of the words.
func (b Book) having(words []string, least int) []Hit {
	var hits []Hit
	for _, c := range b.chapters {
		for _, s := range sections(c) {
			if h, found := s.hit(words, least); found {
				hits = append(hits, h)
			}
		}
	}
	slices.SortStableFunc(hits, func(a, b Hit) int { return cmp.Compare(b.worth, a.worth) })
	return hits
}

// section is a stretch of a chapter under one heading.
type section struct {
	chapter Chapter
	heading string
	first   int // index of its first block
	blocks  []Block
}

func sections(c Chapter) []section {
	out := []section{{chapter: c}}
	for i, b := range c.Blocks {
		if b.Kind == Heading {
			out = append(out, section{chapter: c, heading: b.Plain(), first: i})
			continue
		}
		if b.Kind != Title {
			last := &out[len(out)-1]
			last.blocks = append(last.blocks, b)
		}
	}
	return out
}

// The score of a word by where it occurs.
const (
	inTitle   = 100
	inHeading = 40
	inText    = 1
	atMost    = 9 // times that a word in the text counts
)

// hit reports the section as a hit if it has enough of the words, some of them
// beyond the chapter's title: a chapter is named once, by its beginning, when
// the title alone has the words.
func (s section) hit(words []string, least int) (Hit, bool) {
	h := Hit{Chapter: s.chapter.ID, Title: s.chapter.Title, Section: s.heading, Block: s.first}
	title, heading := wordsOf(s.chapter.Title), wordsOf(s.heading)
	beyond, has := s.heading == "", 0
	for _, w := range words {
		worth := 0
		if begins(title, w) > 0 {
			worth += inTitle
		}
		if begins(heading, w) > 0 {
			worth, beyond = worth+inHeading, true
		}
		if n := s.count(w); n > 0 {
			worth, beyond = worth+inText*min(n, atMost), true
		}
		if worth > 0 {
			has++
		}
		h.worth += worth
	}
	h.Passage = s.passage(words)
	return h, beyond && has >= least
}

func (s section) count(word string) int {
	n := 0
	for _, b := range s.blocks {
		n += begins(wordsOf(b.Plain()), word)
	}
	return n
}

// passage is the sentence of the section that has the most of the words.
func (s section) passage(words []string) string {
	best, most := "", 0
	for _, b := range s.blocks {
		for _, sentence := range sentences(b) {
			has := 0
			for _, w := range words {
				if begins(wordsOf(sentence), w) > 0 {
					has++
				}
			}
			if has > most || best == "" {
				best, most = sentence, has
			}
		}
	}
	return best
}

// opening is the first sentence of a chapter.
func opening(c Chapter) string {
	for _, b := range c.Blocks {
		if b.Kind == Paragraph {
			return sentences(b)[0]
		}
	}
	return ""
}

// sentences parts a block where a full stop is followed by a blank. Rows and
// lines count as sentences.
func sentences(b Block) []string {
	var out []string
	for _, row := range b.Rows {
		out = append(out, strings.Join(row, ": "))
	}
	out = append(out, b.Lines...)
	text := Block{Text: b.Text}.Plain()
	for text != "" {
		i := strings.Index(text, ". ")
		if i < 0 {
			out = append(out, text)
			break
		}
		out, text = append(out, text[:i+1]), text[i+2:]
	}
	return out
}

// begins counts the words of a text that begin with a word.
func begins(text []string, word string) int {
	n := 0
	for _, w := range text {
		if strings.HasPrefix(w, word) {
			n++
		}
	}
	return n
}
