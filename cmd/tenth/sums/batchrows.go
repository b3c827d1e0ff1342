package sums

import (
	"bufio"
	"encoding/csv"
	"errors"
	"io"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/message"
)

// Bounds of a batch file, far beyond any real one: a mistaken file is refused in
// one sentence instead of filling the memory.
const (
	longestRow = 1 << 16 // bytes
	longestRun = 1 << 24 // bytes read without a line break before the file is given up
	mostCells  = 250     // columns
)

// batchRows reads a comma-separated file a line at a time. No cell of a batch
// holds a line break, so a quote that is opened by mistake spoils its own line
// and never the rows after it.
type batchRows struct {
	in   *bufio.Reader
	line int // of the row read last, counted from 1
}

func newBatchRows(in io.Reader) *batchRows {
	return &batchRows{in: bufio.NewReaderSize(in, longestRow)}
}

// spoiled is a line that cannot be taken apart; those after it can be read.
type spoiled struct{ error }

// Unwrap returns the reason.
func (s spoiled) Unwrap() []error { return []error{s.error} }

// next is the cells of the next line that is not empty; [io.EOF] after the last. A
// line that is [spoiled] does not end the file.
func (r *batchRows) next() ([]string, error) {
	for {
		text, err := r.nextLine()
		if err != nil {
			return nil, err
		}
		if text != "" {
			return batchCells(text)
		}
	}
}

// nextLine is the next line without its end.
func (r *batchRows) nextLine() (string, error) {
	bytes, err := r.in.ReadSlice('\n')
	r.line++
	switch {
	case errors.Is(err, bufio.ErrBufferFull):
		return "", r.pastLongLine()
	case err != nil && (!errors.Is(err, io.EOF) || len(bytes) == 0):
		return "", err
	}
	text := string(bytes)
	if r.line == 1 {
		text = strings.TrimPrefix(text, "\ufeff") // a spreadsheet's mark of UTF-8
	}
	return strings.TrimRight(text, "\r\n"), nil
}

// pastLongLine leaves the rest of a line unread that is longer than any row.
func (r *batchRows) pastLongLine() error {
	for run := longestRow; run < longestRun; run += longestRow {
		_, err := r.in.ReadSlice('\n')
		if errors.Is(err, bufio.ErrBufferFull) {
			continue
		}
		if err != nil && !errors.Is(err, io.EOF) {
			return err
		}
		return spoiled{terminal.Refusal("Look at the file for a line break that is missing", "the row is longer than %d bytes", longestRow)}
	}
	return terminal.Refusal("Name a file of comma-separated values", "line %d does not end within %d bytes: this is no table", r.line, longestRun)
}

func batchCells(line string) ([]string, error) {
	if !terminal.IsPlainText(line) {
		return nil, spoiled{terminal.Refusal("Save the file as UTF-8 and take out what cannot be printed", "the row has a control character, or bytes that are no UTF-8")}
	}
	if !strings.Contains(line, `"`) {
		return strings.Split(line, ","), nil
	}
	cells, err := csv.NewReader(strings.NewReader(line)).Read()
	if err != nil {
		return nil, spoiled{terminal.Refusal("Put a cell that holds a comma between two quotes on one line, and write a quote in it twice", "the row has a quote out of place")}
	}
	return cells, nil
}

// header reads the first row of a batch file. It reports a file that is not comma-separated values
// by what it is.
func (r *batchRows) header(file string) ([]string, error) {
	start, err := r.in.Peek(3)
	switch {
	case err != nil && len(start) == 0:
		return nil, terminal.Refusal(headHint(), "%s has no first row", file)
	case strings.HasPrefix(string(start), "\xff\xfe"), strings.HasPrefix(string(start), "\xfe\xff"):
		return nil, terminal.Refusal("Save it as comma-separated values in UTF-8", "%s is written in UTF-16", file)
	}
	cells, err := r.next()
	switch {
	case errors.As(err, new(spoiled)):
		return nil, atRow(file, r.line, err)
	case errors.Is(err, io.EOF):
		return nil, terminal.Refusal(headHint(), "%s has no first row", file)
	case err != nil:
		return nil, err
	case len(cells) > mostCells:
		return nil, terminal.Refusal(headHint(), "%s names %d columns; a batch has at most %d", file, len(cells), mostCells)
	}
	for mark, name := range map[string]string{";": "semicolons", "\t": "tabs"} {
		if len(cells) == 1 && strings.Contains(cells[0], mark) {
			return nil, terminal.Refusal("Save it with commas between the cells", "the cells of %s are parted by %s", file, message.Words(name))
		}
	}
	return cells, nil
}

// headHint lists the possible columns.
func headHint() string {
	return "The first row names the columns: " + strings.Join(batchColumns, ", ") + ", factor.ID"
}
