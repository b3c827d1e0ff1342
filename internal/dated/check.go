package dated

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/tomlfile"
)

// check compares the editions of a set with each other.
func (s *Set[E]) check() tomlfile.Problems {
	var problems tomlfile.Problems
	for _, member := range s.all {
		if e := member.Dated(); e.Corrects != "" {
			problems = append(problems, s.checkCorrection(e)...)
		}
	}
	for i, member := range s.all {
		e := member.Dated()
		for _, other := range s.all[i+1:] {
			later := other.Dated()
			if later.Line != e.Line {
				break // sorted by line
			}
			problems = append(problems, s.overlap(e, later)...)
		}
	}
	return append(problems, s.gaps()...)
}

func (s *Set[E]) checkCorrection(e Edition) tomlfile.Problems {
	wrong := func(what, remedy message.Text) tomlfile.Problems {
		return tomlfile.Problems{e.clash("corrects", what, remedy)}
	}
	member, ok := s.byID[e.Corrects]
	if !ok {
		return wrong(message.New("edition %v corrects %v, which is not here", e.ID, e.Corrects), message.New("Keep the corrected edition beside it."))
	}
	switch old := member.Dated(); {
	case old.Line != e.Line:
		return wrong(message.New("edition %v is for %v and cannot correct %v, which is for %v", e.ID, e.Line, old.ID, old.Line), message.New("Name the edition of the same schedule and commodity that is meant."))
	case s.circular(e):
		return wrong(message.New("edition %v corrects itself by way of %v", e.ID, e.Corrects), message.New("One of them must be the first."))
	case !e.From.Between(old.From, old.Until) || old.lastDay().Before(e.lastDay()):
		return wrong(message.New("edition %v (%s) corrects %v (%s) and reaches beyond it", e.ID, e.Days(), old.ID, old.Days()), message.New("Keep to its days, or correct the other edition too."))
	}
	return nil
}

func (s *Set[E]) circular(e Edition) bool {
	for n := 0; n <= len(s.all); n++ {
		next, ok := s.byID[e.Corrects]
		if !ok {
			return false
		}
		e = next.Dated()
	}
	return true
}

// overlap is a problem when two editions of a line share a day and neither
// corrects the other; a begins no later than b.
func (s *Set[E]) overlap(a, b Edition) tomlfile.Problems {
	if a.lastDay().Before(b.From) || s.corrects(a, b) || s.corrects(b, a) {
		return nil
	}
	remedy := message.New("End %v on %s.", a.ID, b.From.AddDays(-1))
	if a.Corrects != "" || b.Corrects != "" {
		remedy = message.New("Let the later correction correct the earlier one, or end one of the two.")
	}
	return tomlfile.Problems{b.clash("from", message.New("editions %v (%s) and %v (%s) are both in force on %s", a.ID, a.Days(), b.ID, b.Days(), b.From), remedy)}
}

// corrects reports whether e corrects old, directly or through others.
func (s *Set[E]) corrects(e, old Edition) bool {
	for n := 0; n <= len(s.all); n++ {
		if e.Corrects == old.ID {
			return true
		}
		next, ok := s.byID[e.Corrects]
		if !ok {
			return false
		}
		e = next.Dated()
	}
	return false
}

// gaps finds days not covered between the editions of each line. Corrections are within the days of
// what they correct and close no gap.
func (s *Set[E]) gaps() tomlfile.Problems {
	var problems tomlfile.Problems
	var before Edition
	for _, member := range s.all {
		e := member.Dated()
		if e.Corrects != "" {
			continue
		}
		if before.ID != "" && before.Line == e.Line && before.lastDay().Before(e.From) {
			if gap := before.Until.AddDays(1); gap != e.From {
				what := message.New("no edition is in force from %s to %s: %v ends on %s and %v begins on %s", gap, e.From.AddDays(-1), before.ID, before.Until, e.ID, e.From)
				problems = append(problems, e.clash("from", what, message.New("End %v on %s, or let %v begin on %s.", before.ID, e.From.AddDays(-1), e.ID, gap)))
			}
		}
		before = e
	}
	return problems
}
