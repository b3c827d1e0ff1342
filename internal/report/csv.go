package report

import (
	"encoding/csv"
	"io"

	"tenthpoint/internal/i18n"
)

// CSV writes one of the document's tables with a heading row, as RFC 4180 has it. Figures are
// written without commas between thousands, so that programs can read them.
func (d Document) CSV(w io.Writer, t Table) error {
	t = t.spoken(i18n.For(d.Language).Say)
	out := csv.NewWriter(w)
	if err := out.Write(t.titles()); err != nil {
		return err
	}
	for _, r := range t.Rows {
		cells := make([]string, len(r.Cells))
		for i, printed := range r.Cells {
			cells[i] = t.Columns[i].cell(printed)
		}
		if err := out.Write(cells); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}
