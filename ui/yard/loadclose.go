package yard

import (
	"fmt"
	"strings"

	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// The codes under which grain is sold at once or stored; a contract goes by
// its own number.
const (
	soldCode   = "sold"
	storedCode = "stored"
)

// centPlaces is the fewest decimals a price is written with.
const centPlaces = 2

// termsLine is what becomes of the grain: sold, stored, or delivered on one of
// the grower's contracts.
func (f *LoadForm) termsLine() line {
	return detail(line{
		ID: "terms", label: session.Say("Sold/stored"), kind: model.FindField, Part: model.ClosePart, chars: 12,
		options: f.termsOptions,
		Shown:   session.TermsText,
	}, func(text string, to *load.Details) (string, error) {
		to.Disposition, to.ContractNo = load.Disposition(text), ""
		switch text {
		case "", soldCode, storedCode:
			return "", nil
		}
		c, ok := f.session.Known().Contract(text)
		if !ok {
			return "", fmt.Errorf("%s", session.Say("There is no contract %q. Choose sold, stored, or one of the grower's contracts", text))
		}
		to.Disposition, to.ContractNo = load.Contract, c.Number
		if to.Price == nil {
			price := c.Price
			to.Price, to.PriceSource = &price, "contract "+c.Number
		}
		return session.Say("%s at %s", c.Quantity, c.Price), nil
	})
}

func (f *LoadForm) termsOptions() []model.Option {
	out := []model.Option{
		{Code: soldCode, Name: session.Say("sold")},
		{Code: storedCode, Name: session.Say("stored for the owner")},
	}
	d := f.Now.Load.Details
	for _, c := range f.session.Known().Contracts {
		if c.Grower == d.Grower.ID && c.Commodity == d.Commodity {
			out = append(out, model.Option{Code: c.Number, Name: session.Say("contract"), Detail: session.Say("%s at %s until %s", c.Quantity, c.Price, c.Until)})
		}
	}
	return out
}

func (f *LoadForm) priceLine() line {
	unit := f.priceUnit()
	return detail(line{
		ID: "price", label: session.Say("Price"), unit: unit.String(), kind: model.FigureField, Part: model.ClosePart, chars: 7,
		Shown: func(l *load.Load) string {
			if l.Details.Price == nil {
				return ""
			}
			return l.Details.Price.Fixed(centPlaces)
		},
		hint: func(l *load.Load) string {
			if l.Details.Price == nil {
				return session.Say(l.Details.Disposition.Unpriced())
			}
			return session.Say(l.Details.PriceSource)
		},
	}, func(text string, to *load.Details) (string, error) {
		if text == "" {
			to.Price, to.PriceSource = nil, ""
			return "", nil
		}
		a, err := quantity.Field{
			Name: session.Say("Price"), Unit: unit, Places: 4,
			Min: quantity.Of("0.0001", unit), Max: quantity.Int(10_000, unit),
		}.Parse(withoutSign(text))
		if err != nil {
			return "", err
		}
		to.Price, to.PriceSource = &a, typedAtDesk
		return "", nil
	})
}

// withoutSign drops the sign that people put before money: "$4.15".
func withoutSign(text string) string {
	if strings.Contains(text, "/") {
		return text
	}
	return strings.TrimPrefix(strings.TrimSpace(text), "$")
}

// priceUnit is money per the unit that the rates settle in.
func (f *LoadForm) priceUnit() quantity.Unit {
	if e := f.editionFor(f.commodityID()); e != nil {
		return quantity.Dollar.Per(e.Units.Settle)
	}
	return quantity.DollarsPerBu
}
