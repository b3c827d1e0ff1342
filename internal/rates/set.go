package rates

import (
	"slices"

	"tenthpoint/internal/dated"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// Set is all the editions an elevator has loaded, to find the one in force on a day.
type Set struct {
	*dated.Set[*Edition]
	breaks func(*Edition) tomlfile.Problems // nil: no edition breaks any
	office []*Edition                       // of a head office, the one that began last first
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
	found, ok := s.officeOn(line, day)
	if !ok {
		found, ok = s.Set.On(line, day)
	}
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

// Under returns the set of a site that has a head office. On a day for which the office has an edition
// of a line, that one is in force, whatever the site has; of several the one that began last.
func (s *Set) Under(office ...*Edition) *Set {
	if s == nil || len(office) == 0 {
		return s
	}
	all := slices.Clone(office)
	for _, e := range s.All() {
		if !slices.ContainsFunc(office, func(o *Edition) bool { return o.ID == e.ID }) {
			all = append(all, e)
		}
	}
	both, _ := dated.NewSet(all...) // the two are not held against each other: the office goes before
	ours := slices.Clone(office)
	slices.SortStableFunc(ours, func(a, b *Edition) int { return b.From.Cmp(a.From) })
	return &Set{Set: both, breaks: s.breaks, office: ours}
}

// IsOffices reports whether an edition is one of the head office.
func (s *Set) IsOffices(e *Edition) bool { return slices.Contains(s.office, e) }

// officeOn is the edition of the head office in force for a line on a day.
func (s *Set) officeOn(line string, day quantity.Date) (*Edition, bool) {
	for _, e := range s.office {
		if e.line() == line && day.Between(e.From, e.Until) {
			return e, true
		}
	}
	return nil, false
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
