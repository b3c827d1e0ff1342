package model

// Row is one line of a table, ready to read.
type Row struct {
	Key   string // what identifies it from one SetRows to the next
	Cells []string
	State State
	// Struck rows no longer count: a line goes through them.
	Struck bool
	// Total marks a row that is the sum of the rows above.
	Total bool
}

// Cell returns the text of a column, or "" past the end: a row may have fewer cells than the table
// has columns.
func (r Row) Cell(i int) string {
	if i < 0 || i >= len(r.Cells) {
		return ""
	}
	return r.Cells[i]
}
