package grain

import (
	"fmt"

	"tenthpoint/internal/quantity"
)

// verdict is what one line of the table allows. Grades are counted from 0, the
// best; one past the last is below them all.
type verdict struct {
	limit  Limit
	result quantity.Amount
	// best is the grade the line allows by what was tested; could is how low
	// it might still go by what was not.
	best, could    int
	known, missing []FactorID
}

// judge holds the results against one line of the table.
func (t *GradeTable) judge(l Limit, r results) verdict {
	v := t.judgeAlone(l, r)
	second, ok := l.And()
	if !ok {
		return v
	}
	// The line is broken only where both limits are.
	other := t.judgeAlone(second, r)
	if other.best == 0 {
		v.best = 0
	}
	if other.could == 0 {
		v.could = 0
	}
	v.missing = append(v.missing, other.missing...)
	return v
}

func (t *GradeTable) judgeAlone(l Limit, r results) verdict {
	result, known, settled := t.result(r, l.Factor)
	v := verdict{limit: l, result: result}
	if known {
		v.known = []FactorID{l.Factor}
		v.best = l.best(result, len(t.Names))
	}
	v.could = v.best
	if !settled {
		v.missing = []FactorID{l.Factor}
		v.could = max(v.best, t.lowest(l, r))
	}
	return v
}

// lowest is how low a line could go if its factor were at its worst, which for
// a part is all of its whole.
func (t *GradeTable) lowest(l Limit, r results) int {
	if most, known := t.ceiling(r, l.Factor); known && l.Bound == Most {
		return l.best(most, len(t.Names))
	}
	for i := range t.Names {
		if _, set := l.At(i); !set {
			return i
		}
	}
	return len(t.Names)
}

// best is the first of so many grades whose limit the result keeps.
func (l Limit) best(result quantity.Amount, grades int) int {
	for i := range grades {
		if limit, set := l.At(i); !set || l.kept(result, limit) {
			return i
		}
	}
	return grades
}

func (l Limit) kept(result, limit quantity.Amount) bool {
	if l.Bound == Least {
		return !result.Less(limit)
	}
	return !result.More(limit)
}

// because says how a line broke the limit of the next better grade: "Test
// weight 53.9 lb/bu is under 54.0 lb/bu, the least for U.S. No. 2".
func (t *GradeTable) because(v verdict, r results) string {
	limit, _ := v.limit.At(v.best - 1)
	text := fmt.Sprintf("%s, the %s for %s", r.broken(v.limit, v.result, limit), v.limit.Bound, t.name(v.best-1))
	if second, ok := v.limit.And(); ok {
		result, _, _ := t.result(r, second.Factor)
		limit, _ := second.At(0)
		text += ", and " + r.broken(second, result, limit)
	}
	return text
}

func (r results) broken(l Limit, result, limit quantity.Amount) string {
	side := "over"
	if l.Bound == Least {
		side = "under"
	}
	return fmt.Sprintf("%s %s is %s %s", r.name(l.Factor), r.show(l.Factor, result), side, r.show(l.Factor, limit))
}
