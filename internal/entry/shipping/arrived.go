// Package shipping is what is typed of grain that left: what its destination found.
package shipping

import (
	"strings"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/entry/typed"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/shipment"
)

// Left is the load that arrived: its ticket, grain, and the unit it was weighed in.
type Left struct {
	Ticket    int64
	Commodity grain.Commodity
	Unit      quantity.Unit
	Today     quantity.Date
}

// arriving is an arrival while its fields are read.
type arriving struct {
	of Left
	shipment.Arrived
}

var fields = []typed.Reader[*arriving]{
	typed.As(typed.Field{ID: "weight", Label: message.New("Net weight there"), Form: typed.Figure, Required: true},
		func(a *arriving, text string) (err error) {
			if text != "" {
				a.Weight, err = entry.ParseWeight("Net weight there", text, a.of.Unit)
			}
			return err
		}),
	typed.As(typed.Field{ID: "day", Label: message.New("Day"), Form: typed.OneDate, Hint: message.New("without it, today")},
		func(a *arriving, text string) (err error) {
			if a.Day, err = entry.ParseDay("Day", text, a.of.Today); err == nil && a.Day.IsZero() {
				a.Day = a.of.Today
			}
			return err
		}),
	typed.As(typed.Field{ID: "paper", Label: message.New("Ticket or certificate there")},
		func(a *arriving, text string) error { a.Paper = text; return nil }),
	typed.As(typed.Field{ID: "scale", Label: message.New("Scale there")},
		func(a *arriving, text string) error { a.Scale = text; return nil }),
	typed.As(typed.Field{ID: "grade", Label: message.New("Grade there")},
		func(a *arriving, text string) error { a.Grade = text; return nil }),
	typed.As(typed.Field{ID: "found", Label: message.New("Results there"), Hint: message.New("moisture=14.4")}, readFound),
	typed.As(typed.Field{ID: "remark", Label: message.New("Remark")},
		func(a *arriving, text string) error { a.Remark = text; return nil }),
}

// readFound takes results as "moisture=14.4; test-weight=56", by the ids of the grain's factors.
func readFound(a *arriving, text string) error {
	for _, one := range typed.List(text) {
		name, figure, ok := strings.Cut(one, "=")
		factor, known := a.of.Commodity.Factor(grain.FactorID(strings.ToLower(strings.TrimSpace(name))))
		if !ok || !known {
			return message.Invalid.Errorf("%q is no result of this grain. Write it like moisture=14.4", one)
		}
		result, err := factor.Field().Parse(strings.TrimSpace(figure))
		if err != nil {
			return err
		}
		if a.Found == nil {
			a.Found = map[grain.FactorID]quantity.Amount{}
		}
		a.Found[factor.ID] = result
	}
	return nil
}

// Fields are the fields of an arrival.
func Fields() []typed.Field { return typed.FieldsOf(fields) }

// Read makes an arrival of what is typed, by the ids of the fields.
func Read(texts map[string]string, of Left) (shipment.Arrived, typed.Problems) {
	a := &arriving{of: of, Arrived: shipment.Arrived{Ticket: of.Ticket, Weight: quantity.Zero(of.Unit)}}
	problems := typed.Read(a, fields, texts)
	return a.Arrived, problems
}
