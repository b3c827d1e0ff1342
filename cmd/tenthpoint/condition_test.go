package main

import (
	"testing"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalelink"
	"tenthpoint/ui/session"
)

// A reading is described by its gravest fault, and never counts as at rest unless it may go on a
// ticket.
func TestConditionOfAReading(t *testing.T) {
	scale := scalelink.Scale{Name: "1", Capacity: quantity.Int(120000, quantity.Lb), Division: quantity.Int(20, quantity.Lb)}
	lb := func(n int64) quantity.Amount { return quantity.Int(n, quantity.Lb) }
	for _, c := range []struct {
		reading scalelink.Reading
		want    session.Condition
	}{
		{scalelink.Reading{Weight: lb(52300), State: scalelink.Stable}, session.AtRest},
		{scalelink.Reading{Weight: lb(0), State: scalelink.Stable}, session.AtRest},
		{scalelink.Reading{Weight: lb(52300), State: scalelink.Motion}, session.Moving},
		{scalelink.Reading{Weight: lb(52300)}, session.Moving},
		{scalelink.Reading{Weight: lb(24000), State: scalelink.Stable, Mode: scalelink.Net}, session.Net},
		{scalelink.Reading{Weight: lb(0), State: scalelink.Over}, session.Over},
		{scalelink.Reading{Weight: lb(131000), State: scalelink.Stable}, session.Over},
		{scalelink.Reading{Weight: lb(0), State: scalelink.Under}, session.Under},
		{scalelink.Reading{Weight: lb(-200), State: scalelink.Stable}, session.BelowZero},
		{scalelink.Reading{Weight: lb(0), State: scalelink.Fault}, session.Faulty},
		{scalelink.Reading{Weight: quantity.Int(11000, quantity.Kg), State: scalelink.Stable}, session.OtherUnit},
		{scalelink.Reading{Weight: lb(24010), State: scalelink.Stable}, session.Undivided},
	} {
		if got := conditionOf(scale.Accept(c.reading), c.reading); got != c.want {
			t.Errorf("%+v: condition %d, want %d", c.reading, got, c.want)
		}
	}
}
