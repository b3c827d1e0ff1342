package journal

import (
	"fmt"
	"regexp"
	"strconv"

	"tenthpoint/internal/message"
)

// A Head is the end of a chain as it was at one time: the number of the last fact
// and its hash, which covers every fact up to it. Noted outside the book, on paper
// or on another computer, it shows later whether the book still is the one that
// it was: an older copy or a cut-off end no longer holds that number, and facts that
// were written again give another hash.
type Head struct {
	Seq  int64
	Hash string // lower-case hexadecimal, at least headDigits of it
}

const (
	// headDigits is the least of a hash that a head is known by.
	headDigits = 12
	// paperDigits is the number of hash digits printed, to be typed.
	paperDigits = 32
)

// HeadOf is the head of a chain that ends with a fact.
func HeadOf(last Fact) Head { return Head{last.Seq, last.Hash} }

// String returns the head as it is noted and typed: "38:5f0c...", with the whole hash.
func (h Head) String() string { return fmt.Sprintf("%d:%s", h.Seq, h.Hash) }

// OnPaper is the head as paper shows it, with half of the hash.
func (h Head) OnPaper() string {
	return Head{h.Seq, h.Hash[:min(len(h.Hash), paperDigits)]}.String()
}

// Holds reports whether a fact of that number is the head's.
func (h Head) Holds(f Fact) bool {
	return f.Seq == h.Seq && len(f.Hash) >= len(h.Hash) && f.Hash[:len(h.Hash)] == h.Hash
}

var headText = regexp.MustCompile(`\b([0-9]{1,18}):([0-9a-f]{12,64})\b`)

// FindHeads returns all heads in a text.
func FindHeads(text string) []Head {
	var out []Head
	for _, found := range headText.FindAllStringSubmatch(text, -1) {
		if seq, err := strconv.ParseInt(found[1], 10, 64); err == nil && seq > 0 {
			out = append(out, Head{seq, found[2]})
		}
	}
	return out
}

// ParseHead parses a head as noted.
func ParseHead(text string) (Head, error) {
	found := FindHeads(text)
	if len(found) != 1 || headText.FindString(text) != text {
		return Head{}, message.Invalid.Errorf("%q is no head of a book. Write the number of the fact, a colon and at least %d digits of its hash, as they stand on the day sheet", text, headDigits)
	}
	return found[0], nil
}
