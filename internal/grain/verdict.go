package grain

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// verdict is the range of grades one line of the table allows. Grades are counted from 0, the best;
// one past the last is below them all.
type verdict struct {
	limit  Limit
	result quantity.Amount
	// best is the grade the line allows by the tests made; could is how low it might still go by
	// those not made.
	best, could    int
	known, missing []FactorID
}

// judge compares the results with one line of the table.
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

// lowest returns the lowest grade of a line if its factor were at its worst, which for a part is
// all of its whole.
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

// Breach is a limit that a lot exceeded: the recorded result, the limit, and its grade. And, where
// not nil, was exceeded too: neither counts alone.
type Breach struct {
	Factor, Result, Limit string
	Remark                message.Text // what is said after the result; see [Factor.Remark]
	Bound                 Bound
	Grade                 string
	And                   *Breach
}

// Message says how the line was broken: "Test weight 53.9 lb/bu is under 54.0
// lb/bu, the least for U.S. No. 2".
func (b Breach) Message() message.Text {
	switch {
	case b.And != nil:
		return message.New("%s %s is over %s, the most for %s, and %s %s is over %s", b.Factor, b.Result, b.Limit, b.Grade, b.And.Factor, b.And.Result, b.And.Limit)
	case b.Bound == Least:
		return message.New("%s %s is under %s, the least for %s", b.Factor, b.result(), b.Limit, b.Grade)
	}
	return message.New("%s %s is over %s, the most for %s", b.Factor, b.result(), b.Limit, b.Grade)
}

func (b Breach) result() any {
	if b.Remark.IsZero() {
		return b.Result
	}
	return message.New("%s (%s)", b.Result, b.Remark)
}

// String is the same in English.
func (b Breach) String() string { return b.Message().String() }

// because returns the breach of the next better grade's limit.
func (t *GradeTable) because(v verdict, r results) Breach {
	limit, _ := v.limit.At(v.best - 1)
	b := r.breach(v.limit, v.result, limit)
	b.Grade = t.name(v.best - 1)
	if second, ok := v.limit.And(); ok {
		result, _, _ := t.result(r, second.Factor)
		limit, _ := second.At(0)
		too := r.breach(second, result, limit)
		b.And = &too
	}
	return b
}

func (r results) breach(l Limit, result, limit quantity.Amount) Breach {
	remark, _ := r.factor(l.Factor).Remark(result)
	return Breach{Factor: r.name(l.Factor), Result: r.show(l.Factor, result), Limit: r.show(l.Factor, limit), Remark: remark, Bound: l.Bound}
}
