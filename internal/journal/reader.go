package journal

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"
)

// reader copies well-formed JSON text in canonical form. It runs on the store's busiest path, hence
// no tree and no tokens.
type reader struct {
	rest   []byte
	faults []string
}

func (r *reader) fault(format string, args ...any) {
	r.faults = append(r.faults, fmt.Sprintf(format, args...))
}

// peek is the next byte that is no space.
func (r *reader) peek() byte {
	for isSpace(r.rest[0]) {
		r.rest = r.rest[1:]
	}
	return r.rest[0]
}

func isSpace(c byte) bool { return c == ' ' || c == '\t' || c == '\r' || c == '\n' }

// skip passes over the next byte that is no space.
func (r *reader) skip() {
	r.peek()
	r.rest = r.rest[1:]
}

// take cuts off the next n bytes.
func (r *reader) take(n int) []byte {
	taken := r.rest[:n]
	r.rest = r.rest[n:]
	return taken
}

// value appends the next value; at is the way to it, for messages.
func (r *reader) value(out []byte, at string) []byte {
	switch r.peek() {
	case '{':
		return r.object(out, at)
	case '[':
		return r.array(out, at)
	case '"':
		return appendQuoted(out, r.text(at))
	}
	word := r.word()
	if word[0] == '-' || word[0] <= '9' {
		r.fault("The figure %s%s is a JSON number; write it as text, %q.", word, place(at), word)
	}
	return append(out, word...)
}

// A member is one name of an object with its value, both canonical.
type member struct {
	name string
	text []byte
}

func (r *reader) object(out []byte, at string) []byte {
	var members []member
	for r.skip(); r.peek() != '}'; {
		if r.peek() == ',' {
			r.skip()
			r.peek()
		}
		name := r.text(at)
		r.skip() // the colon
		members = append(members, member{name, r.value(nil, at+"."+name)})
	}
	r.skip()
	slices.SortStableFunc(members, func(a, b member) int { return strings.Compare(a.name, b.name) })
	out = append(out, '{')
	for i, m := range members {
		if i > 0 {
			if m.name == members[i-1].name {
				r.fault("The name %q occurs twice%s.", m.name, place(at))
			}
			out = append(out, ',')
		}
		out = append(appendQuoted(out, m.name), ':')
		out = append(out, m.text...)
	}
	return append(out, '}')
}

func (r *reader) array(out []byte, at string) []byte {
	out = append(out, '[')
	r.skip()
	for i := 0; r.peek() != ']'; i++ {
		if i > 0 {
			out = append(out, ',')
			r.skip()
		}
		out = r.value(out, fmt.Sprintf("%s[%d]", at, i))
	}
	r.skip()
	return append(out, ']')
}

// word takes a number, true, false or null.
func (r *reader) word() []byte {
	end := bytes.IndexAny(r.rest, ",]} \t\r\n")
	if end < 0 {
		end = len(r.rest)
	}
	return r.take(end)
}

// text reads a string and removes its escapes. The decoder puts U+FFFD in place of an invalid
// character, so that one is a sign of data already lost.
func (r *reader) text(at string) string {
	end := 1
	for r.rest[end] != '"' {
		if r.rest[end] == '\\' {
			end++
		}
		end++
	}
	quoted := r.take(end + 1)
	text := string(quoted[1:end])
	if strings.Contains(text, `\`) {
		// Well-formed text cannot fail to decode.
		_ = json.Unmarshal(quoted, &text)
	}
	if strings.ContainsRune(text, utf8.RuneError) {
		r.fault("The text %q%s holds bytes that are no letters.", text, place(at))
	}
	return text
}

// place names where in the details a fault is.
func place(at string) string {
	if at == "" {
		return ""
	}
	return " at " + strings.TrimPrefix(at, ".")
}
