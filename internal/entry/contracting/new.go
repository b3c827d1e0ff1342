package contracting

import (
	"errors"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/entry/typed"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// newFields are the fields of a new contract; they are read together, since most depend on form and
// grain.
var newFields = []typed.Field{
	{ID: "number", Label: message.New("Number"), Required: true},
	{ID: "grower", Label: message.New("Grower"), Form: typed.OneGrower, Required: true},
	{ID: "commodity", Label: message.New("Grain"), Form: typed.OneGrain, Required: true},
	{ID: "form", Label: message.New("Type"), Form: typed.OneOf, Choices: sorts(), Required: true},
	{ID: "quantity", Label: message.New("Quantity"), Hint: message.New("as its rates settle: bu, cwt, or t"), Required: true},
	{ID: "price", Label: message.New("Price"), Form: typed.Figure, Unit: quantity.Dollar, Hint: message.New("where the type fixes it")},
	{ID: "basis", Label: message.New("Basis"), Form: typed.Figure, Unit: quantity.Dollar, Hint: message.New("of a basis contract, like -0.30")},
	{ID: "futures", Label: message.New("Futures price"), Form: typed.Figure, Unit: quantity.Dollar, Hint: message.New("of one hedged to arrive")},
	{ID: "month", Label: message.New("Futures month"), Hint: message.New("as the market writes it")},
	{ID: "from", Label: message.New("From"), Form: typed.OneDate, Hint: message.New("first day of delivery")},
	{ID: "until", Label: message.New("Until"), Form: typed.OneDate, Hint: message.New("last day of delivery"), Required: true},
	{ID: "tolerance", Label: message.New("Tolerance"), Form: typed.Figure, Unit: quantity.Percent, Hint: message.New("more or less than the quantity")},
	{ID: "quality", Label: message.New("Quality"), Hint: message.New("that it is priced on")},
	{ID: "sellers", Label: message.New("Sellers"), Hint: message.New("with shares, like 102=2/3; 901=1/3")},
}

// sorts are the forms of contract to choose from.
func sorts() []typed.Choice {
	var out []typed.Choice
	for _, form := range elevator.ContractForms() {
		out = append(out, typed.Choice{Word: form.Word(), Says: form.Name()})
	}
	return out
}

// NewFields are the fields of a new contract.
func NewFields() []typed.Field { return newFields }

// ReadNew makes the terms of a new contract of what is typed, by the ids of the fields.
func ReadNew(texts map[string]string, house entry.House) (elevator.ContractTerms, typed.Problems) {
	c, err := entry.ReadContract(house, entry.ContractTexts{
		Number: texts["number"], Grower: texts["grower"], Commodity: texts["commodity"], Quantity: texts["quantity"], Price: texts["price"], Until: texts["until"],
		Form: texts["form"], Basis: texts["basis"], Futures: texts["futures"], Month: texts["month"], From: texts["from"], Tolerance: texts["tolerance"], Quality: texts["quality"],
		Sellers: typed.List(texts["sellers"]),
	})
	problems := typed.Problems{}
	if several, is := err.(interface{ Unwrap() []error }); is {
		for _, one := range several.Unwrap() {
			var fault entry.Fault
			if errors.As(one, &fault) {
				problems[fault.Field] = fault.Err
			}
		}
	}
	return c, problems
}
