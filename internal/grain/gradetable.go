package grain

import (
	"fmt"
	"strings"

	"tenthpoint/internal/quantity"
)

// Bound says on which side of a limit a lot must stay. The limit itself is
// within: test weight of exactly 54.0 lb/bu meets a least of 54.0.
type Bound string

// The two bounds.
const (
	Least Bound = "least"
	Most  Bound = "most"
)

// GradeTable is the table of one grain's numbered grades.
type GradeTable struct {
	// Names are the grades, best first.
	Names []string
	// Below is what a lot is that meets none of them.
	Below string
	// Limits are the lines of the table.
	Limits []Limit
	// Wholes say which factors are the sum of others.
	Wholes []Whole
	// NotJudged names what may lower the grade and is not in the table.
	NotJudged string
	Source    string
}

// Limit is one line of a grade table: one factor, and for each grade how far
// it may go.
type Limit struct {
	Factor  FactorID
	Bound   Bound
	byGrade []*quantity.Amount
	// and, when set, must be broken too before the line is: stones count
	// against soybeans only when they weigh over 0.1 % as well.
	and *Limit
}

// At is the limit of the i-th grade, counted from 0; false where that grade
// sets none.
func (l Limit) At(i int) (quantity.Amount, bool) {
	if len(l.byGrade) == 1 {
		i = 0 // one figure for every grade
	}
	if a := l.byGrade[i]; a != nil {
		return *a, true
	}
	return quantity.Amount{}, false
}

// And is the second limit that must be broken too, if there is one.
func (l Limit) And() (Limit, bool) {
	if l.and == nil {
		return Limit{}, false
	}
	return *l.and, true
}

const sampleGrade = "U.S. Sample grade"

// What a table leaves out, for [GradeTable.NotJudged].
const (
	rulesNotRead  = "Odour, heating, weathering and general appearance are not judged here: their rules were not read."
	countsNotRead = "Odour, heating, weathering, stones, glass, harmful seeds and filth are not judged here: their rules for this grain were not read."
)

// numbered are the names of so many grades, best first.
func numbered(grades int) []string {
	names := make([]string, grades)
	for i := range names {
		names[i] = fmt.Sprintf("U.S. No. %d", i+1)
	}
	return names
}

// line reads a line of a table as it is printed, best grade first. "-" is a
// grade without a limit; a single figure holds for every grade.
func line(id FactorID, bound Bound, unit quantity.Unit, printed string) Limit {
	l := Limit{Factor: id, Bound: bound}
	for _, cell := range strings.Fields(printed) {
		if cell == "-" {
			l.byGrade = append(l.byGrade, nil)
			continue
		}
		a := quantity.Of(cell, unit)
		l.byGrade = append(l.byGrade, &a)
	}
	return l
}

func leastLbPerBu(printed string) Limit {
	return line(TestWeight, Least, quantity.LbPerBushel, printed)
}

func leastPercent(id FactorID, printed string) Limit {
	return line(id, Least, quantity.Percent, printed)
}

func mostPercent(id FactorID, printed string) Limit {
	return line(id, Most, quantity.Percent, printed)
}

// mostOf limits a count, the same for every grade: beyond it nothing but
// sample grade is left.
func mostOf(id FactorID, printed string) Limit {
	return line(id, Most, quantity.Count, printed)
}

// butOnlyWith makes a limit that is broken only together with another.
func (l Limit) butOnlyWith(other Limit) Limit {
	l.and = &other
	return l
}
