package model

// Column says how one column of a table looks.
type Column struct {
	Title   string
	Width   int  // in figures; at least this wide
	Wish    int  // in figures; this wide where there is room for all
	Drop    int  // where there is no room for all, the highest is left out first; 0 always stays
	Grow    bool // takes what room is left; at most one column should
	Figures bool // text at the right, as figures are set
	State   bool // shows the row's state: icon before the word, in its colour
}

// ColumnOf is a column for rows of one type, with the function that returns its cell. Made by
// [Words] or [Figures].
type ColumnOf[R any] struct {
	Column
	Cell func(R) string
}

// Words is a column of words, so many figures wide.
func Words[R any](title string, width int, cell func(R) string) ColumnOf[R] {
	return ColumnOf[R]{Column{Title: title, Width: width}, cell}
}

// Figures is a column of figures, so many of them wide.
func Figures[R any](title string, width int, cell func(R) string) ColumnOf[R] {
	return ColumnOf[R]{Column{Title: title, Width: width, Figures: true}, cell}
}

// Dropped is the column left out where there is no room for all; of several the
// one with the highest rank goes first.
func (c ColumnOf[R]) Dropped(rank int) ColumnOf[R] { c.Drop = rank; return c }

// Wishing is the column so wide where there is room for all.
func (c ColumnOf[R]) Wishing(width int) ColumnOf[R] { c.Wish = width; return c }

// Growing is the column taking what room is left.
func (c ColumnOf[R]) Growing() ColumnOf[R] { c.Grow = true; return c }

// Stated is the column showing the row's state.
func (c ColumnOf[R]) Stated() ColumnOf[R] { c.State = true; return c }

// Columns are the columns of a table of one kind of rows, in their order.
type Columns[R any] []ColumnOf[R]

// Heads are the columns without their cells, as a table takes them.
func (c Columns[R]) Heads() []Column {
	out := make([]Column, len(c))
	for i, column := range c {
		out[i] = column.Column
	}
	return out
}

// Cells are the texts of one row.
func (c Columns[R]) Cells(row R) []string {
	out := make([]string, len(c))
	for i, column := range c {
		out[i] = column.Cell(row)
	}
	return out
}
