package report

import (
	"unicode/utf8"

	"github.com/xuri/excelize/v2"
)

// widths makes each column of a sheet as wide as its content, within limits, in characters.
func (b *workbook) widths(sheet string, t printed) {
	for c, column := range t.columns {
		widest := min(utf8.RuneCountInString(column.title), 12) // titles wrap
		for _, row := range t.rows {
			widest = max(widest, utf8.RuneCountInString(row.cells[c]))
		}
		letter, err := excelize.ColumnNumberToName(c + 1)
		b.must(err)
		b.must(b.SetColWidth(sheet, letter, letter, float64(min(widest, 50)+2)))
	}
}
