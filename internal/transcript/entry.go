package transcript

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// Entry is one command line and its result.
type Entry struct {
	Now    string   // clock of the command, such as "2026-10-01 13:00"
	Args   []string // after "tenth"
	Out    string   // standard output
	Err    string   // standard error
	Status int      // exit status
}

// Line returns the command line as typed.
func (e Entry) Line() string {
	words := make([]string, len(e.Args))
	for i, arg := range e.Args {
		words[i] = quote(arg)
	}
	return "tenth " + strings.Join(words, " ")
}

// What a line of a transcript begins with.
const (
	nowMark    = "now "
	lineMark   = "$ "
	outMark    = "| "
	errMark    = "! "
	statusMark = "= "
	unended    = `\` // after a last line that has no end
)

// Write encodes entries as text.
func Write(w io.Writer, entries []Entry) error {
	now, b := "", bufio.NewWriter(w)
	for _, e := range entries {
		if e.Now != now {
			fmt.Fprintln(b, nowMark+e.Now)
			now = e.Now
		}
		fmt.Fprintln(b, lineMark+e.Line())
		writeLines(b, outMark, e.Out)
		writeLines(b, errMark, e.Err)
		if e.Status != 0 {
			fmt.Fprintf(b, "%s%d\n", statusMark, e.Status)
		}
	}
	return b.Flush()
}

func writeLines(b *bufio.Writer, mark, text string) {
	for line := range strings.Lines(text) {
		whole, ended := strings.CutSuffix(line, "\n")
		fmt.Fprintln(b, mark+whole)
		if !ended {
			fmt.Fprintln(b, unended+mark)
		}
	}
}

// Read parses the output of [Write]. It skips empty lines and lines beginning with #, so that
// command lines may also be written by hand.
func Read(r io.Reader) ([]Entry, error) {
	var p reader
	lines := bufio.NewScanner(r)
	lines.Buffer(nil, 1<<24)
	for n := 1; lines.Scan(); n++ {
		if err := p.take(lines.Text()); err != nil {
			return nil, fmt.Errorf("line %d: %w", n, err)
		}
	}
	return p.entries, lines.Err()
}

type reader struct {
	now     string
	entries []Entry
}

// last returns the entry that output belongs to; before the first command line it is discarded.
func (p *reader) last() *Entry {
	if len(p.entries) == 0 {
		return &Entry{}
	}
	return &p.entries[len(p.entries)-1]
}

func (p *reader) take(line string) (err error) {
	mark, rest := line, ""
	if len(line) >= len(outMark) {
		mark, rest = line[:len(outMark)], line[len(outMark):]
	}
	last := p.last()
	switch {
	case line == "" || strings.HasPrefix(line, "#"):
	case strings.HasPrefix(line, nowMark):
		p.now = strings.TrimPrefix(line, nowMark)
	case mark == lineMark:
		words, err := split(rest)
		if err != nil {
			return err
		}
		if len(words) == 0 || words[0] != "tenth" {
			return fmt.Errorf("%q is not a command line of tenth", rest)
		}
		p.entries = append(p.entries, Entry{Now: p.now, Args: words[1:]})
	case mark == outMark:
		last.Out += rest + "\n"
	case mark == errMark:
		last.Err += rest + "\n"
	case line == unended+outMark:
		last.Out = strings.TrimSuffix(last.Out, "\n")
	case line == unended+errMark:
		last.Err = strings.TrimSuffix(last.Err, "\n")
	case mark == statusMark:
		last.Status, err = strconv.Atoi(rest)
	default:
		return fmt.Errorf("%q is no line of a transcript", line)
	}
	return err
}
