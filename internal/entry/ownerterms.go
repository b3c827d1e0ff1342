package entry

import (
	"slices"
	"strings"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/title"
)

// Owners who share in a load may each have a deal of their own: a tenant sells and
// the landlord stores.

// ownerTermsID is the field of the deals of owners.
const ownerTermsID = "owner-terms"

// ownerTermsField accepts "102=sold at 4.15; 901=stored; 903=delayed D-7, depositor": an owner of
// the load, the terms of that part, whose grain it is where that does not follow, and its price. An
// empty text or none means that all owners have the deal of the load.
func ownerTermsField() Field {
	f := Field{ID: ownerTermsID, Label: "Terms by owner", Kind: Words, Part: TermsPart, Seldom: true, shown: OwnerTermsText}
	return detail(f, func(d *draft, text string) error {
		owners := slices.Clone(d.details.Shares)
		for i := range owners {
			owners[i].Own = nil
		}
		if !strings.EqualFold(text, noShares) {
			for _, one := range strings.FieldsFunc(text, func(r rune) bool { return r == ';' }) {
				if err := d.readOwnerTerms(owners, one); err != nil {
					return err
				}
			}
		}
		d.details.Shares = owners
		return nil
	})
}

// readOwnerTerms reads the deal of one owner into the list of owners.
func (d *draft) readOwnerTerms(owners []load.Owner, text string) error {
	name, terms, ok := strings.Cut(text, "=")
	if !ok {
		return message.Invalid.Errorf("%q is no owner and what becomes of that part. Write it like 901=stored or 102=sold at 4.15", strings.TrimSpace(text))
	}
	g, err := Grower(d.house, strings.TrimSpace(name))
	if err != nil {
		return err
	}
	i := slices.IndexFunc(owners, func(o load.Owner) bool { return o.ID == g.ID })
	switch {
	case i < 0:
		return message.Invalid.Errorf("%s has no share in this load; write the shares first", g.Name)
	case owners[i].Own != nil:
		return message.Invalid.Errorf("what becomes of %s's part is given twice; give it once", g.Name)
	}
	owners[i].Own, err = d.readDeal(terms)
	return err
}

// readDeal reads terms, whose it is and a price: "delayed D-7, depositor", "sold at
// 4.15".
func (d *draft) readDeal(text string) (*load.Deal, error) {
	words, price, priced := strings.Cut(text, " at ")
	words, whose, _ := strings.Cut(words, ",")
	deal, err := d.readTerms(words)
	if err != nil {
		return nil, err
	}
	if deal.Whose, err = title.ReadWhose(whose); err != nil {
		return nil, err
	}
	if !priced {
		return &deal, deal.Check()
	}
	plain, err := priceField().plainIn(d.house, price)
	if err != nil {
		return nil, err
	}
	if err := d.readPrice(&deal, plain); err != nil {
		return nil, err
	}
	return &deal, deal.Check()
}

// OwnerTermsText is the deals of owners as their field holds them.
func OwnerTermsText(l *load.Load) string {
	var out []string
	for _, o := range l.Details.Shares {
		if o.Own != nil {
			out = append(out, codeOf(o.Party)+"="+DealText(*o.Own))
		}
	}
	return strings.Join(out, "; ")
}

// DealText is a deal as the field of owners' deals takes it back.
func DealText(d load.Deal) string {
	text := d.Terms.Text()
	if text == "" {
		text = string(title.Undecided)
	}
	if d.Whose != "" {
		text += ", " + string(d.Whose)
	}
	if d.Price != nil {
		text += " at " + d.Price.Fixed(centPlaces)
	}
	return text
}
