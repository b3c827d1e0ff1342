package tomlfile

import (
	"errors"
	"fmt"
	"strings"

	"github.com/BurntSushi/toml"
)

// File is one file being read, with the problems found so far.
type File struct {
	Name     string
	lines    []string
	at       map[string]int // key path -> line
	problems Problems
	root     *Table
}

// maxBytes bounds a file; the largest honest chart is a few hundred lines.
const maxBytes = 1 << 20

// Parse reads the text as TOML. The root table is always there, empty when the
// text is not TOML, so that callers need no second path.
func Parse(name string, text []byte) *File {
	f := &File{Name: name, lines: strings.Split(string(text), "\n")}
	f.at = locate(f.lines)
	values := map[string]any{}
	if len(text) > maxBytes {
		f.add("", 0, fmt.Sprintf("the file has %d bytes; an edition or chart has at most %d", len(text), maxBytes), "Check that this is the right file.")
	} else if err := toml.Unmarshal(text, &values); err != nil {
		values = map[string]any{}
		f.syntax(err)
	}
	f.root = &Table{file: f, values: values, used: map[string]bool{}}
	return f
}

func (f *File) syntax(err error) {
	var parse toml.ParseError
	if errors.As(err, &parse) {
		f.add("", parse.Position.Line, "this is not TOML: "+parse.Message, "Mend the line; figures are written in quotes, like \"15.5 %\".")
		return
	}
	f.add("", 0, "this is not TOML: "+err.Error(), "")
}

// Root is the file's outermost table.
func (f *File) Root() *Table { return f.root }

// Problems are the mistakes found so far, in the order of the file.
func (f *File) Problems() Problems { return f.problems }

func (f *File) add(key string, line int, what, remedy string) {
	p := Problem{File: f.Name, Line: line, Key: key, What: what, Remedy: remedy}
	if line > 0 && line <= len(f.lines) {
		p.Excerpt = strings.TrimSpace(f.lines[line-1])
	}
	f.problems = append(f.problems, p)
}

// locate notes the line on which each key path stands. Elements of an array of
// tables are numbered from 0: "discount.0.factor".
func locate(lines []string) map[string]int {
	at := map[string]int{}
	seen := map[string]int{}
	prefix := ""
	for i, line := range lines {
		line = strings.TrimSpace(line)
		switch {
		case strings.HasPrefix(line, "[["):
			prefix = arrayPath(headerName(line), seen)
			at[prefix] = i + 1
		case strings.HasPrefix(line, "["):
			prefix = parentPath(headerName(line), seen)
			at[prefix] = i + 1
		default:
			if key, _, ok := strings.Cut(line, "="); ok && !strings.HasPrefix(line, "#") {
				at[join(prefix, strings.Trim(strings.TrimSpace(key), `"`))] = i + 1
			}
		}
	}
	return at
}

func headerName(line string) string {
	name, _, _ := strings.Cut(line, "]")
	return strings.TrimSpace(strings.TrimLeft(name, "["))
}

// arrayPath gives the next element of an array of tables its number and
// forgets the numbers of arrays inside the element before it.
func arrayPath(name string, seen map[string]int) string {
	path := parentPath(name, seen)
	n := seen[path]
	seen[path] = n + 1
	element := fmt.Sprintf("%s.%d", path, n)
	for p := range seen {
		if strings.HasPrefix(p, element+".") {
			delete(seen, p)
		}
	}
	return element
}

// parentPath puts the number of the current element into a dotted name:
// "discount.row" inside the second discount is "discount.1.row".
func parentPath(name string, seen map[string]int) string {
	parts := strings.Split(name, ".")
	path := parts[0]
	for _, part := range parts[1:] {
		if n := seen[path]; n > 0 {
			path = fmt.Sprintf("%s.%d", path, n-1)
		}
		path = join(path, part)
	}
	return path
}

func join(prefix, key string) string {
	if prefix == "" {
		return key
	}
	return prefix + "." + key
}
