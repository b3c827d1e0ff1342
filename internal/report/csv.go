package report

import (
	"encoding/csv"
	"io"
)

// CSV writes the table with a heading row, as RFC 4180 has it. Cells are
// written as they print.
func (t Table) CSV(w io.Writer) error {
	out := csv.NewWriter(w)
	titles := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		titles[i] = c.Title
	}
	if err := out.Write(titles); err != nil {
		return err
	}
	for _, r := range t.Rows {
		if err := out.Write(r.Cells); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}
