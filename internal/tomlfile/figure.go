package tomlfile

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Amount is a required figure in one of the units.
func (t *Table) Amount(key string, units ...quantity.Unit) quantity.Amount {
	a, _ := t.amount(key, true, units)
	return a
}

// Figure returns an amount and whether it could be read, for a caller that checks it further.
func (t *Table) Figure(key string, units ...quantity.Unit) (a quantity.Amount, ok bool) {
	return t.amount(key, true, units)
}

// OptionalAmount returns a figure that may be left out; found reports whether it is there.
func (t *Table) OptionalAmount(key string, units ...quantity.Unit) (a quantity.Amount, found bool) {
	return t.amount(key, false, units)
}

func (t *Table) amount(key string, required bool, units []quantity.Unit) (quantity.Amount, bool) {
	s, ok := t.text(key, required)
	if !ok {
		return fallback(units), false
	}
	a, err := quantity.ParseAmount(s)
	if err != nil {
		t.AddProblem(key, message.New("%s: %v", t.Name(key), err), writeFigure(units))
		return fallback(units), false
	}
	if len(units) > 0 && !slices.Contains(units, a.Unit()) {
		t.AddProblem(key, message.New("%s is in %s", t.Name(key), a.Unit()), message.New("It must be in %s.", unitList(units)))
		return fallback(units), false
	}
	return a, true
}

// fallback lets the caller continue with zero in a fitting unit after a problem.
func fallback(units []quantity.Unit) quantity.Amount {
	if len(units) == 0 {
		return quantity.Amount{}
	}
	return quantity.Zero(units[0])
}

// writeFigure advises how an amount is written.
func writeFigure(units []quantity.Unit) message.Text {
	if len(units) == 0 {
		return message.New("Write the figure in digits and its unit.")
	}
	return message.New("Write the figure in digits and its unit, %s.", unitList(units))
}

func unitList(units []quantity.Unit) message.Text {
	names := make([]any, len(units))
	for i, u := range units {
		names[i] = message.Own(u.String())
	}
	return message.List(" or ", names...)
}

// Rounding is a required step and rule.
func (t *Table) Rounding(key string) quantity.Rounding {
	r, _ := t.rounding(key, true)
	return r
}

// OptionalRounding returns a step and rule, or the default when it is left out.
func (t *Table) OptionalRounding(key string, otherwise quantity.Rounding) quantity.Rounding {
	if r, ok := t.rounding(key, false); ok {
		return r
	}
	return otherwise
}

func (t *Table) rounding(key string, required bool) (quantity.Rounding, bool) {
	s, ok := t.text(key, required)
	if !ok {
		return quantity.Rounding{}, false
	}
	r, err := quantity.ParseRounding(s)
	if err != nil {
		t.AddProblem(key, message.New("%s: %v", t.Name(key), err), message.New("Write the place and the rule, such as \"0.01 half-up\"."))
		return quantity.Rounding{}, false
	}
	return r, true
}

// Date is a required day.
func (t *Table) Date(key string) quantity.Date {
	d, _ := t.date(key, true)
	return d
}

// OptionalDate returns a day that may be left out; it is then the zero Date.
func (t *Table) OptionalDate(key string) quantity.Date {
	d, _ := t.date(key, false)
	return d
}

func (t *Table) date(key string, required bool) (quantity.Date, bool) {
	s, ok := t.text(key, required)
	if !ok {
		return quantity.Date{}, false
	}
	d, err := quantity.ParseDate(s)
	if err != nil {
		t.AddProblem(key, message.New("%s: %v", t.Name(key), err), message.New("Write a day of the calendar as year-month-day."))
	}
	return d, err == nil
}
