package settle

import "strings"

// Problem is one reason why a load cannot be settled.
type Problem struct {
	// Field names what is missing or wrong: "gross", "tare", "moisture", a
	// factor's id, "price", "shares", "edition".
	Field string
	// Sentence says what, the arithmetic and what to do.
	Sentence string
	// Accept is the id of the limit a manager may accept; empty when nobody
	// may.
	Accept string
}

// Problems are all the reasons at once.
type Problems []Problem

// Error shows every sentence on a line of its own.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.Sentence
	}
	return strings.Join(lines, "\n")
}
