package worksheet

import (
	"fmt"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Sheet is the working of one settlement, in the order it was done. The zero
// Sheet is ready to use.
type Sheet struct {
	section message.Text
	steps   []*Step
	blank   []Step // made together, to be written on one by one
}

// Unsourced is the source of a step that only combines others.
var Unsourced message.Text

// NewSheet is a sheet with room for about so many steps; more may be written.
func NewSheet(room int) *Sheet {
	return &Sheet{steps: make([]*Step, 0, room), blank: make([]Step, room)}
}

// Section starts a new heading for the steps that follow.
func (s *Sheet) Section(title message.Text) { s.section = title }

// Given records a figure from outside as it was recorded. The rounding says to what place it was
// recorded and is applied once, here.
func (s *Sheet) Given(id string, label message.Text, a quantity.Amount, recorded quantity.Rounding, source message.Text) *Step {
	return s.add(Step{id: id, label: label, kind: Given, exact: a, rounding: recorded, source: source})
}

// Rate records a figure read from the edition; source names the edition and row.
func (s *Sheet) Rate(id string, label message.Text, a quantity.Amount, source message.Text) *Step {
	return s.add(Step{id: id, label: label, kind: Rate, exact: a, source: source})
}

// Work does one calculation and rounds it once. Source names the rule.
func (s *Sheet) Work(id string, label message.Text, e Operand, r quantity.Rounding, source message.Text) *Step {
	return s.add(Step{id: id, label: label, kind: Worked, expr: e, exact: e.amount(), rounding: r, source: source})
}

// Skip records a rule that was considered and changes nothing, and why. The step's value is zero in
// the unit given.
func (s *Sheet) Skip(id string, label message.Text, unit quantity.Unit, r quantity.Rounding, reason, source message.Text) *Step {
	return s.add(Step{id: id, label: label, kind: NotApplied, exact: quantity.Zero(unit), rounding: r, note: reason, source: source})
}

// Word prints a word instead of a step's figure, for yes-no factors.
func (s *Sheet) Word(step *Step, word message.Text) *Step {
	step.word = word
	return step
}

// Note adds a remark to a step just written.
func (s *Sheet) Note(step *Step, remark message.Text) *Step {
	step.note = remark
	return step
}

func (s *Sheet) add(one Step) *Step {
	if _, taken := s.Step(one.id); taken {
		panic(fmt.Sprintf("working: two steps are called %q", one.id))
	}
	if len(s.blank) == 0 {
		s.blank = make([]Step, 8)
	}
	step := &s.blank[0]
	s.blank = s.blank[1:]
	*step = one
	step.section = s.section
	step.value = step.rounding.Apply(step.exact)
	s.steps = append(s.steps, step)
	return step
}

// Remarked is a sheet of the same steps with each remark as change tells it.
func (s *Sheet) Remarked(change func(note message.Text) message.Text) *Sheet {
	out := NewSheet(len(s.steps))
	for _, step := range s.steps {
		told := *step
		told.note = change(step.note)
		out.steps = append(out.steps, &told)
	}
	return out
}

// Steps lists every step in the order of the working.
func (s *Sheet) Steps() []*Step { return s.steps }

// Step finds a step by its id. A sheet is short and most ids differ in length, so
// looking through them costs less than keeping an index.
func (s *Sheet) Step(id string) (*Step, bool) {
	for _, step := range s.steps {
		if step.id == id {
			return step, true
		}
	}
	return nil, false
}
