package mirror

import (
	"errors"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
)

// Knows reports whether a kind of fact is known.
func Knows(kind string) bool {
	_, known := readers[kind]
	_, err := load.Read(kind, []byte("{}"))
	return known || !errors.Is(err, message.WrongPhase)
}
