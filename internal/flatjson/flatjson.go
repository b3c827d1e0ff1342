// Package flatjson reads JSON objects of text as this program writes them into a book: no spaces,
// nothing escaped, no values other than text and at most one nested object. A book holds hundreds
// of thousands of such objects and every check reads them; encoding/json takes ten times as long.
// It detects text it cannot read, and the caller then uses the general decoder.
package flatjson

import "strings"

// Members calls a function with each member of an object, until it returns false. A value is a text
// without its quotation marks, or an object with its braces. Members reports whether the object was
// read to its end.
func Members(object string, each func(name, value string) bool) bool {
	rest, ok := strings.CutPrefix(object, "{")
	if !ok || !isPlain(object) {
		return false
	}
	if rest == "}" {
		return true
	}
	for {
		var name, value string
		if name, rest, ok = text(rest); !ok {
			return false
		}
		if rest, ok = strings.CutPrefix(rest, ":"); !ok {
			return false
		}
		if value, rest, ok = valueOf(rest); !ok || !each(name, value) {
			return false
		}
		if rest == "}" {
			return true
		}
		if rest, ok = strings.CutPrefix(rest, ","); !ok {
			return false
		}
	}
}

// isPlain reports whether nothing in a text is escaped or would have to be.
func isPlain(text string) bool {
	for i := range len(text) {
		if text[i] < ' ' || text[i] == '\\' {
			return false
		}
	}
	return true
}

// IsObject reports whether a value is an object and not a text. A text that begins
// with a brace looks like one, and is left to the general way as well.
func IsObject(value string) bool { return strings.HasPrefix(value, "{") }

// valueOf returns the first value of some JSON, and the rest.
func valueOf(from string) (value, rest string, ok bool) {
	if !IsObject(from) {
		return text(from)
	}
	end := strings.IndexByte(from, '}')
	if end < 0 {
		return "", "", false
	}
	return from[:end+1], from[end+1:], true
}

// text returns the first quoted text of some JSON, and the rest.
func text(from string) (inside, rest string, ok bool) {
	if from, ok = strings.CutPrefix(from, `"`); !ok {
		return "", "", false
	}
	return strings.Cut(from, `"`)
}
