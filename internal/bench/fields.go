package bench

import "tenthpoint/internal/quantity"

// The figures people type at the bench, with how far each may sensibly go.
var (
	// DialField is a dial reading, to a tenth of a division.
	DialField = quantity.Field{Name: "Dial reading", Unit: quantity.Dial, Places: 1, Min: quantity.Zero(quantity.Dial), Max: quantity.Int(1000, quantity.Dial)}
	// MoistureField is a moisture from a meter or a certificate, to 0.01 %.
	MoistureField = quantity.Field{Name: "Moisture", Unit: quantity.Percent, Places: 2, Min: quantity.Of("0.1", quantity.Percent), Max: quantity.Int(60, quantity.Percent)}
	// MassField is the grain weighed into a meter, in g.
	MassField = quantity.Field{Name: "Sample mass", Unit: quantity.Gram, Places: 1, Min: quantity.Int(1, quantity.Gram), Max: quantity.Int(2000, quantity.Gram)}
	// DishField is a weighing of an oven dish, to 0.1 mg.
	DishField = quantity.Field{Name: "Dish weight", Unit: quantity.Gram, Places: 4, Min: quantity.Zero(quantity.Gram), Max: quantity.Int(2000, quantity.Gram)}
	// FahrenheitField and CelsiusField are temperatures of grain and room.
	FahrenheitField = quantity.Field{Name: "Temperature", Unit: quantity.Fahrenheit, Places: 1, Min: quantity.Int(-60, quantity.Fahrenheit), Max: quantity.Int(250, quantity.Fahrenheit)}
	CelsiusField    = quantity.Field{Name: "Temperature", Unit: quantity.Celsius, Places: 1, Min: quantity.Int(-50, quantity.Celsius), Max: quantity.Int(120, quantity.Celsius)}
)
