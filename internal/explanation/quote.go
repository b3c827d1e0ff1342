package explanation

import (
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/rates"
)

// A row is a few lines and is quoted whole, since a figure without its range means nothing; of a
// longer table only the line itself, unless the table is meant.
const (
	mostOfRow  = 5
	mostOfRule = 14
)

// quote returns the text of the edition's file at the place a source names. It is empty for a
// source that is no place in the edition.
func quote(e *rates.Edition, source message.Text) (text string, line int) {
	if e == nil {
		return "", 0
	}
	line, isPlace := e.LineOf(source)
	lines := strings.Split(string(e.Text), "\n")
	if !isPlace || line < 1 || line > len(lines) {
		return "", 0
	}
	own, head := trimmed(lines[line-1]), heading(lines, line-1)
	if head < 0 {
		return own, line
	}
	block, most := under(lines, head), 0
	switch {
	case head == line-1:
		most = mostOfRule
	case strings.HasPrefix(trimmed(lines[head]), "[["):
		most = mostOfRow
	}
	if len(block) > most {
		return own, line
	}
	return strings.Join(block, "; "), line
}

// heading is the index of the table heading over a line, or -1.
func heading(lines []string, i int) int {
	for ; i >= 0; i-- {
		if strings.HasPrefix(trimmed(lines[i]), "[") {
			return i
		}
	}
	return -1
}

// under are the lines of a table, without its heading and without remarks.
func under(lines []string, head int) []string {
	var out []string
	for _, l := range lines[head+1:] {
		l = trimmed(l)
		if strings.HasPrefix(l, "[") {
			break
		}
		if l != "" && !strings.HasPrefix(l, "#") {
			out = append(out, l)
		}
	}
	return out
}

func trimmed(line string) string { return strings.TrimSpace(line) }
