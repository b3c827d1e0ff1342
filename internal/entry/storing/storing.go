// Package storing is what is asked of grain that somebody wants to keep: until when, how warm, and at
// which prices it could be dried.
package storing

import (
	"tenthpoint/internal/dryness"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/entry/typed"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// The ids of the fields.
const (
	Until = "until"
	At    = "at"
	Fuel  = "fuel"
	Power = "power"
)

// asking is the question while its fields are read.
type asking struct {
	today quantity.Date
	dryness.Storing
}

var fields = []typed.Reader[*asking]{
	typed.As(typed.Field{ID: Until, Label: message.New("Keep until"), Form: typed.OneDate, Required: true}, readUntil),
	typed.As(typed.Field{ID: At, Label: message.New("Kept at"), Required: true, Hint: message.New("such as 50F or 10C")}, readAt),
	typed.As(typed.Field{ID: Fuel, Label: message.New("Price of fuel"), Hint: message.New("the grower's, such as 1.80 $/gal")},
		func(a *asking, text string) (err error) {
			a.FuelPrice, err = priceOf(text, quantity.Gallon)
			return err
		}),
	typed.As(typed.Field{ID: Power, Label: message.New("Price of power"), Hint: message.New("his, such as 0.12 $/kWh")},
		func(a *asking, text string) (err error) {
			a.PowerPrice, err = priceOf(text, quantity.KWh)
			return err
		}),
}

func readUntil(a *asking, text string) error {
	if text == "" {
		return nil
	}
	day, err := entry.ParseDay("Day", text, a.today)
	if err != nil {
		return err
	}
	if !day.After(a.today) {
		return message.Refused.Errorf("%s is not after today. Give a day that is still to come", day)
	}
	a.Days = quantity.Int(int64(a.today.DaysUntil(day)), quantity.Day)
	return nil
}

func readAt(a *asking, text string) error {
	if text == "" {
		return nil
	}
	at, err := entry.Temperature("Temperature", text, quantity.Plain)
	if err == nil && !quantity.IsTemperature(at) {
		err = message.Invalid.Errorf("%q is no temperature; write it with F or C, like 50F", text)
	}
	a.Temperature = at
	return err
}

// priceOf reads a price of a unit; none where it is left out.
func priceOf(text string, of quantity.Unit) (quantity.Amount, error) {
	if text == "" {
		return quantity.Amount{}, nil
	}
	price, err := quantity.ParseAmount(text)
	if err != nil || price.Unit() != quantity.Dollar.Per(of) || price.Sign() < 0 {
		return price, message.Invalid.Errorf("%q is no price of a %s. Write it like \"0.12 $/kWh\" or \"1.80 $/gal\"", text, of.String())
	}
	return price, nil
}

// Fields are the fields of the question.
func Fields() []typed.Field { return typed.FieldsOf(fields) }

// Read makes the question whole by what is typed, by the ids of the fields.
func Read(texts map[string]string, of dryness.Storing, today quantity.Date) (dryness.Storing, typed.Problems) {
	a := &asking{today: today, Storing: of}
	problems := typed.Read(a, fields, texts)
	return a.Storing, problems
}
