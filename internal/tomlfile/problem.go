package tomlfile

import (
	"strconv"

	"tenthpoint/internal/message"
)

// Problem is one mistake in a file: its place, what is wrong and the remedy.
type Problem struct {
	File    string
	Line    int // from 1; 0 when the mistake is something missing from the file
	Key     string
	Excerpt string // the line of the file
	What    message.Text
	Remedy  message.Text
}

// String is the problem in English, over two or three lines.
func (p Problem) String() string { return p.Message().String() }

// Message is the problem as people read it: its place, the mistake, the line of the file, and what
// to do.
func (p Problem) Message() message.Text {
	return message.List("\n    ", message.New("%v: %s", p.Place(), p.What), message.Own(p.Excerpt), p.Remedy)
}

// Place is the file with the line: "corn.toml:12".
func (p Problem) Place() string {
	if p.Line == 0 {
		return p.File
	}
	return p.File + ":" + strconv.Itoa(p.Line)
}

// Problems are all the mistakes found in a file or a set of files. As an error
// it shows every one.
type Problems []Problem

// Error lists the problems in English, one after another.
func (ps Problems) Error() string { return ps.Message().String() }

// Message is the list of the problems.
func (ps Problems) Message() message.Text { return message.Texts("\n", ps) }

// Unwrap gives the kind of every mistake in a file.
func (ps Problems) Unwrap() error { return message.Invalid }

// Err is the problems as an error, or nil when there are none.
func (ps Problems) Err() error {
	if len(ps) == 0 {
		return nil
	}
	return ps
}
