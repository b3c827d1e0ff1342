// Package fault collects everything that is wrong with a record, so that a
// person sees all of it at once and not one mistake at a time.
package fault

import "tenthpoint/internal/message"

// List is a list of faults, each a sentence that says what is wrong and what to do.
type List []error

// Unless adds a fault unless a condition holds.
func (l *List) Unless(ok bool, sentence string, args ...any) {
	if !ok {
		l.Add(sentence, args...)
	}
}

// Add appends a fault.
func (l *List) Add(sentence string, args ...any) {
	*l = append(*l, message.Invalid.Errorf(sentence, args...))
}
