package dated

import (
	"sort"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// Set is all the editions of one kind that an elevator has loaded.
type Set[E Member] struct {
	all  []E
	byID map[string]E
}

// NewSet gathers editions and checks them against each other: no id twice, no two in force for one
// line on one day (unless one corrects the other), no days left out between them, and every
// corrected edition present. All problems are returned at once, each at the line of the edition to
// look at.
func NewSet[E Member](editions ...E) (*Set[E], tomlfile.Problems) {
	s := &Set[E]{byID: map[string]E{}}
	var problems tomlfile.Problems
	for _, member := range editions {
		e := member.Dated()
		if old, taken := s.byID[e.ID]; taken {
			problems = append(problems, e.clash("id", message.New("two editions are called %v, here and in %v", e.ID, old.Dated().File), message.New("Give one of them a new id.")))
			continue
		}
		s.byID[e.ID] = member
		s.all = append(s.all, member)
	}
	sort.Slice(s.all, func(i, j int) bool { return less(s.all[i].Dated(), s.all[j].Dated()) })
	return s, append(problems, s.check()...)
}

func less(a, b Edition) bool {
	if a.Line != b.Line {
		return a.Line < b.Line
	}
	if c := a.From.Cmp(b.From); c != 0 {
		return c < 0
	}
	return a.ID < b.ID
}

// On returns the edition of a line in force on a day; where one corrects another, the latest
// correction.
func (s *Set[E]) On(line string, day quantity.Date) (found E, ok bool) {
	for _, member := range s.all {
		e := member.Dated()
		inForce := e.Line == line && day.Between(e.From, e.Until)
		if inForce && (!ok || s.corrects(e, found.Dated())) {
			found, ok = member, true
		}
	}
	return found, ok
}

// Of lists the editions of a line by first day.
func (s *Set[E]) Of(line string) []E {
	var out []E
	for _, member := range s.all {
		if member.Dated().Line == line {
			out = append(out, member)
		}
	}
	return out
}

// Periods names the editions of a line with their days, for people.
func (s *Set[E]) Periods(line string) message.Text {
	var out []any
	for _, member := range s.Of(line) {
		e := member.Dated()
		out = append(out, message.New("%v (%s)", e.ID, e.Days()))
	}
	if len(out) == 0 {
		return message.New("none")
	}
	return message.List(", ", out...)
}

// ByID finds an edition.
func (s *Set[E]) ByID(id string) (E, bool) {
	e, ok := s.byID[id]
	return e, ok
}

// All lists the editions by line and first day.
func (s *Set[E]) All() []E { return s.all }
