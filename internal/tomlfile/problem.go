package tomlfile

import (
	"fmt"
	"strings"
)

// Problem is one mistake in a file: where it is, what it is and what to do.
type Problem struct {
	File    string
	Line    int // from 1; 0 when the mistake is something missing from the file
	Key     string
	Excerpt string // the line as it stands
	What    string
	Remedy  string
}

// String is the problem as people read it, over two or three lines.
func (p Problem) String() string {
	var b strings.Builder
	b.WriteString(p.File)
	if p.Line > 0 {
		fmt.Fprintf(&b, ":%d", p.Line)
	}
	fmt.Fprintf(&b, ": %s", p.What)
	if p.Excerpt != "" {
		fmt.Fprintf(&b, "\n    %s", p.Excerpt)
	}
	if p.Remedy != "" {
		fmt.Fprintf(&b, "\n    %s", p.Remedy)
	}
	return b.String()
}

// Problems are all the mistakes found in a file or a set of files. As an error
// it shows every one.
type Problems []Problem

// Error lists the problems, one after another.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.String()
	}
	return strings.Join(lines, "\n")
}

// Err is the problems as an error, or nil when there are none.
func (ps Problems) Err() error {
	if len(ps) == 0 {
		return nil
	}
	return ps
}
