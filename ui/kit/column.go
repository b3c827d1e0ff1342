package kit

import "fyne.io/fyne/v2"

// Column says how one column of a table looks.
type Column struct {
	ID    string
	Title string
	Width int            // in figures; at least this wide
	Wish  int            // in figures; this wide where there is room for all
	Spare int            // where there is no room for all, the highest goes first; 0 stays
	Grow  bool           // takes what room is left; at most one column should
	Align fyne.TextAlign // trailing for figures
	State bool           // shows the row's state: icon before the word, in its colour
}

// Row is one line of a table, ready to read.
type Row struct {
	Key   string // what identifies it from one SetRows to the next
	Cells []string
	State State
	// Struck rows no longer count: a line goes through them.
	Struck bool
	// Total rows are what the rows above add up to.
	Total bool
}

// cell gives the text of a column, or "" past the end: a row may be shorter
// than the table is wide.
func (r Row) cell(i int) string {
	if i < 0 || i >= len(r.Cells) {
		return ""
	}
	return r.Cells[i]
}
