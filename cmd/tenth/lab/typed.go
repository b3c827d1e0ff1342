package lab

import (
	"slices"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/quantity"
)

// Figures of the bench as people type them.

// temperatureIn reads a temperature with its scale: "65F", "18.5 C".
func temperatureIn(name, text string) (quantity.Amount, error) {
	return entry.Temperature(name, text, quantity.Plain)
}

// optional reads a figure that may be left out, as no figure at all.
func optional(f quantity.Field, text string) (quantity.Amount, error) {
	if strings.TrimSpace(text) == "" {
		return quantity.Amount{}, nil
	}
	return f.Parse(text)
}

// pointsIn reads points of moisture above zero.
func pointsIn(name, text string) (quantity.Amount, error) {
	return optional(quantity.Field{Name: name, Unit: quantity.Point, Places: 2, Min: quantity.Of("0.01", quantity.Point), Max: quantity.Int(20, quantity.Point)}, text)
}

// limitIn reads a moisture limit; none when it is left out or "none".
func limitIn(name, text string) (quantity.Amount, error) {
	if strings.EqualFold(text, "none") {
		return quantity.Amount{}, nil
	}
	f := moisture.MoistureField
	f.Name = name
	return optional(f, text)
}

// spanIn reads two figures with two points between them, such as 8..20.
func spanIn(name, text string, one func(name, text string) (quantity.Amount, error)) (quantity.Span, error) {
	if text == "" {
		return quantity.Span{}, nil
	}
	low, high, ok := strings.Cut(text, "..")
	if !ok {
		return quantity.Span{}, terminal.Refusal("Write the lowest and the highest, like 8..20 or 50F..90F", "%s %q is no range", name, text)
	}
	var s quantity.Span
	var err error
	if s.Low, err = one(name, low); err != nil {
		return s, err
	}
	s.High, err = one(name, high)
	return s, err
}

// words reads "count=2,near=0.5,dries": names with their values, each of them
// known.
func words(text string, known ...string) (map[string]string, error) {
	out := map[string]string{}
	for _, one := range strings.Split(text, ",") {
		name, value, _ := strings.Cut(one, "=")
		name = strings.TrimSpace(name)
		if name == "" {
			continue
		}
		if !slices.Contains(known, name) {
			return nil, terminal.Refusal("Known here: "+strings.Join(known, ", "), "%q says nothing here", name)
		}
		out[name] = strings.TrimSpace(value)
	}
	return out, nil
}

// capital capitalizes the first letter.
func capital(text string) string {
	if text == "" {
		return text
	}
	return strings.ToUpper(text[:1]) + text[1:]
}
