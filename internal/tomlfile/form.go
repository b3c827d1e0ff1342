package tomlfile

import (
	"fmt"
	"strings"
)

// form is how a file writes things down. Problems quote it in their remedies,
// so that nobody is told to write brackets into a spreadsheet.
type form interface {
	text(path, key string) string        // a key with a text
	flag(path, key, value string) string // a key with true or false
	table(path string) string            // a table, in a sentence
}

// inTOML is the everyday form.
type inTOML struct{}

func (inTOML) text(_, key string) string        { return fmt.Sprintf("%s = \"…\"", key) }
func (inTOML) flag(_, key, value string) string { return key + " = " + value }
func (inTOML) table(path string) string         { return fmt.Sprintf("the table [%s] is missing", path) }

// inLines is a file of lines such as "moisture,low,8 %".
type inLines struct{}

func (inLines) text(path, key string) string { return strings.Join([]string{path, key, "…"}, ",") }
func (inLines) flag(path, key, value string) string {
	return strings.Join([]string{path, key, value}, ",")
}
func (inLines) table(path string) string { return fmt.Sprintf("the lines %s,… are missing", path) }

// Lines is a file that was not TOML but comma-separated lines, already taken
// apart: values as TOML would have given them, and the line of each path, as
// "moisture.low" or "row.0". The same getters and checks then read it.
func Lines(name string, text []byte, values map[string]any, at map[string]int) *File {
	f := &File{Name: name, lines: strings.Split(string(text), "\n"), at: at, form: inLines{}}
	f.root = &Table{file: f, values: values, used: map[string]bool{}}
	return f
}

// AddProblem writes a problem at a line of the file, from 1, or at the whole file.
func (f *File) AddProblem(line int, what, remedy string) { f.add("", line, what, remedy) }
