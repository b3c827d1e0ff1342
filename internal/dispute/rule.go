package dispute

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Rule is how long a doubt may wait, by a rule set.
type Rule struct {
	Name         string // as elevator.Profile.Rules has it
	Days         int    // last day to ask for another test, counted from the ticket
	BusinessDays bool   // Saturdays and Sundays do not count
	Source       string
}

// Rules are the rule sets known here. Local law goes before any of them.
var Rules = []Rule{
	{Name: "canada", Days: 7, Source: "Canada: a test by the official laboratory is asked for within 7 calendar days"},
	{Name: "us", Days: 2, BusinessDays: true, Source: "US: federal reinspection is asked for by the close of the second business day"},
}

// RuleFor finds a rule set.
func RuleFor(name string) (Rule, error) {
	for _, r := range Rules {
		if r.Name == name {
			return r, nil
		}
	}
	return Rule{}, message.WrongPhase.Errorf("%q is not a rule set for disputes; choose \"us\" or \"canada\" in the set-up", name)
}

// Due is the last day to ask for another test of a ticket issued on a day.
func (r Rule) Due(issued quantity.Date) quantity.Date {
	if !r.BusinessDays {
		return issued.AddDays(r.Days)
	}
	due := issued
	for left := r.Days; left > 0; {
		due = due.AddDays(1)
		if !isWeekend(due) {
			left--
		}
	}
	return due
}

// aSaturday is a day known to be a Saturday, to count weeks from.
var aSaturday = quantity.MustDate("2000-01-01")

func isWeekend(d quantity.Date) bool {
	n := aSaturday.DaysUntil(d) % 7
	return n == 0 || n == 1 || n == -6
}
