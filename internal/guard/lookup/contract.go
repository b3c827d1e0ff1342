package lookup

import (
	"tenthpoint/internal/book"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/title"
)

// contracts finds what the contracts that a load is delivered on have left.
func contracts(lists Lists, l *load.Load, s *guard.Setting) error {
	for at, deal := range l.Details.Deals() {
		if deal.Under != title.Contract {
			continue
		}
		terms, err := recordOf(lists, deal.No, func(c elevator.ContractTerms) string { return c.Number })
		if err != nil {
			return err
		}
		if terms.Number == "" { // on no list: there is nothing to compare with
			continue
		}
		k := guard.Contract{Number: terms.Number, Agreed: terms.Quantity, Parts: quantity.Int(1, quantity.Plain), Of: quantity.Int(1, quantity.Plain)}
		if at < len(l.Details.Shares) {
			k.Parts, k.Of = l.Details.Shares[at].Parts, l.Details.Shares[at].Of
		}
		if k.Left, err = left(lists, terms, l); err != nil {
			return err
		}
		s.Contracts = append(s.Contracts, k)
	}
	return nil
}

// left is the quantity of a contract less what the tickets in force have brought. The ticket that a
// load is to replace does not count: the load brings its grain again.
func left(lists Lists, c elevator.ContractTerms, of *load.Load) (quantity.Amount, error) {
	rows, err := lists.Loads(book.LoadFilter{Grower: c.Grower, Commodity: c.Commodity, Phases: []string{string(load.Ticketed)}})
	if err != nil {
		return quantity.Amount{}, err
	}
	remains := c.Quantity
	for _, r := range rows {
		if r.Ticket == of.InPlaceOf() || r.ID == of.ID || !isOn(r, c.Number) {
			continue
		}
		summary, err := r.Recorded().Summary()
		if err != nil {
			return quantity.Amount{}, err
		}
		if len(summary.Owners) == 0 && summary.Quantity.Unit() == remains.Unit() {
			remains = remains.Sub(summary.Quantity)
		}
		for i, part := range summary.Owners {
			if terms := r.TermsOf(i); terms.Under == title.Contract && terms.No == c.Number && part.Quantity.Unit() == remains.Unit() {
				remains = remains.Sub(part.Quantity)
			}
		}
	}
	return remains, nil
}

// isOn reports whether any owner's part of a load is on a contract.
func isOn(r book.LoadRow, number string) bool {
	if r.Disposition == string(title.Contract) && r.Contract == number {
		return true
	}
	for _, terms := range r.Titles {
		if terms.Under == title.Contract && terms.No == number {
			return true
		}
	}
	return false
}
