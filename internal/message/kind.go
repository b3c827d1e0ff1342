package message

import (
	"errors"
	"fmt"
)

// Kind classifies an error, for callers that act on it: errors.Is(err, message.NotFound). A kind is
// no sentence; people read the error's text.
type Kind string

const (
	// NotFound is something named that is not there.
	NotFound Kind = "not found"
	// Refused is an act that a rule or a role does not allow.
	Refused Kind = "refused"
	// NotSignedIn is an act that requires a signed-in person.
	NotSignedIn Kind = "not signed in"
	// WrongPhase is an act that cannot be done at this point of a load or a
	// dispute.
	WrongPhase Kind = "wrong phase"
	// Invalid means that the input is impossible.
	Invalid Kind = "invalid"
	// Incomplete is something that has to be known first.
	Incomplete Kind = "incomplete"
	// Storage is a book, file or disk that could not be read or written.
	Storage Kind = "storage"
	// ClockStepped is an act at a time that cannot follow the book's last fact, until somebody
	// explains the clock.
	ClockStepped Kind = "clock stepped"
	// Device is a scale, printer or line that did not answer as it should.
	Device Kind = "device"
)

// Error makes a kind the target of errors.Is.
func (k Kind) Error() string { return string(k) }

// Errorf is an error of the kind, by its English format.
func (k Kind) Errorf(format string, args ...any) error {
	if false {
		return fmt.Errorf(format, args...) // as in [Errorf]
	}
	return newError(k, format, args)
}

// KindOf is the kind of the outermost error that has one, or none. An error of a type of its own has
// the kind that it unwraps to.
func KindOf(err error) Kind {
	var typed interface{ Kind() Kind }
	if errors.As(err, &typed) {
		return typed.Kind()
	}
	var kind Kind
	errors.As(err, &kind)
	return kind
}
