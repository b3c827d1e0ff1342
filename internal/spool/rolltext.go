package spool

import (
	"errors"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Roll is the paper of a label or receipt printer: how many equal-width
// letters fit across, and how many empty lines must follow the last one so
// that it clears the tear bar. Both are the printer's, so both are settings.
type Roll struct {
	Columns int
	Feed    int
}

// RollText makes a plain text job of one copy for roll paper. Lines end in
// LF, trailing blanks are dropped and the roll is fed on at the end.
//
// A line too wide for the paper is refused, not folded: a figure broken over
// two lines is a wrong figure to whoever reads the first. All faults are
// returned together.
func RollText(name, text string, roll Roll) (Job, error) {
	var faults []error
	if roll.Columns < 1 || roll.Feed < 0 {
		faults = append(faults, fmt.Errorf("Roll paper of %d columns and %d feed lines cannot be printed on. Set at least 1 column and 0 feed lines.", roll.Columns, roll.Feed))
	}
	text = strings.ReplaceAll(text, "\r\n", "\n")
	lines := strings.Split(strings.TrimRight(text, " \n"), "\n")
	for i, line := range lines {
		lines[i] = strings.TrimRight(line, " ")
		faults = append(faults, lineFaults(name, i+1, lines[i], roll.Columns)...)
	}
	body := strings.Join(lines, "\n")
	if body != "" {
		body += "\n" + strings.Repeat("\n", max(roll.Feed, 0))
	}
	job := Job{Name: name, MIME: Text, Bytes: []byte(body), Copies: 1}
	if err := errors.Join(append(faults, job.Check())...); err != nil {
		return Job{}, err
	}
	return job, nil
}

func lineFaults(name string, number int, line string, columns int) []error {
	var faults []error
	if n := utf8.RuneCountInString(line); columns > 0 && n > columns {
		faults = append(faults, fmt.Errorf("Line %d of %q is %d letters wide and the roll holds %d: %d too many in %q. Shorten it or use wider paper.", number, name, n, columns, n-columns, line))
	}
	if strings.ContainsFunc(line, unicode.IsControl) {
		faults = append(faults, fmt.Errorf("Line %d of %q holds a control character, which a printer may take for an order. Remove it from %q.", number, name, line))
	}
	return faults
}
