package tomlfile

import "bytes"

// Fits reports whether a text is small and flat enough to be given to the decoder. [Parse] asks the
// same; this is for whoever decodes a file by other means.
func Fits(text []byte) bool {
	if len(text) > maxBytes {
		return false
	}
	_, tooDeep := locate(text)
	return tooDeep == 0
}

// nestedTooDeep is the line on which tables in braces and arrays stand more than mostParts deep in
// each other, 0 for none. It looks at the brackets alone, before any parser does: a file of 100 kB
// with 20,000 braces kept the decoder busy for half a minute and took 17 GB.
func nestedTooDeep(text []byte) int {
	depth, whole := 0, len(text)
	for rest := text; len(rest) > 0; {
		skipped := 1
		switch rest[0] {
		case '#':
			skipped = upTo(rest, "\n")
		case '"', '\'':
			skipped = quoted(rest)
		case '[', '{':
			depth++
		case ']', '}':
			depth = max(0, depth-1)
		}
		if depth > mostParts {
			return 1 + bytes.Count(text[:whole-len(rest)], []byte("\n"))
		}
		rest = rest[skipped:]
	}
	return 0
}

// quoted is the length of the string that a text begins with, in one of TOML's four ways. One that
// does not end takes its line, so that what follows is still looked at.
func quoted(text []byte) int {
	quote := text[:1]
	if three := bytes.Repeat(quote, 3); bytes.HasPrefix(text, three) {
		return 3 + closing(text[3:], three, quote[0] == '"')
	}
	line := text[1:upTo(text, "\n")]
	return 1 + closing(line, quote, quote[0] == '"')
}

// closing is the length of a text with the quotes that end it, which may be escaped.
func closing(text, quotes []byte, escapes bool) int {
	for i := 0; i < len(text); i++ {
		if escapes && text[i] == '\\' {
			i++
		} else if bytes.HasPrefix(text[i:], quotes) {
			return i + len(quotes)
		}
	}
	return len(text)
}

// upTo is the length of a text before a sign, or all of it.
func upTo(text []byte, sign string) int {
	if i := bytes.Index(text, []byte(sign)); i >= 0 {
		return i
	}
	return len(text)
}
