package moving

import (
	"strings"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// place is where a figure goes.
type place func(*reading) *quantity.Amount

// aWeight is a field for a weight, in the unit of the house's scales unless it says another.
func aWeight(id string, label message.Text, at place) Field {
	return Field{ID: id, Label: label, Form: Figure, Unit: quantity.Plain, read: func(r *reading, text string) (err error) {
		if text != "" {
			*at(r), err = entry.ParseWeight(label.String(), text, r.house.Unit)
		}
		return err
	}}
}

func aPercent(id string, label message.Text, at place) Field {
	return Field{ID: id, Label: label, Form: Figure, Unit: quantity.Percent, read: func(r *reading, text string) (err error) {
		if text != "" {
			*at(r), err = entry.Percent(label.String()).Parse(text)
		}
		return err
	}}
}

// mostFigure is more than any figure of a movement; longest and lowest are more than any length of a
// bin, in whole units. They keep out what was typed by accident.
const (
	mostFigure = 10_000_000
	longest    = 2000
)

// aFigure is a field for a figure in one of several units, the first where it says none.
func aFigure(id string, label message.Text, at place, units ...quantity.Unit) Field {
	return Field{ID: id, Label: label, Form: Figure, Unit: units[0], read: func(r *reading, text string) (err error) {
		if text != "" {
			unit := saidUnit(text, units)
			*at(r), err = quantity.Field{Name: label.String(), Unit: unit, Places: 3, Min: quantity.Zero(unit), Max: quantity.Int(mostFigure, unit)}.Parse(text)
		}
		return err
	}}
}

// aLength is a field for a length, in feet unless it says metres; below zero for a hole.
func aLength(id string, label message.Text, at place) Field {
	return Field{ID: id, Label: label, Form: Figure, Unit: quantity.Foot, read: func(r *reading, text string) (err error) {
		if text != "" {
			unit := saidUnit(text, []quantity.Unit{quantity.Foot, quantity.Metre})
			*at(r), err = quantity.Field{Name: label.String(), Unit: unit, Places: 3, Min: quantity.Int(-longest, unit), Max: quantity.Int(longest, unit)}.Parse(text)
		}
		return err
	}}
}

// saidUnit is the unit that a text ends with, the first where it ends with none of them.
func saidUnit(text string, units []quantity.Unit) quantity.Unit {
	for _, u := range units {
		if strings.HasSuffix(text, u.String()) {
			return u
		}
	}
	return units[0]
}
