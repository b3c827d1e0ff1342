package rates

import (
	"tenthpoint/internal/dated"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// Set is all the editions an elevator has loaded, to find the one in force on a day.
type Set struct {
	*dated.Set[*Edition]
	breaks func(*Edition) tomlfile.Problems // nil: no edition breaks any
}

// NewSet gathers editions and checks them against each other, as [dated.NewSet] does.
func NewSet(editions ...*Edition) (*Set, tomlfile.Problems) {
	all, problems := dated.NewSet(editions...)
	return &Set{Set: all}, problems
}

// Dated is the edition among others.
func (e *Edition) Dated() dated.Edition {
	return dated.Edition{
		ID: e.ID, Line: e.line(), From: e.From, Until: e.Until, Corrects: e.Corrects,
		File: e.File, Text: e.Text, Head: "edition",
	}
}

// line is the series an edition belongs to: a commodity of a schedule.
func (e *Edition) line() string { return lineOf(e.Schedule, e.Commodity.ID) }

func lineOf(schedule, commodity string) string { return schedule + "/" + commodity }

// On returns the edition in force for a commodity of a schedule on the day of delivery; where one
// corrects another, the latest correction.
func (s *Set) On(schedule, commodity string, day quantity.Date) (*Edition, error) {
	line := lineOf(schedule, commodity)
	found, ok := s.Set.On(line, day)
	if !ok {
		return nil, message.NotFound.Errorf("no rates are in force for %s on %s in schedule %q. Editions here: %s. Add an edition for that day", commodity, day, schedule, s.Periods(line))
	}
	if s.breaks != nil {
		if problems := s.breaks(found).Err(); problems != nil {
			return nil, message.Refused.Errorf("edition %s is not used in an elevator licensed under the Canada Grain Act: %w", found.ID, problems)
		}
	}
	return found, nil
}

// UnderGrainAct returns the set for an elevator licensed under the Canada Grain Act: an edition
// that breaks its rules is in force on no day, and the error says why.
func (s *Set) UnderGrainAct() *Set {
	lawful := *s
	lawful.breaks = (*Edition).UnderGrainAct
	return &lawful
}

// Days are the days the edition is in force.
func (e *Edition) Days() message.Text { return e.Dated().Days() }

// Schedules lists the names of the schedules that have an edition for a
// commodity.
func (s *Set) Schedules(commodity string) []string {
	var out []string
	for _, e := range s.All() {
		if e.Commodity.ID == commodity && (len(out) == 0 || out[len(out)-1] != e.Schedule) {
			out = append(out, e.Schedule)
		}
	}
	return out
}
