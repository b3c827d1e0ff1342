// Package errortest matches errors in tests: by their kind, and the figures and names it gives. Its
// sentence may then be written better, and no test breaks.
package errortest

import (
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/message"
)

// Want is a matcher of errors. The zero Want matches no error.
type Want struct {
	kind  message.Kind
	names []string
}

// Kind wants an error of the kind, with all of these figures and names among its arguments, as they
// are written in English.
func Kind(kind message.Kind, names ...string) Want { return Want{kind, names} }

// Invalid wants an input that cannot be.
func Invalid(names ...string) Want { return Kind(message.Invalid, names...) }

// NotFound wants that something named is not there.
func NotFound(names ...string) Want { return Kind(message.NotFound, names...) }

// Refused wants a rule or a role that does not allow an act.
func Refused(names ...string) Want { return Kind(message.Refused, names...) }

// WrongPhase wants an act that comes too early or too late.
func WrongPhase(names ...string) Want { return Kind(message.WrongPhase, names...) }

// Incomplete wants that something has to be known first.
func Incomplete(names ...string) Want { return Kind(message.Incomplete, names...) }

// Device wants a scale, printer or line that does not do its work.
func Device(names ...string) Want { return Kind(message.Device, names...) }

// Met reports whether an error is as wanted. Of joined errors one must be.
func (w Want) Met(err error) bool {
	if w.kind == "" || err == nil {
		return w.kind == "" && err == nil
	}
	return slices.ContainsFunc(apart(err), w.isMetBy)
}

func (w Want) isMetBy(err error) bool {
	given := arguments(message.Of(err))
	return message.KindOf(err) == w.kind && !slices.ContainsFunc(w.names, func(name string) bool { return !slices.Contains(given, name) })
}

// String says what is wanted, for the report of a test.
func (w Want) String() string {
	if w.kind == "" {
		return "no error"
	}
	return fmt.Sprintf("an error %q that gives %q", string(w.kind), strings.Join(w.names, ", "))
}

// apart are the errors of a join, or the one error.
func apart(err error) []error {
	joined, is := err.(interface{ Unwrap() []error })
	if !is {
		return []error{err}
	}
	var all []error
	for _, one := range joined.Unwrap() {
		all = append(all, apart(one)...)
	}
	return all
}

// arguments are the figures and names in a text and in the texts that it is made of.
func arguments(text message.Text) []string {
	var all []string
	for _, arg := range text.Args() {
		switch arg := arg.(type) {
		case message.Own:
			all = append(all, string(arg))
		case message.Sayable:
			all = append(all, arguments(arg.Message())...)
		case error:
			all = append(all, arguments(message.Of(arg))...)
		default:
			all = append(all, fmt.Sprint(arg))
		}
	}
	return all
}
