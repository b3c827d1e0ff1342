package audit

import (
	"iter"
	"slices"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
)

// passed are the numbers that were given out where the book did not see it, and the tickets of which
// the paper is not to be had.
type passed struct {
	over []numbering.Passed
	lost []numbering.Lost
}

func (p *passed) note(v *walk, f journal.Fact) {
	var err error
	switch f.Kind {
	case numbering.Passed{}.Kind():
		p.over, err = noted(p.over, f)
	case numbering.Lost{}.Kind():
		p.lost, err = noted(p.lost, f)
	}
	if err != nil {
		v.found(message.New("Fact %d: %v.", f.Seq, err))
	}
}

func noted[F journal.Kinded](all []F, f journal.Fact) ([]F, error) {
	one, err := journal.ReadBody[F](f.Body)
	return append(all, one), err
}

// last is the last number of a series that was passed; 0 for none.
func (p *passed) last(series string) (last int64) {
	for _, o := range p.over {
		if o.Series == series {
			last = max(last, o.Last)
		}
	}
	return last
}

// numbers are all numbers of a series that were passed.
func (p *passed) numbers(series string) iter.Seq[int64] {
	return func(yield func(int64) bool) {
		for _, o := range p.over {
			for n := o.First; o.Series == series && n <= o.Last; n++ {
				if !yield(n) {
					return
				}
			}
		}
	}
}

// covers reports whether a number of a series was passed.
func (p *passed) covers(series string, number int64) bool {
	return slices.ContainsFunc(p.over, func(o numbering.Passed) bool { return o.Covers(series, number) })
}

// remark says which numbers are on paper only: the book is sound, but it does not have all that the
// house has done.
func (p *passed) remark(v *walk) {
	for _, o := range p.over {
		if o.Earlier {
			v.addRemark("%s: %v", o.Message(), o.Reason)
			continue
		}
		v.addRemark("%s, given out where this book did not see it: %v", o.Message(), o.Reason)
	}
	missing, _ := numbering.Absent(p.over, p.lost, func(n int64) bool { return v.tickets[n] != "" })
	if len(missing) > 0 {
		v.addRemark("Tickets on paper only: %s. Enter them from their slips, or declare them lost.", numbering.Ranges(missing))
	}
	for _, l := range p.lost {
		if v.tickets[l.Number] == "" {
			v.addRemark("Ticket %d is lost: %v", l.Number, l.Reason)
		}
	}
}
