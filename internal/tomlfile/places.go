package tomlfile

import (
	"strings"

	"tenthpoint/internal/message"
)

// Places has the line of each key of a file, for later questions about a value already read: from a
// manager who reads an edition, or for a mistake that shows only beside other files.
type Places struct {
	file  string
	lines []string
	at    map[string]int
}

// Locate finds the lines of a TOML file's keys, without checking the file.
func Locate(file string, text []byte) Places {
	at, _ := locate(text)
	return Places{file: file, lines: strings.Split(string(text), "\n"), at: at}
}

// Line is the line of a key or table by its path, such as "shrink.to" or
// "discount.0.row.2", from 1; 0 when the file does not have it.
func (p Places) Line(path string) int { return p.at[path] }

// Problem returns a mistake at a key, with its line; where the file does not have the key, with the
// nearest heading around it.
func (p Places) Problem(path string, what, remedy message.Text) Problem {
	f := File{Name: p.file, lines: p.lines}
	f.add(path, lineOf(p.at, path), what, remedy)
	return f.problems[0]
}
