package moisture

import "tenthpoint/internal/quantity"

func pct(text string) quantity.Amount  { return quantity.Of(text, quantity.Percent) }
func pt(text string) quantity.Amount   { return quantity.Of(text, quantity.Point) }
func degC(text string) quantity.Amount { return quantity.Of(text, quantity.Celsius) }
func degF(text string) quantity.Amount { return quantity.Of(text, quantity.Fahrenheit) }
func gram(text string) quantity.Amount { return quantity.Of(text, quantity.Gram) }
func dial(text string) quantity.Amount { return quantity.Of(text, quantity.Dial) }
