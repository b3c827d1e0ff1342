package entry

import (
	"strings"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
)

// LaterText in the field of the price is that it comes later.
const LaterText = "later"

// centPlaces is the fewest decimals a price is written with.
const centPlaces = 2

// termsFields are the destination and disposition of the grain. The price comes after the terms: a
// contract has its own, and a typed one takes precedence.
func (f *Form) termsFields(outbound bool) []Field {
	terms, price := termsField(), priceField()
	terms.Seldom, price.Seldom = outbound, outbound
	if f.start.Past {
		contract := word("contract", "Contract", TermsPart, func(d *load.Details) *string { return &d.ContractNo })
		return append([]Field{binField(), pastTermsField(), contract}, price, priceSourceField(), remarkField())
	}
	return []Field{
		binField(), terms, price, seldom(priceSourceField()),
		remarkField(),
	}
}

func remarkField() Field {
	return word("remark", "Remark", TermsPart, func(d *load.Details) *string { return &d.Remark })
}

// pastTermsField takes what became of a load in the old books: its contract need
// not be on the list, and the list says its price.
func pastTermsField() Field {
	return detail(Field{ID: "terms", Label: "Sold/stored", Kind: Find, Part: TermsPart}, func(d *draft, text string) error {
		switch terms := load.Disposition(strings.ToLower(text)); terms {
		case "", load.Sold, load.Stored, load.Contract:
			d.details.Disposition = terms
			return nil
		}
		return message.Invalid.Errorf("%q is not one of sold, stored, contract; choose one or leave it empty", text)
	})
}

func binField() Field {
	f := Field{ID: "bin", Label: "Pit or bin", Kind: Open, Part: TermsPart, shown: func(l *load.Load) string { return l.Details.Bin }}
	return detail(f, func(d *draft, text string) error {
		if text == "" {
			d.details.Bin = ""
			return nil
		}
		bin, err := Bin(d.house, text)
		if err == nil {
			d.details.Bin = bin
		}
		return err
	})
}

// termsField accepts sold, stored, or the number of a contract, which sets its price.
func termsField() Field {
	f := Field{ID: "terms", Label: "Sold/stored", Kind: Find, Part: TermsPart, shown: TermsText}
	return detail(f, func(d *draft, text string) error {
		switch terms := load.Disposition(strings.ToLower(text)); terms {
		case "", load.Sold, load.Stored:
			d.details.Disposition, d.details.ContractNo = terms, ""
			return nil
		}
		c, err := Contract(d.house, text)
		if err != nil {
			return err
		}
		d.details.Disposition, d.details.ContractNo = load.Contract, c.Number
		d.details.Price, d.details.PriceSource = &c.Price, "contract "+c.Number
		return nil
	})
}

// TermsText returns the disposition of the grain as its field's text.
func TermsText(l *load.Load) string {
	if l.Details.Disposition == load.Contract {
		return l.Details.ContractNo
	}
	return string(l.Details.Disposition)
}

// priceField accepts money per the unit the rates settle in; an empty text or later means that the
// price comes later. Grain with a price but no disposition is sold.
func priceField() Field {
	f := Field{ID: "price", Label: "Price", Kind: Figure, Part: TermsPart, shown: func(l *load.Load) string {
		if l.Details.Price == nil {
			return ""
		}
		return l.Details.Price.Fixed(centPlaces)
	}}
	return detail(f, func(d *draft, text string) error {
		if text == "" || strings.EqualFold(text, LaterText) {
			d.details.Price, d.details.PriceSource = nil, ""
			return nil
		}
		e, err := d.rates()
		if err != nil {
			return err
		}
		if e == nil {
			return ErrPriceOfWhat
		}
		a, err := ParsePrice(text, e.Units.Settle)
		if err != nil {
			return err
		}
		d.details.Price, d.details.PriceSource = &a, d.origin.Price
		if d.details.Disposition == "" && d.details.Direction != load.Outbound {
			d.details.Disposition = load.Sold
		}
		return nil
	})
}

func priceSourceField() Field {
	f := word("price-source", "Price from", TermsPart, func(d *load.Details) *string { return &d.PriceSource })
	read := f.read
	f.read = func(d *draft, text string) error {
		if text == "" {
			return nil
		}
		return read(d, text)
	}
	return f
}
