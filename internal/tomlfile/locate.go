package tomlfile

import (
	"fmt"
	"strings"
)

// locator walks the lines of a file and notes on which one each key path
// stands, because a figure on a ticket is quoted with its line. Elements of an
// array of tables are numbered from 0: "discount.0.factor".
type locator struct {
	at     map[string]int // key path -> line, from 1
	seen   map[string]int // array path -> elements so far
	prefix string
	quote  string // the mark that ends the text of several lines we are in
}

func locate(lines []string) map[string]int {
	l := locator{at: map[string]int{}, seen: map[string]int{}}
	for i, line := range lines {
		if l.insideText(line) {
			continue
		}
		l.line(strings.TrimSpace(line), i+1)
		l.quote = opensText(line)
	}
	return l.at
}

// insideText reports whether the line belongs to a text of several lines, in
// which nothing is a key.
func (l *locator) insideText(line string) bool {
	if l.quote == "" {
		return false
	}
	if strings.Contains(line, l.quote) {
		l.quote = ""
	}
	return true
}

// opensText is the mark of a text that begins on the line and does not end
// there.
func opensText(line string) string {
	for _, mark := range []string{`"""`, "'''"} {
		if strings.Count(line, mark) == 1 {
			return mark
		}
	}
	return ""
}

func (l *locator) line(text string, n int) {
	switch {
	case strings.HasPrefix(text, "#"):
	case strings.HasPrefix(text, "[["):
		l.prefix = l.element(headerName(text))
		l.at[l.prefix] = n
	case strings.HasPrefix(text, "["):
		l.prefix = l.within(headerName(text))
		l.at[l.prefix] = n
	default:
		if key, _, ok := strings.Cut(text, "="); ok {
			l.key(join(l.prefix, plainKey(key)), n)
		}
	}
}

// key notes the first line a key stands on; what looks like it further down,
// in a list of several lines, is not it.
func (l *locator) key(path string, n int) {
	if _, known := l.at[path]; !known {
		l.at[path] = n
	}
}

func headerName(line string) string {
	name, _, _ := strings.Cut(line, "]")
	return plainKey(strings.TrimLeft(name, "["))
}

// plainKey takes spaces and quotes off the parts of a dotted key.
func plainKey(key string) string {
	parts := strings.Split(key, ".")
	for i, part := range parts {
		parts[i] = strings.Trim(strings.TrimSpace(part), `"'`)
	}
	return strings.Join(parts, ".")
}

// element gives the next element of an array of tables its number.
func (l *locator) element(name string) string {
	path := l.within(name)
	n := l.seen[path]
	l.seen[path] = n + 1
	return fmt.Sprintf("%s.%d", path, n)
}

// within puts the number of the current element into a dotted name:
// "discount.row" inside the second discount is "discount.1.row".
func (l *locator) within(name string) string {
	parts := strings.Split(name, ".")
	path := parts[0]
	for _, part := range parts[1:] {
		if n := l.seen[path]; n > 0 {
			path = fmt.Sprintf("%s.%d", path, n-1)
		}
		path = join(path, part)
	}
	return path
}

// lineOf is the line of a path, or of the nearest table around it that the
// file shows; 0 when there is none.
func lineOf(at map[string]int, path string) int {
	for path != "" {
		if n := at[path]; n > 0 {
			return n
		}
		path = path[:max(0, strings.LastIndexByte(path, '.'))]
	}
	return 0
}

func join(prefix, key string) string {
	switch {
	case prefix == "":
		return key
	case key == "":
		return prefix
	}
	return prefix + "." + key
}
