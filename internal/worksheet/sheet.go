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
	return s.next(id, label, Given, source).figure(a, recorded)
}

// Rate records a figure read from the edition; source names the edition and row.
func (s *Sheet) Rate(id string, label message.Text, a quantity.Amount, source message.Text) *Step {
	return s.next(id, label, Rate, source).figure(a, quantity.Rounding{})
}

// Work does one calculation and rounds it once. Source names the rule.
func (s *Sheet) Work(id string, label message.Text, e Operand, r quantity.Rounding, source message.Text) *Step {
	step := s.next(id, label, Worked, source)
	step.expr = e
	return step.figure(e.amount(), r)
}

// Skip records a rule that was considered and changes nothing, and why. The step's value is zero in
// the unit given.
func (s *Sheet) Skip(id string, label message.Text, unit quantity.Unit, r quantity.Rounding, reason, source message.Text) *Step {
	step := s.next(id, label, NotApplied, source)
	step.note = &reason
	return step.figure(quantity.Zero(unit), r)
}

// Word prints a word instead of a step's figure, for yes-no factors.
func (s *Sheet) Word(step *Step, word message.Text) *Step {
	step.word = &word
	return step
}

// Note adds a remark to a step just written.
func (s *Sheet) Note(step *Step, remark message.Text) *Step {
	step.note = &remark
	return step
}

// next writes down a step that has no figure yet.
func (s *Sheet) next(id string, label message.Text, kind Kind, source message.Text) *Step {
	if _, taken := s.Step(id); taken {
		panic(fmt.Sprintf("worksheet: two steps are called %q", id))
	}
	if len(s.blank) == 0 {
		s.blank = make([]Step, 8)
	}
	step := &s.blank[0]
	s.blank = s.blank[1:]
	step.id, step.section, step.label, step.kind, step.source = id, s.section, label, kind, source
	s.steps = append(s.steps, step)
	return step
}

// figure sets the figure of a step and rounds it, once.
func (s *Step) figure(exact quantity.Amount, r quantity.Rounding) *Step {
	s.exact, s.rounding, s.value = exact, r, r.Apply(exact)
	return s
}

// Remarked is a sheet of the same steps with each remark as change tells it.
func (s *Sheet) Remarked(change func(note message.Text) message.Text) *Sheet {
	out := NewSheet(len(s.steps))
	for _, step := range s.steps {
		told := *step
		if step.note != nil {
			note := change(*step.note)
			told.note = &note
		}
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
