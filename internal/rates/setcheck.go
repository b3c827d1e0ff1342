package rates

import (
	"fmt"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// clash is a problem that shows only beside another edition.
func (e *Edition) clash(key, what, remedy string) tomlfile.Problem {
	return tomlfile.Locate(e.File, e.Text).Problem("edition."+key, what, remedy)
}

// check holds the editions of a set against each other.
func (s *Set) check() tomlfile.Problems {
	var problems tomlfile.Problems
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

func (s *Set) checkCorrection(e *Edition) tomlfile.Problems {
	old, ok := s.byID[e.Corrects]
	wrong := func(what, remedy string) tomlfile.Problems {
		return tomlfile.Problems{e.clash("corrects", what, remedy)}
	}
	switch {
	case !ok:
		return wrong(fmt.Sprintf("edition %s corrects %s, which is not here", e.ID, e.Corrects), "Keep the corrected edition beside it.")
	case old.line() != e.line():
		return wrong(fmt.Sprintf("edition %s is for %s and cannot correct %s, which is for %s", e.ID, e.line(), old.ID, old.line()), "Name the edition of the same schedule and commodity that is meant.")
	case s.circular(e):
		return wrong(fmt.Sprintf("edition %s corrects itself by way of %s", e.ID, e.Corrects), "One of them must be the first.")
	case !e.From.Between(old.From, old.Until) || old.lastDay().Before(e.lastDay()):
		return wrong(fmt.Sprintf("edition %s (%s) corrects %s (%s) and reaches beyond it", e.ID, e.Period(), old.ID, old.Period()), "Keep to its days, or correct the other edition too.")
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
func (s *Set) overlap(a, b *Edition) tomlfile.Problems {
	if a.lastDay().Before(b.From) || s.corrects(a, b) || s.corrects(b, a) {
		return nil
	}
	remedy := fmt.Sprintf("End %s on %s.", a.ID, b.From.AddDays(-1))
	if a.Corrects != "" || b.Corrects != "" {
		remedy = "Let the later correction correct the earlier one, or end one of the two."
	}
	return tomlfile.Problems{b.clash("from", fmt.Sprintf("editions %s (%s) and %s (%s) are both in force on %s", a.ID, a.Period(), b.ID, b.Period(), b.From), remedy)}
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
func (s *Set) gaps() tomlfile.Problems {
	var problems tomlfile.Problems
	var before *Edition
	for _, e := range s.editions {
		if e.Corrects != "" {
			continue
		}
		if before != nil && before.line() == e.line() && before.lastDay().Before(e.From) {
			if gap := before.Until.AddDays(1); gap != e.From {
				what := fmt.Sprintf("no edition is in force from %s to %s: %s ends on %s and %s begins on %s", gap, e.From.AddDays(-1), before.ID, before.Until, e.ID, e.From)
				problems = append(problems, e.clash("from", what, fmt.Sprintf("End %s on %s, or let %s begin on %s.", before.ID, e.From.AddDays(-1), e.ID, gap)))
			}
		}
		before = e
	}
	return problems
}
