package grain

import "tenthpoint/internal/quantity"

// Bound is the side of a limit on which a lot must stay. The limit itself is within: test weight of
// exactly 54.0 lb/bu meets a least of 54.0.
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
	// Below is the grade of a lot that meets none of them.
	Below string
	// Limits are the lines of the table.
	Limits []Limit
	// Sample are the observations that exclude a numbered grade.
	Sample []SampleRule
	// Wholes say which factors are the sum of others.
	Wholes []Whole
	// NotJudged names factors that may lower the grade and are not in the table.
	NotJudged string
	Source    string
}

// Limit is one line of a grade table: one factor, and its limit for each grade.
type Limit struct {
	Factor  FactorID
	Bound   Bound
	byGrade []*quantity.Amount
	// and, when set, must be broken too for the line to count: stones count against soybeans only
	// when they weigh over 0.1 % as well.
	and *Limit
}

// SampleRule is a fault that makes a lot sample grade, whatever its figures. One that was not
// checked has no effect.
type SampleRule struct {
	Factors []FactorID // yes or no; any of them is enough
	Source  string
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
