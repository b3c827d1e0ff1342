package sums

import (
	"bufio"
	"encoding/csv"
	"errors"
	"io"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
)

// batchRows reads a comma-separated file a line at a time. No cell of a batch
// holds a line break, so a quote that is opened by mistake spoils its own line
// and never the rows after it.
type batchRows struct {
	in   *bufio.Reader
	line int // of the row read last, counted from 1
}

func newBatchRows(in io.Reader) *batchRows { return &batchRows{in: bufio.NewReader(in)} }

// next is the cells of the next line that is not empty; [io.EOF] after the last.
func (r *batchRows) next() ([]string, error) {
	for {
		text, err := r.in.ReadString('\n')
		if err != nil && (!errors.Is(err, io.EOF) || text == "") {
			return nil, err
		}
		r.line++
		if r.line == 1 {
			text = strings.TrimPrefix(text, "\ufeff") // a spreadsheet's mark of UTF-8
		}
		if text = strings.TrimRight(text, "\r\n"); text != "" {
			return batchCells(text)
		}
	}
}

// errQuote is a line that cannot be taken apart; those after it can be read.
var errQuote = terminal.Refusal("Put a cell that holds a comma between two quotes on one line, and write a quote in it twice", "the row has a quote out of place")

func batchCells(line string) ([]string, error) {
	if !strings.Contains(line, `"`) {
		return strings.Split(line, ","), nil
	}
	cells, err := csv.NewReader(strings.NewReader(line)).Read()
	if err != nil {
		return nil, errQuote
	}
	return cells, nil
}
