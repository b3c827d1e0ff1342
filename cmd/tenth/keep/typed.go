package keep

import (
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
)

// temperatureIn reads a temperature that must be there, with F or C.
func temperatureIn(text string) (quantity.Amount, error) {
	a, err := entry.Temperature("Temperature", text, quantity.Plain)
	if err == nil && !quantity.IsTemperature(a) {
		err = terminal.Refusal("Write it with F or C, like 50F", "no temperature is given")
	}
	return a, err
}

// amountIn reads a figure with one of several units; none where it is left out.
func amountIn(name, text string, units ...quantity.Unit) (quantity.Amount, error) {
	if strings.TrimSpace(text) == "" {
		return quantity.Amount{}, nil
	}
	a, err := quantity.ParseAmount(text)
	for _, unit := range units {
		if err == nil && a.Unit() == unit {
			return a, nil
		}
	}
	return a, terminal.Refusal("Write figure and unit, like \"0.5 "+units[0].String()+"\"", "%s %q is not in a unit known here", name, text)
}

// figureIn reads a figure whose unit may be left out; none where it is left out.
func figureIn(name, text string, unit quantity.Unit, most int64) (quantity.Amount, error) {
	if strings.TrimSpace(text) == "" {
		return quantity.Zero(unit), nil
	}
	return quantity.Field{Name: name, Unit: unit, Places: 4, Min: quantity.Zero(unit), Max: quantity.Int(most, unit)}.Parse(text)
}

// grainIn is the id of a commodity. What is none but has a curve, such as long
// rice, is taken as it is.
func grainIn(text string, others ...string) (string, error) {
	for _, id := range others {
		if text == id {
			return id, nil
		}
	}
	c, err := entry.Commodity(text)
	return c.ID, err
}

// bushelOf is the legal bushel of a commodity; not set where it has none.
func bushelOf(text string) (quantity.Amount, error) {
	if text == "" {
		return quantity.Amount{}, nil
	}
	c, err := entry.Commodity(text)
	if err != nil {
		return quantity.Amount{}, err
	}
	known, _ := grain.ByID(c.ID)
	return known.Bushel, nil
}
