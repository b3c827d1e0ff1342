package mirror

import "tenthpoint/internal/load"

// Knows reports whether a kind of fact is known.
func Knows(kind string) bool {
	_, known := readers[kind]
	return known || load.Knows(kind)
}
