package worksheet

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Difference is one line on which two sheets part.
type Difference struct {
	ID     string
	Label  message.Text
	Before quantity.Amount
	After  quantity.Amount
	// Change is After less Before, in their unit.
	Change quantity.Amount
}

// Compare lists the steps whose figures differ between two sheets, in the
// order of the first, then those that only the second has. A step missing on
// one side counts as zero there. Steps whose units differ have no change
// that is a number and are left to the reader of both sheets.
func Compare(before, after *Sheet) []Difference {
	var out []Difference
	for _, b := range before.steps {
		a, ok := after.Step(b.id)
		if !ok {
			out = appendChange(out, b, b.value, quantity.Zero(b.value.Unit()))
		} else if a.value.Unit() == b.value.Unit() {
			out = appendChange(out, b, b.value, a.value)
		}
	}
	for _, a := range after.steps {
		if _, ok := before.Step(a.id); !ok {
			out = appendChange(out, a, quantity.Zero(a.value.Unit()), a.value)
		}
	}
	return out
}

func appendChange(out []Difference, s *Step, before, after quantity.Amount) []Difference {
	if before.Equal(after) {
		return out
	}
	return append(out, Difference{ID: s.id, Label: s.label, Before: before, After: after, Change: after.Sub(before)})
}
