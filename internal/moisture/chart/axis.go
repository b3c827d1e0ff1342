package chart

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// axis is one edge of a chart: marks in one unit, rising.
type axis []quantity.Amount

func (a axis) first() quantity.Amount { return a[0] }
func (a axis) last() quantity.Amount  { return a[len(a)-1] }

// holds reports whether a figure is between the first mark and the last.
func (a axis) holds(x quantity.Amount) bool { return !x.Less(a.first()) && !x.More(a.last()) }

// interval is the number of the mark at or below x whose next mark is at or
// above it. On a mark it begins there, on the last mark it ends there.
func (a axis) interval(x quantity.Amount) int {
	i := 0
	for i < len(a)-2 && !x.Less(a[i+1]) {
		i++
	}
	return i
}

// fall returns where the marks stop rising, with the number of the mark; the number is -1 when they
// rise throughout.
func (a axis) fall() (at int, what message.Text) {
	for i := 1; i < len(a); i++ {
		if !a[i].More(a[i-1]) {
			return i, message.New("%s comes after %s", a[i], a[i-1])
		}
	}
	return -1, message.Text{}
}

// gap returns where the marks leave out a step: a line lost in copying a chart would otherwise be
// interpolated silently.
func (a axis) gap() (at int, what message.Text) {
	if len(a) < 3 {
		return -1, message.Text{}
	}
	step := a[1].Sub(a[0])
	for i := 2; i < len(a); i++ {
		if here := a[i].Sub(a[i-1]); here.Cmp(step) != 0 {
			return i, message.New("from %s to %s is a step of %s, but the chart begins in steps of %s", a[i-1], a[i], here, step)
		}
	}
	return -1, message.Text{}
}
