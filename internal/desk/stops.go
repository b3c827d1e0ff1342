package desk

import (
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
)

// stops are the doubts about a reading that stop a ticket in this house until a
// manager lets it through.
func (d *Desk) stops(l *load.Load) []string {
	var out []string
	for _, doubt := range entry.Stops(l, d.profile) {
		out = append(out, doubt.Refusal())
	}
	return out
}
