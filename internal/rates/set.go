package rates

import (
	"fmt"
	"sort"
	"strings"

	"tenthpoint/internal/quantity"
)

// Set is all the editions an elevator has loaded. It knows which one is in
// force on a day.
type Set struct {
	editions []*Edition
	byID     map[string]*Edition
}

// NewSet gathers editions and checks them against each other: no id twice, no
// two in force for one commodity of one schedule on one day (unless one
// corrects the other), no days left out between them, and every corrected
// edition present. All problems come back at once, each a sentence.
func NewSet(editions ...*Edition) (*Set, []string) {
	s := &Set{byID: map[string]*Edition{}}
	var problems []string
	for _, e := range editions {
		if old, taken := s.byID[e.ID]; taken {
			problems = append(problems, fmt.Sprintf("Two editions are called %s (%q and %q). Give one a new id.", e.ID, old.Title, e.Title))
			continue
		}
		s.byID[e.ID] = e
		s.editions = append(s.editions, e)
	}
	sort.Slice(s.editions, func(i, j int) bool { return s.less(s.editions[i], s.editions[j]) })
	problems = append(problems, s.checkCorrections()...)
	problems = append(problems, s.checkPeriods()...)
	return s, problems
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

// line is what editions follow each other in: a commodity of a schedule.
func (e *Edition) line() string { return e.Schedule + "/" + e.Commodity.ID }

func (s *Set) checkCorrections() []string {
	var problems []string
	for _, e := range s.editions {
		if e.Corrects == "" {
			continue
		}
		old, ok := s.byID[e.Corrects]
		switch {
		case !ok:
			problems = append(problems, fmt.Sprintf("Edition %s corrects %s, which is not here. Keep the corrected edition beside it.", e.ID, e.Corrects))
		case old.line() != e.line():
			problems = append(problems, fmt.Sprintf("Edition %s is for %s and cannot correct %s, which is for %s.", e.ID, e.line(), old.ID, old.line()))
		case s.circular(e):
			problems = append(problems, fmt.Sprintf("Edition %s corrects itself by way of %s. One of them must be the first.", e.ID, e.Corrects))
		}
	}
	return problems
}

func (s *Set) circular(e *Edition) bool {
	for n, at := 0, e; n <= len(s.editions); n++ {
		next, ok := s.byID[at.Corrects]
		if !ok {
			return false
		}
		at = next
	}
	return true
}

// checkPeriods looks at the editions of each line that correct no other: those
// must follow each other day by day.
func (s *Set) checkPeriods() []string {
	var problems []string
	var before *Edition
	for _, e := range s.editions {
		if e.Corrects != "" {
			continue
		}
		if before != nil && before.line() == e.line() {
			problems = append(problems, between(before, e)...)
		}
		before = e
	}
	return problems
}

func between(a, b *Edition) []string {
	if a.Until.IsZero() || !a.Until.Before(b.From) {
		end := "has no last day"
		if !a.Until.IsZero() {
			end = "runs until " + a.Until.String()
		}
		return []string{fmt.Sprintf("Editions %s and %s are both in force: %s %s and %s begins on %s. End the first one the day before.", a.ID, b.ID, a.ID, end, b.ID, b.From)}
	}
	if gap := a.Until.AddDays(1); gap != b.From {
		return []string{fmt.Sprintf("No edition is in force from %s to %s: %s ends on %s and %s begins on %s. Move one of the two.", gap, b.From.AddDays(-1), a.ID, a.Until, b.ID, b.From)}
	}
	return nil
}

// On is the edition in force for a commodity of a schedule on the day of
// delivery; where one corrects another it is the latest correction.
func (s *Set) On(schedule, commodity string, day quantity.Date) (*Edition, error) {
	var found *Edition
	for _, e := range s.editions {
		inForce := e.Schedule == schedule && e.Commodity.ID == commodity && day.Between(e.From, e.Until)
		if inForce && (found == nil || s.corrects(e, found)) {
			found = e
		}
	}
	if found == nil {
		return nil, fmt.Errorf("no rates are in force for %s on %s in schedule %q. Editions here: %s. Add an edition for that day", commodity, day, schedule, s.periods(schedule, commodity))
	}
	return found, nil
}

// corrects reports whether e corrects old, directly or through others.
func (s *Set) corrects(e, old *Edition) bool {
	for n := 0; e != nil && n <= len(s.editions); n++ {
		if e.Corrects == old.ID {
			return true
		}
		e = s.byID[e.Corrects]
	}
	return false
}

func (s *Set) periods(schedule, commodity string) string {
	var out []string
	for _, e := range s.editions {
		if e.Schedule == schedule && e.Commodity.ID == commodity {
			out = append(out, fmt.Sprintf("%s (%s)", e.ID, e.Period()))
		}
	}
	if len(out) == 0 {
		return "none"
	}
	return strings.Join(out, ", ")
}

// Period is the edition's days in force for people.
func (e *Edition) Period() string {
	if e.Until.IsZero() {
		return "from " + e.From.String()
	}
	return e.From.String() + " to " + e.Until.String()
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
