package law

import (
	"slices"

	"tenthpoint/internal/quantity"
)

// period is some days on which the law is the same: from its first to the day before the next
// period. Every keystroke asks for a day's law, so the few there are are made once.
type period struct {
	first quantity.Date
	law   Law
}

// periodsOf are the periods of files that are ordered by place and first day. The first has no
// first day: it reaches back before every file that has one.
func periodsOf(files []*File) []period {
	first := []quantity.Date{{}}
	for _, f := range files {
		if !f.From.IsZero() {
			first = append(first, f.From)
		}
		if !f.Until.IsZero() {
			first = append(first, f.Until.AddDays(1))
		}
	}
	slices.SortFunc(first, quantity.Date.Cmp)
	var out []period
	for _, day := range slices.Compact(first) {
		out = append(out, period{day, inForce(files, day)})
	}
	return out
}

// inForce are those of the files that apply on a day.
func inForce(files []*File, day quantity.Date) Law {
	latest := map[string]*File{}
	for _, f := range files {
		if f.inForce(day) {
			latest[f.place()] = f
		}
	}
	return newLaw(slices.DeleteFunc(slices.Clone(files), func(f *File) bool { return latest[f.place()] != f }))
}
