package entry

import (
	"slices"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
)

// Doubt is a flag on a reading that stops the ticket.
type Doubt struct {
	Code     string
	Sentence message.Text
	Final    bool // nobody may let it through
	ours     bool // this elevator stops a ticket for it, others would not
}

// Stops are the warnings about a load's readings that stop its ticket until a manager lets it
// through: those of the bench, and the flags that this elevator stops a ticket for. A moisture
// typed again loses the earlier ones.
func Stops(l *load.Load, p elevator.Profile) []Doubt {
	var out []Doubt
	for _, flag := range l.Sample.Flags {
		if slices.Contains(p.StopOn, flag.Code) && !Accepted(l, flag.Code) {
			out = append(out, Doubt{Code: flag.Code, Sentence: flag.Message(), ours: true})
		}
	}
	for _, stop := range l.Sample.Stops {
		if stop.Final || !Accepted(l, stop.Code) {
			out = append(out, Doubt{Code: stop.Code, Sentence: stop.Sentence.Message(), Final: stop.Final})
		}
	}
	return out
}

// Refusal returns the flag as an error that says what can be done.
func (d Doubt) Refusal() message.Text {
	switch {
	case d.Final:
		return d.Sentence
	case d.ours:
		return message.New("%s This elevator stops a ticket for it: test again, or let a manager accept %q.", d.Sentence, d.Code)
	}
	return message.New("%s This stops the ticket: test again, or let a manager accept %q.", d.Sentence, d.Code)
}

// Accepted reports whether a manager has accepted a limit.
func Accepted(l *load.Load, limit string) bool {
	return slices.ContainsFunc(l.Accepted, func(a load.AcceptedLimit) bool { return a.Limit == limit })
}
