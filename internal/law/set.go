package law

import (
	"slices"
	"strings"
	"sync"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// Set is every file of rules of an elevator: the built-in ones, and its own.
type Set struct {
	files   []*File         // by place and first day
	periods []period        // in the order of their days
	own     map[string]*Set // by the rule set of an elevator
	places  []*File         // of all places, for the set of one rule set

	making sync.Mutex
	in     map[string]*Set // by place, as they are asked for
}

// NewSet compares files with each other: no id twice, and no two of one place that begin on the
// same day. A copy of a file counts once: a house may keep the program's own beside its rates. All
// problems are returned at once.
func NewSet(files ...*File) (*Set, tomlfile.Problems) {
	s := &Set{files: withoutCopies(files), own: map[string]*Set{}}
	slices.SortStableFunc(s.files, inOrder)
	var problems tomlfile.Problems
	ids := map[string]*File{}
	for i, f := range s.files {
		if other, taken := ids[f.ID]; taken {
			problems = append(problems, f.clash("id", message.New("two files of rules are called %v, here and in %v", f.ID, other.Name), message.New("Give one of them a new id.")))
		}
		ids[f.ID] = f
		if i > 0 && s.files[i-1].place() == f.place() && s.files[i-1].From == f.From {
			problems = append(problems, f.clash("from", message.New("%v and %v begin on the same day and are about the same thing", s.files[i-1].ID, f.ID), message.New("Write the first day of the newer one.")))
		}
	}
	s.periods, s.in = periodsOf(s.files), map[string]*Set{}
	for _, f := range s.files {
		if f.isPerPlace() {
			s.places = append(s.places, f)
		}
	}
	for _, f := range s.files {
		if _, done := s.own[f.Jurisdiction]; !done {
			s.own[f.Jurisdiction] = s.ownOf(f.Jurisdiction)
		}
	}
	return s, problems
}

// withoutCopies are files, the first of those with the same text.
func withoutCopies(files []*File) []*File {
	seen := map[string]bool{}
	return slices.DeleteFunc(slices.Clone(files), func(f *File) bool {
		copied := seen[f.Hash]
		seen[f.Hash] = true
		return copied
	})
}

// inOrder sorts files by place and first day.
func inOrder(a, b *File) int {
	if c := strings.Compare(a.place(), b.place()); c != 0 {
		return c
	}
	return a.From.Cmp(b.From)
}

// clash is a problem that shows only beside another file.
func (f *File) clash(key string, what, remedy message.Text) tomlfile.Problem {
	return tomlfile.Locate(f.Name, f.Text).Problem("law."+key, what, remedy)
}

// oneAuthority are the kinds for which an elevator follows the rules of one jurisdiction only: a
// result is recorded once. The rules of all other kinds are kept for every jurisdiction, and
// callers name one.
var oneAuthority = []string{"recording"}

// The kinds of file that an elevator follows for its own place only, a state or province; there is
// no rule for a place that nobody read.
const (
	Titles    = "titles"
	Deadlines = "deadlines"
)

func (f *File) isPerPlace() bool { return f.Kind == Titles || f.Kind == Deadlines }

// In is the files of an elevator of a place, beside those of its rule set.
func (s *Set) In(place string) *Set {
	if place == "" {
		return s
	}
	s.making.Lock()
	defer s.making.Unlock()
	if made, has := s.in[place]; has {
		return made
	}
	files := slices.DeleteFunc(slices.Clone(s.files), (*File).isPerPlace)
	for _, f := range s.places {
		if f.Jurisdiction == place {
			files = append(files, f)
		}
	}
	slices.SortStableFunc(files, inOrder)
	made := &Set{files: files, periods: periodsOf(files), places: s.places, in: map[string]*Set{}}
	s.in[place] = made
	return made
}

// Places are the places with files of their own, rule sets apart.
func (s *Set) Places() []string {
	var out []string
	for _, f := range s.places {
		isRuleSet := slices.ContainsFunc(s.files, func(o *File) bool { return o.Jurisdiction == f.Jurisdiction && !o.isPerPlace() })
		if !isRuleSet {
			out = append(out, f.Jurisdiction)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// For is the files of an elevator under a rule set, "us" or "canada". A rule set without rules of
// its own about something has those of all jurisdictions.
func (s *Set) For(rules string) *Set {
	if own, has := s.own[rules]; has {
		return own
	}
	return s
}

func (s *Set) ownOf(rules string) *Set {
	kinds := map[string]bool{}
	for _, f := range s.files {
		if f.Jurisdiction == rules {
			kinds[f.Kind] = true
		}
	}
	files := slices.DeleteFunc(slices.Clone(s.files), func(f *File) bool {
		elsewhere := f.Jurisdiction != rules
		return elsewhere && (f.isPerPlace() || slices.Contains(oneAuthority, f.Kind) && kinds[f.Kind])
	})
	return &Set{files: files, periods: periodsOf(files), places: s.places, in: map[string]*Set{}}
}

// On returns the files in force on a day. Of two files about the same thing the one that begins
// later applies.
func (s *Set) On(day quantity.Date) Law {
	after := slices.IndexFunc(s.periods, func(p period) bool { return p.first.After(day) })
	if after < 0 {
		after = len(s.periods)
	}
	return s.periods[after-1].law
}

// All are the files, those about one thing beside each other.
func (s *Set) All() []*File { return s.files }
