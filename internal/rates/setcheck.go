package rates

import (
	"fmt"

	"tenthpoint/internal/quantity"
)

// check holds the editions of a set against each other.
func (s *Set) check() []string {
	var problems []string
	for _, e := range s.editions {
		if e.Corrects != "" {
			problems = append(problems, s.checkCorrection(e)...)
		}
	}
	for i, e := range s.editions {
		for _, later := range s.editions[i+1:] {
			if later.line() != e.line() {
				break // sorted by line
			}
			problems = append(problems, s.overlap(e, later)...)
		}
	}
	return append(problems, s.gaps()...)
}

func (s *Set) checkCorrection(e *Edition) []string {
	old, ok := s.byID[e.Corrects]
	switch {
	case !ok:
		return []string{fmt.Sprintf("Edition %s corrects %s, which is not here. Keep the corrected edition beside it.", e.ID, e.Corrects)}
	case old.line() != e.line():
		return []string{fmt.Sprintf("Edition %s is for %s and cannot correct %s, which is for %s.", e.ID, e.line(), old.ID, old.line())}
	case s.circular(e):
		return []string{fmt.Sprintf("Edition %s corrects itself by way of %s. One of them must be the first.", e.ID, e.Corrects)}
	case !e.From.Between(old.From, old.Until) || old.lastDay().Before(e.lastDay()):
		return []string{fmt.Sprintf("Edition %s (%s) corrects %s (%s) and reaches beyond it. Keep to its days, or correct the other edition too.", e.ID, e.Period(), old.ID, old.Period())}
	}
	return nil
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

// endless stands for the last day of an edition without one.
var endless = quantity.MustDate("2999-12-31")

func (e *Edition) lastDay() quantity.Date {
	if e.Until.IsZero() {
		return endless
	}
	return e.Until
}

// overlap is a problem when two editions of a line share a day and neither
// corrects the other; a begins no later than b.
func (s *Set) overlap(a, b *Edition) []string {
	if a.lastDay().Before(b.From) || s.corrects(a, b) || s.corrects(b, a) {
		return nil
	}
	remedy := "End the first one the day before."
	if a.Corrects != "" || b.Corrects != "" {
		remedy = "Let the later correction correct the earlier one, or end one of the two."
	}
	return []string{fmt.Sprintf("Editions %s (%s) and %s (%s) are both in force on %s. %s", a.ID, a.Period(), b.ID, b.Period(), b.From, remedy)}
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

// gaps looks for days left out between the editions of each line. Corrections
// lie within the days of what they correct and close no gap.
func (s *Set) gaps() []string {
	var problems []string
	var before *Edition
	for _, e := range s.editions {
		if e.Corrects != "" {
			continue
		}
		if before != nil && before.line() == e.line() && before.lastDay().Before(e.From) {
			if gap := before.Until.AddDays(1); gap != e.From {
				problems = append(problems, fmt.Sprintf("No edition is in force from %s to %s: %s ends on %s and %s begins on %s. Move one of the two.", gap, e.From.AddDays(-1), before.ID, before.Until, e.ID, e.From))
			}
		}
		before = e
	}
	return problems
}
