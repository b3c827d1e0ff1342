package postgres

import (
	"cmp"
	"slices"
)

// An overlay is the uncommitted changes of a table whose rows have a place and a day: rows to be put
// there, and nil for rows to be taken away. What the server answers is read with it laid over.
type overlay[P comparable, R any] struct {
	at      func(R) (P, string)
	changed map[P]map[string]*R
}

func newOverlay[P comparable, R any](at func(R) (P, string)) overlay[P, R] {
	return overlay[P, R]{at, map[P]map[string]*R{}}
}

func (o overlay[P, R]) set(place P, day string, row *R) {
	if o.changed[place] == nil {
		o.changed[place] = map[string]*R{}
	}
	o.changed[place][day] = row
}

// over lays the overlay over rows of the server; of its own rows those that fit are added, at the
// end.
func (o overlay[P, R]) over(rows []R, fits func(P, string) bool) []R {
	out := slices.DeleteFunc(rows, func(r R) bool {
		place, day := o.at(r)
		_, changed := o.changed[place][day]
		return changed
	})
	for place, days := range o.changed {
		for day, row := range days {
			if row != nil && fits(place, day) {
				out = append(out, *row)
			}
		}
	}
	return out
}

// days are the rows of one place from a day on, in order.
func (o overlay[P, R]) days(rows []R, place P, from string) []R {
	out := o.over(rows, func(p P, day string) bool { return p == place && day >= from })
	slices.SortFunc(out, func(a, b R) int {
		_, first := o.at(a)
		_, second := o.at(b)
		return cmp.Compare(first, second)
	})
	return out
}

// last is the latest row of a place before a day; nil for none. Earlier asks the server for the
// latest rows there, so many of them.
func (o overlay[P, R]) last(place P, before string, earlier func(most int) ([]R, error)) (last *R, err error) {
	rows, err := earlier(1 + len(o.changed[place]))
	if err != nil {
		return nil, err
	}
	rows = o.over(rows, func(p P, day string) bool { return p == place && day < before })
	latest := ""
	for i := range rows {
		if _, day := o.at(rows[i]); day >= latest {
			last, latest = &rows[i], day
		}
	}
	return last, nil
}

// lastOfAll are the latest rows before a day of every place: those of the server, and of the places
// of the overlay those that come of it.
func (o overlay[P, R]) lastOfAll(rows []R, before string, earlier func(place P, most int) ([]R, error)) ([]R, error) {
	rows = slices.DeleteFunc(rows, func(r R) bool {
		place, _ := o.at(r)
		return o.changed[place] != nil
	})
	for place := range o.changed {
		last, err := o.last(place, before, func(most int) ([]R, error) { return earlier(place, most) })
		if err != nil {
			return nil, err
		}
		if last != nil {
			rows = append(rows, *last)
		}
	}
	return rows, nil
}
