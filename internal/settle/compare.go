package settle

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/worksheet"
)

// Line is one line of a load settled twice. A side without the line is nil and counts as zero.
// Change is the second side less the first; it is nil where the units cannot be converted, such as
// bushels and tonnes, or the dollars of two countries.
type Line struct {
	ID            string
	Label         message.Text
	Before, After *worksheet.Step
	Change        *worksheet.Step
}

// Differs reports whether the two sides part on the line.
func (l Line) Differs() bool { return l.Change == nil || !l.Change.Value().IsZero() }

// Comparison is a load settled twice: under two editions, or with the first
// result and with the retest. A premium and a credit are below zero in it, so
// that every change reads the same way.
type Comparison struct {
	Before, After *Settlement
	// Sheet holds the differences as steps.
	Sheet *worksheet.Sheet
	Lines []Line
}

// Compare sets two settlements side by side, line by line, in the order of the
// first, and after them the lines that only the second has.
func Compare(before, after *Settlement) *Comparison {
	c := &Comparison{Before: before, After: after, Sheet: &worksheet.Sheet{}}
	c.Sheet.Section(message.Words("Differences"))
	seen := map[string]bool{}
	for _, b := range before.compared() {
		seen[b.ID()] = true
		if b.ID() == LineCharges && after.Charges == nil {
			continue
		}
		c.line(b, b, after.find(b.ID()))
	}
	for _, a := range after.compared() {
		if !seen[a.ID()] && a.ID() != LineCharges {
			c.line(a, before.find(a.ID()), a)
		}
	}
	return c
}

// compared are the lines that are set against each other. The net weight turned
// into the edition's unit is no difference of its own, nor are charges added up,
// which engines do in unlike ways.
func (s *Settlement) compared() []*worksheet.Step {
	return slices.DeleteFunc(s.Lines(), func(step *worksheet.Step) bool {
		return step.ID() == LineConvertedNet || step.ID() == LineServices
	})
}

// find returns the step of a line, nil when there is none. Dry-equivalent bushels that are also the
// settled quantity have that line alone.
func (s *Settlement) find(id string) *worksheet.Step {
	if step, ok := s.Sheet.Step(id); ok {
		return step
	}
	if id == LineBushels {
		return s.Bushels
	}
	return nil
}

// Changed are the lines on which the two sides part.
func (c *Comparison) Changed() []Line {
	var out []Line
	for _, l := range c.Lines {
		if l.Differs() {
			out = append(out, l)
		}
	}
	return out
}

// Line finds a line by the id of its steps, such as "settled" for the weight,
// "bushels" or "payable".
func (c *Comparison) Line(id string) (Line, bool) {
	for _, l := range c.Lines {
		if l.ID == id {
			return l, true
		}
	}
	return Line{}, false
}

// line adds the line of one step that is on one side or on both; the other may be nil.
func (c *Comparison) line(one, before, after *worksheet.Step) {
	l := Line{ID: one.ID(), Label: one.Label()}
	l.Before = c.side(c.Before, before, ".before")
	l.After = c.inUnitOf(l.Before, c.side(c.After, after, ".after"))
	if c.comparable(l) {
		change := worksheet.Less(orZero(l.After, l.Before), orZero(l.Before, l.After))
		l.Change = c.Sheet.Work(l.ID+".change", l.Label, change, quantity.Unrounded, worksheet.Unsourced)
	}
	c.Lines = append(c.Lines, l)
}

// comparable reports whether the two sides of a line can be subtracted.
func (c *Comparison) comparable(l Line) bool {
	if l.Before == nil || l.After == nil {
		return true
	}
	unit := l.Before.Value().Unit()
	return unit == l.After.Value().Unit() && !(unit.IsMoney() && c.currencies())
}

// currencies reports whether the two sides pay in different money.
func (c *Comparison) currencies() bool {
	a, b := c.Before.Edition, c.After.Edition
	return a != nil && b != nil && a.Units.Currency != b.Units.Currency
}

// orZero is a step, or zero as the other side writes it.
func orZero(step, other *worksheet.Step) worksheet.Operand {
	if step == nil {
		return worksheet.Const(other.Value().Sub(other.Value()))
	}
	return step
}

// side is a step as compared: payments to the grower are negative.
func (c *Comparison) side(s *Settlement, step *worksheet.Step, suffix string) *worksheet.Step {
	if step == nil {
		return nil
	}
	for _, d := range s.Deductions {
		if d.Step == step && d.Direction == rule.Pays {
			zero := worksheet.Const(quantity.Zero(step.Value().Unit()))
			return c.Sheet.Work(step.ID()+suffix, message.New("%s (premium)", step.Label()), worksheet.Less(zero, step), quantity.Unrounded, worksheet.Unsourced)
		}
	}
	return step
}

// inUnitOf turns a weight into the unit of the other side's, rounded as that
// side rounds weights.
func (c *Comparison) inUnitOf(other, step *worksheet.Step) *worksheet.Step {
	if other == nil || step == nil || other.Value().Unit() == step.Value().Unit() {
		return step
	}
	unit := other.Value().Unit()
	factor, err := quantity.MassFactor(step.Value().Unit(), unit)
	if err != nil {
		return step
	}
	id, label := step.ID()+".converted", message.New("%s in %s", step.Label(), unit)
	return c.Sheet.Work(id, label, worksheet.Times(step, worksheet.Const(factor)), c.Before.Edition.Rounding.Weight, worksheet.Unsourced)
}
