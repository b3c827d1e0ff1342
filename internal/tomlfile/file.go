package tomlfile

import (
	"errors"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"

	"tenthpoint/internal/message"
)

// File is one file being read, with the problems found so far.
type File struct {
	Name     string
	lines    []string
	at       map[string]int // key path -> line
	problems Problems
	root     *Table
	form     form
	id       string // the name references begin with
}

// maxBytes bounds a file; the largest honest chart is a few hundred lines.
const maxBytes = 1 << 20

// Parse reads the text as TOML. The root table is always there, empty when the
// text is not TOML, so that callers need no second path.
func Parse(name string, text []byte) *File {
	f := &File{Name: name, lines: strings.Split(string(text), "\n"), form: inTOML{}}
	values := map[string]any{}
	if f.readable(text) {
		if err := toml.Unmarshal(text, &values); err != nil {
			values = map[string]any{}
			f.syntax(err)
		}
	}
	f.root = &Table{file: f, values: values, used: map[string]bool{}}
	return f
}

// readable locates the keys of the file and refuses files unlike any edition or chart, before
// spending time on decoding.
func (f *File) readable(text []byte) bool {
	if len(text) > maxBytes {
		f.add("", 0, message.New("the file has %d bytes; an edition or chart has at most %d", len(text), maxBytes), message.New("Check that this is the right file."))
		return false
	}
	var tooDeep int
	if f.at, tooDeep = locate(text); tooDeep > 0 {
		f.add("", tooDeep, message.New("a key stands more than %d tables deep", mostParts), message.New("Check that this is the right file."))
	}
	return tooDeep == 0
}

func (f *File) syntax(err error) {
	line, said := 0, err.Error()
	var parse toml.ParseError
	if errors.As(err, &parse) {
		line, said = parse.Position.Line, parse.Message
	}
	said = strings.Replace(said, `but got '\x00' instead`, "and the file ends there", 1)
	f.add("", line, message.New("this is not TOML: %v", said), message.Words("Mend the line; figures are written in quotes, like \"15.5 %\"."))
}

// SetID gives the name that references to the file begin with.
func (f *File) SetID(id string) { f.id = id }

// Root is the file's outermost table.
func (f *File) Root() *Table { return f.root }

// Read has body read all of the file, where it is TOML. The error is [Problems] with every mistake,
// keys that body did not ask for among them.
func (f *File) Read(body func(root *Table)) error {
	if err := f.Problems().Err(); err != nil {
		return err
	}
	body(f.root)
	f.root.RejectUnknownKeys()
	return f.Problems().Err()
}

// Problems returns the mistakes found so far, in the order of the file; keys missing from the whole
// file come first.
func (f *File) Problems() Problems {
	out := slices.Clone(f.problems)
	slices.SortStableFunc(out, func(a, b Problem) int { return a.Line - b.Line })
	return out
}

func (f *File) add(key string, line int, what, remedy message.Text) {
	p := Problem{File: f.Name, Line: line, Key: key, What: what, Remedy: remedy}
	if line > 0 && line <= len(f.lines) {
		p.Excerpt = strings.TrimSpace(f.lines[line-1])
	}
	f.problems = append(f.problems, p)
}
