package terminal

import (
	"fmt"
	"io"
	"unicode"
	"unicode/utf8"
)

// Escaped writes to a terminal what may hold names out of any book: a character
// that would clear the screen, go back over a line or turn the writing is shown as
// its number, as JSON writes it. Lines and tabs stay.
func Escaped(w io.Writer) io.Writer { return escaped{w} }

type escaped struct{ to io.Writer }

// Write tells the length of what it was given, whatever was written for it.
func (e escaped) Write(text []byte) (int, error) {
	out := make([]byte, 0, len(text))
	for rest := text; len(rest) > 0; {
		r, size := utf8.DecodeRune(rest)
		if moves(r) {
			out = fmt.Appendf(out, "\\u%04x", r)
		} else {
			out = append(out, rest[:size]...)
		}
		rest = rest[size:]
	}
	if _, err := e.to.Write(out); err != nil {
		return 0, err
	}
	return len(text), nil
}

// moves reports a character that does something to a terminal.
func moves(r rune) bool {
	if r == '\n' || r == '\t' {
		return false
	}
	return unicode.IsControl(r) || r >= '\u202a' && r <= '\u202e' || r >= '\u2066' && r <= '\u2069'
}
