package terminal

import (
	"fmt"
	"io"
	"io/fs"
	"os"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"tenthpoint/internal/message"
)

// Width is the width of text in characters.
type Width int

// The narrowest text that a figure with its unit fits in, and the widest that
// anybody reads.
const (
	leastWidth Width = 30
	mostWidth  Width = 500
)

// UnmarshalText reads a width within its bounds.
func (w *Width) UnmarshalText(text []byte) error {
	letters, err := strconv.Atoi(strings.TrimSpace(string(text)))
	if err != nil || Width(letters) < leastWidth || Width(letters) > mostWidth {
		return message.Invalid.Errorf("a width is %d to %d letters, not %q", int(leastWidth), int(mostWidth), string(text))
	}
	*w = Width(letters)
	return nil
}

// MayReplace refuses to write over a file that is being read, over a device and
// over a link.
func MayReplace(path string, read *os.File) error {
	there, err := os.Lstat(path)
	if err != nil {
		return nil // a new file; a missing folder is reported when it is made
	}
	switch mode := there.Mode(); {
	case mode&fs.ModeSymlink != 0:
		return Refusal("Name the file itself with --out", "%s is a link and is not written over", path)
	case mode.IsDir():
		return Refusal("Name a file in it", "%s is a folder", path)
	case !mode.IsRegular():
		return Refusal("Name a file with --out, or leave --out out", "%s is a device and is not written over", path)
	}
	if input, err := read.Stat(); err == nil && os.SameFile(input, there) {
		return Refusal("Name another file with --out", "%s is the file that is read and is not written over", path)
	}
	return nil
}

// IsPlainText reports whether a text is UTF-8 without control characters, beside
// the tab, and without marks that turn the direction of writing.
func IsPlainText(text string) bool {
	return utf8.ValidString(text) && strings.IndexFunc(text, func(r rune) bool { return r != '\t' && isControl(r) }) < 0
}

// isControl reports whether a character controls a terminal instead of showing: control characters,
// unusual line ends, and marks that change the direction of writing.
func isControl(r rune) bool {
	return unicode.IsControl(r) || r == '\u2028' || r == '\u2029' || unicode.Is(unicode.Bidi_Control, r)
}

// escaping writes text for a terminal. A control character from a file, a title or a name is
// escaped as in Go and JSON, such as \u001b, and never executed.
type escaping struct {
	out  io.Writer
	part []byte // of a character that the next write ends
}

// Write accepts all of the text even if it ends within a character.
func (e *escaping) Write(text []byte) (int, error) {
	var b strings.Builder
	rest := append(e.part, text...)
	for len(rest) > 0 && utf8.FullRune(rest) {
		r, size := utf8.DecodeRune(rest)
		switch {
		case r == utf8.RuneError && size == 1:
			fmt.Fprintf(&b, "\\x%02x", rest[0])
		case r != '\n' && r != '\t' && isControl(r):
			fmt.Fprintf(&b, "\\u%04x", r)
		default:
			b.Write(rest[:size])
		}
		rest = rest[size:]
	}
	e.part = append([]byte(nil), rest...)
	_, err := io.WriteString(e.out, b.String())
	return len(text), err
}

// OneLine escapes line ends: a title from a file cannot begin another line.
func OneLine(text string) string {
	return strings.Map(func(r rune) rune {
		if r == '\n' || r == '\r' || r == '\t' || r == '\u2028' || r == '\u2029' {
			return ' '
		}
		return r
	}, text)
}

// longestComplaint is the length at which a complaint is cut, in letters.
const longestComplaint = 2000

// shortened truncates overlong text.
func shortened(text string) string {
	if utf8.RuneCountInString(text) <= longestComplaint {
		return text
	}
	return string([]rune(text)[:longestComplaint]) + " ..."
}
