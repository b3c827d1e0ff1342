package desk

import (
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/load"
)

// ticketStops are the doubts about a reading that stop a ticket in this house until a
// manager lets it through. A flag begins with its code, "too-cold: …".
func ticketStops(d *Desk, l *load.Load) []string {
	var out []string
	for _, flag := range l.Sample.Flags {
		code, sentence, _ := strings.Cut(flag, ": ")
		if slices.Contains(d.profile.StopOn, code) && !accepted(l, code) {
			out = append(out, fmt.Sprintf("%s This elevator stops a ticket for it: test again, or let a manager accept %q.", sentence, code))
		}
	}
	for _, stop := range l.Sample.Stops {
		switch {
		case stop.Final:
			out = append(out, stop.Sentence)
		case !accepted(l, stop.Code):
			out = append(out, fmt.Sprintf("%s This stops the ticket: test again, or let a manager accept %q.", stop.Sentence, stop.Code))
		}
	}
	return out
}

func accepted(l *load.Load, limit string) bool {
	return slices.ContainsFunc(l.Accepted, func(a load.AcceptedLimit) bool { return a.Limit == limit })
}
