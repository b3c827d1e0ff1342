package message

import (
	"errors"
	"fmt"
	"reflect"
	"strings"
)

// Error is a text that is an error. It wraps the errors that its format sets by %w.
type Error struct {
	text    Text
	kind    Kind
	wrapped error // several are joined
}

// Errorf makes an error from its English format. Errors wrapped by %w are found by errors.Is and
// errors.As, and give the error its kind.
func Errorf(format string, args ...any) error {
	if false {
		return fmt.Errorf(format, args...) // never done: it lets go vet check every call
	}
	return newError("", format, args)
}

// Err is a text as an error of a kind.
func Err(kind Kind, text Text) error { return &Error{text: text, kind: kind} }

// Errs are texts as joined errors of a kind, or nil when there are none.
func Errs(kind Kind, texts []Text) error {
	all := make([]error, len(texts))
	for i, text := range texts {
		all[i] = Err(kind, text)
	}
	return errors.Join(all...)
}

func newError(kind Kind, format string, args []any) error {
	e := &Error{text: New(format, args...), kind: kind}
	var wrapped []error
	for _, v := range verbsOf(format) {
		if v.letter != 'w' || v.arg >= len(args) {
			continue
		}
		if err, is := args[v.arg].(error); is {
			wrapped = append(wrapped, err)
		}
	}
	e.wrapped = errors.Join(wrapped...)
	if len(wrapped) == 1 {
		e.wrapped = wrapped[0]
	}
	if e.kind == "" {
		e.kind = KindOf(e.wrapped)
	}
	return e
}

// Error is the text in English.
func (e *Error) Error() string { return e.text.String() }

// Message is the text.
func (e *Error) Message() Text { return e.text }

// Kind returns the kind of the error, or none.
func (e *Error) Kind() Kind { return e.kind }

// Is reports whether a target is the error's kind.
func (e *Error) Is(target error) bool {
	kind, is := target.(Kind)
	return is && kind != "" && e.kind == kind
}

// Unwrap returns the wrapped error.
func (e *Error) Unwrap() error { return e.wrapped }

// Of returns the text of any error. The lines of joined errors stay lines; an error from outside
// the program is unchanged.
func Of(err error) Text {
	switch e := err.(type) {
	case nil:
		return Text{}
	case Sayable:
		return e.Message()
	case interface{ Unwrap() []error }:
		if reflect.TypeOf(err) != joined {
			break
		}
		parts := e.Unwrap()
		lines := make([]any, len(parts))
		for i, one := range parts {
			lines[i] = Of(one)
		}
		return List("\n", lines...)
	}
	return Words(err.Error())
}

// joined is the type of joined errors, which say a line each.
var joined = reflect.TypeOf(errors.Join(Invalid))

// Lines are the lines of an error: one text, or those of joined errors.
func Lines(err error) []Text { return linesOf(Of(err)) }

func linesOf(t Text) []Text {
	if t.IsZero() {
		return nil
	}
	var out []Text
	if t.form == literal { // from outside the program
		for line := range strings.Lines(t.key) {
			if line = strings.TrimSpace(line); line != "" {
				out = append(out, Words(line))
			}
		}
		return out
	}
	if t.form != list || t.key != "\n" {
		return []Text{t}
	}
	for _, item := range t.args {
		line, is := item.(Sayable)
		if !is {
			line = Words(english(item))
		}
		out = append(out, linesOf(line.Message())...)
	}
	return out
}
