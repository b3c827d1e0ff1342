package entry

import (
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
)

// Doubt is a flag on a reading that stops the ticket.
type Doubt struct {
	Code     string
	Sentence string
	Final    bool // nobody may let it through
	ours     bool // this elevator stops a ticket for it, others would not
}

// Stops are the warnings about a load's readings that stop its ticket until a manager lets it
// through: those of the bench, and the flags that this elevator stops a ticket for. A moisture
// typed again loses the earlier ones.
func Stops(l *load.Load, p elevator.Profile) []Doubt {
	var out []Doubt
	for _, flag := range l.Sample.Flags {
		code, words := flagParts(flag)
		if slices.Contains(p.StopOn, code) && !Accepted(l, code) {
			out = append(out, Doubt{Code: code, Sentence: words, ours: true})
		}
	}
	for _, stop := range l.Sample.Stops {
		if stop.Final || !Accepted(l, stop.Code) {
			out = append(out, Doubt{Code: stop.Code, Sentence: stop.Sentence, Final: stop.Final})
		}
	}
	return out
}

// Refusal returns the flag as an error that says what can be done.
func (d Doubt) Refusal() string {
	switch {
	case d.Final:
		return d.Sentence
	case d.ours:
		return fmt.Sprintf("%s This elevator stops a ticket for it: test again, or let a manager accept %q.", d.Sentence, d.Code)
	}
	return fmt.Sprintf("%s This stops the ticket: test again, or let a manager accept %q.", d.Sentence, d.Code)
}

// flagParts are the code a flag begins with, "too-cold: …", and its words.
func flagParts(flag string) (code, words string) {
	code, words, coded := strings.Cut(flag, ": ")
	if !coded {
		return "", flag
	}
	return code, words
}

// Accepted reports whether a manager has accepted a limit.
func Accepted(l *load.Load, limit string) bool {
	return slices.ContainsFunc(l.Accepted, func(a load.AcceptedLimit) bool { return a.Limit == limit })
}
