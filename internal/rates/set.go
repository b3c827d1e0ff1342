package rates

import (
	"sort"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// Set is all the editions an elevator has loaded, to find the one in force on a day.
type Set struct {
	editions []*Edition
	byID     map[string]*Edition
	breaks   func(*Edition) tomlfile.Problems // nil: no edition breaks any
}

// NewSet gathers editions and checks them against each other: no id twice, no two in force for one
// commodity of one schedule on one day (unless one corrects the other), no days left out between
// them, and every corrected edition present. All problems are returned at once, each at the line of
// the edition to look at.
func NewSet(editions ...*Edition) (*Set, tomlfile.Problems) {
	s := &Set{byID: map[string]*Edition{}}
	var problems tomlfile.Problems
	for _, e := range editions {
		if old, taken := s.byID[e.ID]; taken {
			problems = append(problems, e.clash("id", message.New("two editions are called %v, here and in %v", e.ID, old.File), message.New("Give one of them a new id.")))
			continue
		}
		s.byID[e.ID] = e
		s.editions = append(s.editions, e)
	}
	sort.Slice(s.editions, func(i, j int) bool { return s.less(s.editions[i], s.editions[j]) })
	return s, append(problems, s.check()...)
}

func (s *Set) less(a, b *Edition) bool {
	if a.line() != b.line() {
		return a.line() < b.line()
	}
	if c := a.From.Cmp(b.From); c != 0 {
		return c < 0
	}
	return a.ID < b.ID
}

// line is the series an edition belongs to: a commodity of a schedule.
func (e *Edition) line() string { return e.Schedule + "/" + e.Commodity.ID }

// On returns the edition in force for a commodity of a schedule on the day of delivery; where one
// corrects another, the latest correction.
func (s *Set) On(schedule, commodity string, day quantity.Date) (*Edition, error) {
	var found *Edition
	for _, e := range s.editions {
		inForce := e.Schedule == schedule && e.Commodity.ID == commodity && day.Between(e.From, e.Until)
		if inForce && (found == nil || s.corrects(e, found)) {
			found = e
		}
	}
	if found == nil {
		return nil, message.Errorf("no rates are in force for %s on %s in schedule %q. Editions here: %s. Add an edition for that day", commodity, day, schedule, s.periods(schedule, commodity))
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

func (s *Set) periods(schedule, commodity string) message.Text {
	var out []any
	for _, e := range s.editions {
		if e.Schedule == schedule && e.Commodity.ID == commodity {
			out = append(out, message.New("%v (%s)", e.ID, e.Days()))
		}
	}
	if len(out) == 0 {
		return message.New("none")
	}
	return message.List(", ", out...)
}

// Days are the days the edition is in force.
func (e *Edition) Days() message.Text {
	if e.Until.IsZero() {
		return message.New("from %s", e.From)
	}
	return message.New("%s to %s", e.From, e.Until)
}

// ByID finds an edition.
func (s *Set) ByID(id string) (*Edition, bool) {
	e, ok := s.byID[id]
	return e, ok
}

// All lists the editions by schedule, commodity and first day.
func (s *Set) All() []*Edition { return s.editions }

// Schedules lists the names of the schedules that have an edition for a
// commodity.
func (s *Set) Schedules(commodity string) []string {
	var out []string
	for _, e := range s.editions {
		if e.Commodity.ID == commodity && (len(out) == 0 || out[len(out)-1] != e.Schedule) {
			out = append(out, e.Schedule)
		}
	}
	return out
}
