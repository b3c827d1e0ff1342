package rates

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/rates/rule"
)

// Change is a line in which two editions differ. Before is empty for a line of the second only,
// After for a line of the first only.
type Change struct {
	Key                           string
	Section, Label, Before, After message.Text
	// BeforeAt and AfterAt are the lines of the two files, 0 where one does not
	// say it.
	BeforeAt, AfterAt int
}

// Diff lists the lines in which two editions differ, in the order of the first; lines only in the
// second come at the end of their section.
func Diff(a, b *Edition) []Change {
	before, after := a.Lines(), b.Lines()
	said := map[string]rule.Line{}
	for _, l := range after {
		said[l.Key] = l
	}
	var out []Change
	known := map[string]bool{}
	for _, l := range before {
		known[l.Key] = true
		if other := said[l.Key]; !other.Value.Equal(l.Value) {
			out = append(out, Change{l.Key, l.Section, l.Label, l.Value, other.Value, l.At, other.At})
		}
	}
	for _, l := range after {
		if !known[l.Key] {
			out = append(out, Change{Key: l.Key, Section: l.Section, Label: l.Label, After: l.Value, AfterAt: l.At})
		}
	}
	places := sections(append(before, after...))
	slices.SortStableFunc(out, func(x, y Change) int { return places[x.Section.String()] - places[y.Section.String()] })
	return out
}

// sections numbers the sections in the order they first come.
func sections(lines []rule.Line) map[string]int {
	out := map[string]int{}
	for _, l := range lines {
		if _, known := out[l.Section.String()]; !known {
			out[l.Section.String()] = len(out)
		}
	}
	return out
}
