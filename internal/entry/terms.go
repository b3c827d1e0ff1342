package entry

import (
	"slices"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/title"
)

// LaterText in the field of the price is that there is none yet.
const LaterText = "later"

// PostedText in the field of the price takes the price posted for the grain and the day.
const PostedText = "posted"

// centPlaces is the fewest decimals a price is written with.
const centPlaces = 2

// termsFields say where the grain went, whose it is and what becomes of it. The
// price comes after the terms: a contract brings its own, and one that is typed
// counts. What owners have agreed on for themselves comes last.
func (f *Form) termsFields(outbound bool) []Field {
	terms, price := termsField(), priceField()
	terms.Seldom, price.Seldom = outbound, outbound
	if f.start.Past {
		return []Field{binField(), pastTermsField(), pastNumberField(), whoseField(), price, priceSourceField(), ownerTermsField(), oldTicketField(), remarkField()}
	}
	return slices.Concat([]Field{
		binField(), terms, whoseField(), price, seldom(priceSourceField()), ownerTermsField(),
		remarkField(),
	}, paperFields())
}

func remarkField() Field {
	return word("remark", "Remark", TermsPart, func(d *load.Details) *string { return &d.Remark })
}

// oldTicketField is the number of a load in the old books.
func oldTicketField() Field {
	return word("old-ticket", "Old ticket", TermsPart, func(d *load.Details) *string { return &d.OldTicket })
}

// pastTermsField is the disposition of a load in the old books: its contract need not be on the
// list, and the list has its price.
func pastTermsField() Field {
	return detail(Field{ID: "terms", Label: "Sold/stored", Kind: Find, Part: TermsPart}, func(d *draft, text string) error {
		terms, known := title.Read(text)
		if !known {
			return message.Invalid.Errorf("%q is not one of sold, stored, contract, receipt, delayed, bank, undecided; choose one or leave it empty", text)
		}
		d.details.Terms = terms
		return nil
	})
}

// pastNumberField takes the number of the contract or receipt, which a list has apart from the
// terms.
func pastNumberField() Field {
	return detail(Field{ID: "contract", Label: "Contract", Kind: Words, Part: TermsPart}, func(d *draft, text string) error {
		d.details.Terms.No = text
		return nil
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

// termsField takes what becomes of the grain: sold, stored, undecided, bank, receipt
// or delayed with a number, or the number of a contract, which brings its price.
func termsField() Field {
	f := Field{ID: "terms", Label: "Sold/stored", Kind: Find, Part: TermsPart, shown: TermsText}
	return detail(f, func(d *draft, text string) error {
		deal, err := d.readTerms(text)
		if err != nil {
			return err
		}
		d.details.Terms = deal.Terms
		if deal.Price != nil {
			d.details.Price, d.details.PriceSource, d.details.Posted = deal.Price, deal.PriceSource, nil
		}
		return nil
	})
}

// readTerms reads terms as they are typed. A contract is on the house's list, and
// has its price there.
func (d *draft) readTerms(text string) (load.Deal, error) {
	terms, known := title.Read(text)
	number := strings.TrimSpace(text)
	switch {
	case known && terms.Under == title.Contract:
		number = terms.No
	case known:
		return load.Deal{Terms: terms}, title.Terms{Under: terms.Under, No: terms.No}.Check()
	}
	c, err := Contract(d.house, number)
	if err != nil {
		return load.Deal{}, err
	}
	if end, closed := c.Closed(); closed {
		return load.Deal{}, message.Refused.Errorf("contract %s was ended on %s, and no load is delivered on it. Name another", c.Number, end.Day)
	}
	return dealOn(c), nil
}

// dealOn is grain delivered on a contract, at its price where it has one.
func dealOn(c elevator.ContractTerms) load.Deal {
	deal := load.Deal{Terms: title.Terms{Under: title.Contract, No: c.Number}}
	if c.Form == elevator.DelayedPrice {
		deal.Under = title.DelayedPrice
	}
	if c.HasPrice() {
		deal.Price, deal.PriceSource = &c.Price, "contract "+c.Number
	}
	return deal
}

// TermsText returns the terms of the grain as its field's text.
func TermsText(l *load.Load) string { return l.Details.Terms.Text() }

// whoseField takes whose the grain is, where that does not follow from its terms.
func whoseField() Field {
	f := Field{ID: "whose", Label: "Whose grain", Kind: Find, Part: TermsPart, Seldom: true, shown: func(l *load.Load) string { return string(l.Details.Whose) }}
	return detail(f, func(d *draft, text string) error {
		whose, err := title.ReadWhose(text)
		if err != nil {
			return err
		}
		terms := d.details.Terms
		terms.Whose = whose
		if err := terms.Check(); err != nil {
			return err
		}
		d.details.Terms = terms
		return nil
	})
}

// priceField takes money per the unit the rates settle in; nothing or later is
// that there is none.
func priceField() Field {
	f := Field{ID: "price", Label: "Price", Kind: Figure, Part: TermsPart, shown: func(l *load.Load) string {
		if l.Details.Price == nil {
			return ""
		}
		return l.Details.Price.Fixed(centPlaces)
	}}
	return detail(f, func(d *draft, text string) error {
		deal := d.details.Deal()
		if err := d.readPrice(&deal, text); err != nil {
			return err
		}
		if d.details.Direction == load.Outbound {
			deal.Terms = d.details.Terms
		}
		d.details.Terms, d.details.Price, d.details.PriceSource, d.details.Posted = deal.Terms, deal.Price, deal.PriceSource, deal.Posted
		return nil
	})
}

// readPrice reads the price of a deal. Grain with a price of which nobody has said
// what becomes of it is sold.
func (d *draft) readPrice(deal *load.Deal, text string) error {
	if text == "" || strings.EqualFold(text, LaterText) {
		deal.Price, deal.PriceSource, deal.Posted = nil, "", nil
		return nil
	}
	posted, err := d.house.Posted(d.details.Commodity, d.day())
	if err != nil {
		return err
	}
	e, err := d.rates()
	if err != nil {
		return err
	}
	if e == nil {
		return ErrPriceOfWhat
	}
	deal.PriceSource = d.origin.Price
	if strings.EqualFold(text, PostedText) {
		if posted == nil {
			return message.NotFound.Errorf("no price of %s is posted for %s. Type the price, or post it first", e.Commodity.Name, d.day())
		}
		text, deal.PriceSource = posted.Price.Figure(), PostedText
	}
	a, err := ParsePrice(text, e.Units.Settle)
	if err != nil {
		return err
	}
	deal.Price, deal.Posted = &a, posted
	if !deal.IsDecided() {
		deal.Under, deal.Whose = title.CashSale, ""
	}
	return nil
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
