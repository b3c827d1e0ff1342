package tomlfile

import (
	"strings"

	"tenthpoint/internal/message"
)

// form is the notation of a file. Problems use it in their remedies, so that nobody is told to
// write brackets into a spreadsheet.
type form interface {
	text(path, key string) string        // a key with a text
	flag(path, key, value string) string // a key with true or false
	missing(path string) message.Text    // that a table is missing
}

// inTOML is the everyday form.
type inTOML struct{}

func (inTOML) text(_, key string) string        { return key + ` = "…"` }
func (inTOML) flag(_, key, value string) string { return key + " = " + value }
func (inTOML) missing(path string) message.Text {
	return message.New("the table [%v] is missing", path)
}

// inLines is a file of lines such as "moisture,low,8 %".
type inLines struct{}

func (inLines) text(path, key string) string { return strings.Join([]string{path, key, "…"}, ",") }
func (inLines) flag(path, key, value string) string {
	return strings.Join([]string{path, key, value}, ",")
}
func (inLines) missing(path string) message.Text {
	return message.New("the lines %v,… are missing", path)
}

// Lines is a file that was not TOML but comma-separated lines, already taken
// apart: values as TOML would have given them, and the line of each path, as
// "moisture.low" or "row.0". The same getters and checks then read it.
func Lines(name string, text []byte, values map[string]any, at map[string]int) *File {
	f := &File{Name: name, lines: strings.Split(string(text), "\n"), at: at, form: inLines{}}
	f.root = &Table{file: f, values: values, used: map[string]bool{}}
	return f
}

// AddProblem writes a problem at a line of the file, from 1, or at the whole file.
func (f *File) AddProblem(line int, what, remedy message.Text) { f.add("", line, what, remedy) }
