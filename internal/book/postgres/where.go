package postgres

import (
	"fmt"
	"strings"
)

// where collects the conditions on a row. A condition has a question mark for each argument; the
// server numbers them.
type where struct {
	all  []string
	args []any
}

func (w *where) add(condition string, args ...any) {
	for _, arg := range args {
		w.args = append(w.args, arg)
		condition = strings.Replace(condition, "?", fmt.Sprintf("$%d", len(w.args)), 1)
	}
	w.all = append(w.all, condition)
}

// text is a condition that a column has a value, if there is one.
func (w *where) text(column, value string) {
	if value != "" {
		w.add(column+" = ?", value)
	}
}

// number is the same for numbers of tickets.
func (w *where) number(column string, n int64) {
	if n != 0 {
		w.add(column+" = ?", n)
	}
}

// from and to bound a column of days; what has no day is in no span.
func (w *where) from(column, day string) {
	if day != "" {
		w.add(column+" >= ?", day)
	}
}

func (w *where) to(column, day string) {
	if day != "" {
		w.add(column+" <= ? AND "+column+" <> ''", day)
	}
}

func (w *where) String() string {
	if len(w.all) == 0 {
		return ""
	}
	return " WHERE " + strings.Join(w.all, " AND ")
}

// part is a pattern for a text that contains a person's words, whose own signs mean nothing.
func part(words string) string { return "%" + likeWords.Replace(words) + "%" }

var likeWords = strings.NewReplacer("!", "!!", "%", "!%", "_", "!_")
