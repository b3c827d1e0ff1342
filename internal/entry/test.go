package entry

import (
	"slices"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
)

// TickedText is the text of a ticked checkbox.
const TickedText = "yes"

// Test reads one test at the moisture bench, whose texts go by the fields of
// [TestFigures] and by temperature, room, dryer and reason.
type Test struct {
	// Begun holds the values that are not typed: number, method, crop, day, tester, meter and
	// chart.
	Begun moisture.Reading
	// Degrees is the unit of the thermometer; with [quantity.Plain] a text must have its letter.
	Degrees quantity.Unit
	// Signs are the number format of the elevator's language.
	Signs  message.Figures
	Needed []string // figures that may not be left out
}

// TestFigure is one figure of a test.
type TestFigure struct {
	ID    string
	Field quantity.Field
	into  func(*moisture.Reading) *quantity.Amount
}

// TestFigures are the figures of a method, in the order they are typed.
func TestFigures(m meter.Method) []TestFigure {
	percent := TestFigure{"percent", moisture.MoistureField, func(r *moisture.Reading) *quantity.Amount { return &r.Percent }}
	mass := TestFigure{"mass", moisture.MassField, func(r *moisture.Reading) *quantity.Amount { return &r.Mass }}
	switch m {
	case meter.ByDial:
		return []TestFigure{mass, {"dial", moisture.DialField, func(r *moisture.Reading) *quantity.Amount { return &r.Dial }}}
	case meter.Direct:
		return []TestFigure{mass, percent}
	case meter.ByOven:
		return []TestFigure{
			{"wet", named(moisture.DishField, "Dish with wet grain"), func(r *moisture.Reading) *quantity.Amount { return &r.Dish.Wet }},
			{"tare", named(moisture.DishField, "Empty dish"), func(r *moisture.Reading) *quantity.Amount { return &r.Dish.Tare }},
			{"dry", named(moisture.DishField, "Dish with dried grain"), func(r *moisture.Reading) *quantity.Amount { return &r.Dish.Dry }},
		}
	}
	return []TestFigure{percent}
}

// named is a figure with a name of its own.
func named(f quantity.Field, name string) quantity.Field {
	f.Name = name
	return f
}

// Read reads the texts. A figure without a text is not recorded; the faults are in field order.
func (t Test) Read(texts map[string]string) (moisture.Reading, []Fault) {
	r := t.Begun
	var faults []Fault
	put := func(into *quantity.Amount, id, name string, read func(text string) (quantity.Amount, error)) {
		text := strings.TrimSpace(texts[id])
		if text == "" && !slices.Contains(t.Needed, id) {
			return
		}
		text, err := quantity.WithPoint(name, text, t.Signs)
		var a quantity.Amount
		if err == nil {
			a, err = read(text)
		}
		if err != nil {
			faults = append(faults, Fault{id, err})
		}
		*into = a
	}
	for _, f := range TestFigures(r.Method) {
		put(f.into(&r), f.ID, f.Field.Name, f.Field.Parse)
	}
	if r.Method == meter.Typed {
		r.Reason = strings.TrimSpace(texts["reason"])
	}
	if !r.Method.UsesMeter() {
		return r, faults
	}
	for _, temperature := range []struct {
		id, name string
		into     *quantity.Amount
	}{{"temperature", "Sample temperature", &r.Sample}, {"room", "Room temperature", &r.Room}} {
		put(temperature.into, temperature.id, temperature.name, func(text string) (quantity.Amount, error) { return Temperature(temperature.name, text, t.Degrees) })
	}
	put(&r.TestWeight, "test-weight", "Test weight", ParseChartWeight)
	r.FromDryer = r.FromDryer || texts["dryer"] == TickedText
	return r, faults
}

// ParseChartWeight reads a test weight for a chart that needs it, in lb/bu, or in kg/hL if so
// marked.
func ParseChartWeight(text string) (quantity.Amount, error) {
	unit := SaidUnit(text, quantity.LbPerBushel, quantity.KgPerHL)
	return quantity.Field{Name: "Test weight", Unit: unit, Places: 2, Min: quantity.Int(1, unit), Max: quantity.Int(120, unit)}.Parse(text)
}
