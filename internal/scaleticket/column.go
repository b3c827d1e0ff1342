package scaleticket

import (
	"strings"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// minus is the sign of deductions.
const minus = "−"

// column formats figures that are added by eye: all have the same number of decimals, so that their
// digits line up.
type column struct{ places int32 }

// columnOf makes a column wide enough for each of the texts, which are figures
// as they would be written alone.
func columnOf(texts ...string) column {
	var col column
	for _, text := range texts {
		figure, _, _ := strings.Cut(text, " ")
		if _, decimals, ok := strings.Cut(figure, "."); ok && !strings.HasSuffix(decimals, "…") {
			col.places = max(col.places, int32(len(decimals)))
		}
	}
	return col
}

// columnOfSteps makes a column for steps of a working.
func columnOfSteps(steps ...*worksheet.Step) column {
	texts := make([]string, 0, len(steps))
	for _, s := range steps {
		if s != nil && s.Kind() != worksheet.NotApplied {
			texts = append(texts, s.Printed())
		}
	}
	return columnOf(texts...)
}

// figure formats an amount with its sign.
func (col column) figure(a quantity.Amount) string {
	if a.Sign() < 0 {
		return minus + a.Neg().FixedString(col.places)
	}
	return a.FixedString(col.places)
}

// off writes an amount that is taken off; one below zero is added.
func (col column) off(a quantity.Amount) string {
	if a.Sign() < 0 {
		return "+" + a.Neg().FixedString(col.places)
	}
	return minus + a.FixedString(col.places)
}

// on writes an amount that is added to those above it.
func (col column) on(a quantity.Amount) string { return col.off(a.Neg()) }

// toOwner writes a sum as the owner counts it: + to the owner, - from the owner, nothing without a
// sign.
func (col column) toOwner(a quantity.Amount) string {
	if a.IsZero() {
		return col.figure(a)
	}
	return col.on(a)
}
