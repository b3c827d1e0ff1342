package desk

import "strings"

// sentences is several things wrong at once, each a sentence.
type sentences []string

// Error shows every sentence on a line of its own.
func (s sentences) Error() string { return strings.Join(s, "\n") }
