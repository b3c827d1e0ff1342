package moving

import (
	"tenthpoint/internal/entry"
	"tenthpoint/internal/entry/typed"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// place is the destination of a figure.
type place func(*reading) *quantity.Amount

// aWeight is a field for a weight, in the unit of the house's scales unless it says another.
func aWeight(id string, label message.Text, at place) field {
	return typed.As(typed.Field{ID: id, Label: label, Form: typed.Figure, Unit: quantity.Plain}, func(r *reading, text string) (err error) {
		if text != "" {
			*at(r), err = entry.ParseHeld(label.String(), text, r.house.Unit)
		}
		return err
	})
}

func aPercent(id string, label message.Text, at place) field {
	return typed.As(typed.Field{ID: id, Label: label, Form: typed.Figure, Unit: quantity.Percent}, func(r *reading, text string) (err error) {
		if text != "" {
			*at(r), err = entry.Percent(label.String()).Parse(text)
		}
		return err
	})
}

// mostFigure is more than any figure of a movement, in whole units: it keeps out what was typed by
// accident.
const mostFigure = 10_000_000

// aFigure is a field for a figure in one of several units, the first where it says none.
func aFigure(id string, label message.Text, at place, units ...quantity.Unit) field {
	return typed.As(typed.Field{ID: id, Label: label, Form: typed.Figure, Unit: units[0]}, func(r *reading, text string) (err error) {
		if text != "" {
			unit := entry.SaidUnit(text, units[0], units[1:]...)
			*at(r), err = quantity.Field{Name: label.String(), Unit: unit, Places: 3, Min: quantity.Zero(unit), Max: quantity.Int(mostFigure, unit)}.Parse(text)
		}
		return err
	})
}

// aLength is a field for a length, in feet unless it says metres; below zero for a hole.
func aLength(id string, label message.Text, at place) field {
	return typed.As(typed.Field{ID: id, Label: label, Form: typed.Figure, Unit: quantity.Foot}, func(r *reading, text string) (err error) {
		*at(r), err = entry.ParseLength(label.String(), text)
		return err
	})
}
