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
