package tomlfile

import (
	"bytes"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// locator notes the line of each key path of a file, because a figure on a ticket is quoted with
// its line. Elements of an array of tables are numbered from 0: "discount.0.factor". The decoder
// gives values without their places, so the text is parsed again for them.
type locator struct {
	at      map[string]int // key path -> line, from 1
	seen    map[string]int // array path -> elements so far
	heading string         // the path of the table the keys belong to
	text    []byte
	tooDeep int // the line of a path with more than mostParts, 0 for none
	counted int // bytes of the text whose line ends are counted
	line    int // where they end, from 1
}

// byteOrderMark begins the files of some editors; the decoder skips it too.
const byteOrderMark = "\ufeff"

// mostParts bounds the parts of a key path; the longest of an edition has five.
// The decoder's time grows with the square of it: a key of 20,000 parts, in a
// file of 40 kB, kept it busy for 44 seconds.
const mostParts = 32

// locate finds the lines as far as the text is TOML and not nested too deep; tooDeep is the line
// where it is, or 0.
func locate(text []byte) (at map[string]int, tooDeep int) {
	if line := nestedTooDeep(text); line > 0 {
		return nil, line
	}
	text = bytes.TrimPrefix(text, []byte(byteOrderMark))
	l := locator{at: map[string]int{}, seen: map[string]int{}, text: text, line: 1}
	var p unstable.Parser
	p.Reset(text)
	for l.tooDeep == 0 && p.NextExpression() {
		l.expression(p.Expression())
	}
	return l.at, l.tooDeep
}

func (l *locator) expression(e *unstable.Node) {
	switch e.Kind {
	case unstable.Table:
		l.heading = l.keys("", e.Key())
		l.at[l.heading] = l.line // also where a table inside it came first
	case unstable.ArrayTable:
		array := l.keys("", e.Key())
		l.heading = element(array, l.seen[array])
		l.seen[array]++
		l.at[l.heading] = l.line
	case unstable.KeyValue:
		l.value(l.keys(l.heading, e.Key()), e.Value())
	}
}

// keys adds the parts of a dotted key to a path. The line of each is where it is named first. A
// part that is an array of tables means its latest element: "discount.row" after the second
// discount is "discount.1.row".
func (l *locator) keys(path string, parts unstable.Iterator) string {
	for parts.Next() {
		if n := l.seen[path]; n > 0 {
			path = element(path, n-1)
		}
		path = join(path, string(parts.Node().Data))
		l.note(path, parts.Node())
		if strings.Count(path, ".") >= mostParts {
			l.tooDeep = l.line
			break
		}
	}
	return path
}

// value notes the keys inside a value: the tables in braces.
func (l *locator) value(path string, v *unstable.Node) {
	if l.tooDeep > 0 {
		return
	}
	switch inside := v.Children(); v.Kind {
	case unstable.InlineTable:
		for inside.Next() {
			key := inside.Node()
			l.value(l.keys(path, key.Key()), key.Value())
		}
	case unstable.Array:
		for i := 0; inside.Next(); i++ {
			l.element(path, i, inside.Node())
		}
	}
}

func (l *locator) element(array string, i int, v *unstable.Node) {
	if v.Kind == unstable.InlineTable {
		path := element(array, i)
		l.note(path, v)
		l.value(path, v)
	}
}

func (l *locator) note(path string, n *unstable.Node) {
	l.advance(int(n.Raw.Offset))
	if _, known := l.at[path]; !known {
		l.at[path] = l.line
	}
}

// advance counts lines up to a place. Nodes come in the order of the text, so
// each line end is counted once, however long the file is.
func (l *locator) advance(offset int) {
	l.line += bytes.Count(l.text[l.counted:offset], []byte("\n"))
	l.counted = offset
}

func element(array string, i int) string { return array + "." + strconv.Itoa(i) }

// lineOf is the line of a path, or of the nearest table around it that the
// file shows; 0 when there is none. Around an element that is not there is the
// table that has the array, not the array's first element.
func lineOf(at map[string]int, path string) int {
	for path != "" {
		if n := at[path]; n > 0 {
			return n
		}
		var last string
		if path, last = around(path); isNumber(last) {
			path, _ = around(path)
		}
	}
	return 0
}

// around parts a path before its last key.
func around(path string) (table, key string) {
	dot := strings.LastIndexByte(path, '.')
	return path[:max(0, dot)], path[dot+1:]
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
