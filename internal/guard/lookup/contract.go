package lookup

import (
	"slices"

	"tenthpoint/internal/book"
	"tenthpoint/internal/contract"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/load"
	"tenthpoint/internal/published"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/title"
)

// contracts finds what the contracts that a load is delivered on have left. Before both weights there
// is nothing to compare with that, and no ticket is read.
func contracts(lists Lists, l *load.Load, s *guard.Setting) error {
	deals := l.Details.Deals()
	isOnContract := func(deal load.Deal) bool { return deal.Under == title.Contract }
	if _, weighed := l.Net(); !weighed || !slices.ContainsFunc(deals, isOnContract) {
		return nil
	}
	written, err := contractsIn(lists, s.Today)
	if err != nil {
		return err
	}
	for at, deal := range deals {
		named := slices.IndexFunc(written.all, func(c elevator.ContractTerms) bool { return c.Number == deal.No })
		if !isOnContract(deal) || named < 0 { // on no list: there is nothing to compare with
			continue
		}
		terms := written.all[named]
		k := guard.Contract{Number: terms.Number, Agreed: terms.Quantity, Parts: quantity.Int(1, quantity.Plain), Of: quantity.Int(1, quantity.Plain)}
		if at < len(l.Details.Shares) {
			k.Parts, k.Of = l.Details.Shares[at].Parts, l.Details.Shares[at].Of
		}
		if k.Left, err = written.left(s.House, terms, l); err != nil {
			return err
		}
		s.Contracts = append(s.Contracts, k)
	}
	return nil
}

// sold are the contracts of a book, their sellers named by the cards that go on.
type sold struct {
	lists Lists
	cards elevator.ByCode
	all   []elevator.ContractTerms
}

func contractsIn(lists Lists, today quantity.Date) (sold, error) {
	growers, err := book.RecordsIn[elevator.Grower](lists)
	if err != nil {
		return sold{}, err
	}
	received, err := book.RecordsIn[published.Received](lists)
	if err != nil {
		return sold{}, err
	}
	growers = published.Growers(growers, received, today)
	all, err := book.RecordsIn[elevator.ContractTerms](lists)
	cards := elevator.CardsByCode(growers)
	return sold{lists, cards, contract.UnderCards(all, cards)}, err
}

// left is the room left on a contract by its tickets, those of all its sellers. The ticket that a
// load is to replace does not count: the load brings its grain again.
func (s sold) left(house elevator.Profile, c elevator.ContractTerms, of *load.Load) (quantity.Amount, error) {
	together, sellers := contract.Together(s.all, c.Commodity, []string{c.Grower})
	var parts []contract.Part
	rows, err := s.ticketsOf(sellers, c.Commodity)
	if err != nil {
		return quantity.Amount{}, err
	}
	for _, r := range rows {
		if r.ID == of.ID || r.Ticket == of.InPlaceOf() {
			continue
		}
		own, err := s.deliveries(r, together)
		if err != nil {
			return quantity.Amount{}, err
		}
		parts = append(parts, own...)
	}
	for _, filled := range contract.Fill(together, parts, contract.OrderOf(house)).Contracts {
		if filled.Number == c.Number {
			return filled.Left, nil
		}
	}
	return c.Quantity, nil
}

// ticketsOf are the tickets in force of growers, each once.
func (s sold) ticketsOf(sellers []string, commodity string) (out []book.LoadRow, err error) {
	seen := map[string]bool{}
	for _, seller := range sellers {
		for _, code := range s.cards.Codes(seller) {
			rows, err := s.lists.Loads(book.LoadFilter{Grower: code, Commodity: commodity, Phases: []string{string(load.Ticketed)}})
			if err != nil {
				return nil, err
			}
			for _, r := range rows {
				if !seen[r.ID] {
					seen[r.ID] = true
					out = append(out, r)
				}
			}
		}
	}
	return out, nil
}

// deliveries are the parts of a ticket that are on one of the contracts. A row does not say whose each
// part is; a part on a contract is of one who sells on it.
func (s sold) deliveries(r book.LoadRow, together []elevator.ContractTerms) ([]contract.Part, error) {
	if len(r.Titles) == 0 && r.Contract == "" {
		return nil, nil
	}
	summary, err := r.Recorded().Summary()
	if err != nil {
		return nil, err
	}
	day, err := quantity.ParseDate(r.Day)
	if err != nil {
		return nil, err
	}
	quantities := []quantity.Amount{summary.Quantity}
	if len(summary.Owners) > 0 {
		quantities = nil
		for _, part := range summary.Owners {
			quantities = append(quantities, part.Quantity)
		}
	}
	var out []contract.Part
	for i, q := range quantities {
		number := contract.NumberIn(r.TermsOf(i))
		at := slices.IndexFunc(together, func(c elevator.ContractTerms) bool { return c.Number == number })
		if at >= 0 {
			out = append(out, contract.Part{Ticket: r.Ticket, Owner: seller(together[at], s.cards.Now(r.Grower)), Commodity: r.Commodity, Day: day, Quantity: q, Contract: number})
		}
	}
	return out, nil
}

// seller is the grower of a load where that one sells on a contract, else who does.
func seller(c elevator.ContractTerms, grower string) string {
	if c.IsSeller(grower) {
		return grower
	}
	return c.SellerIDs()[0]
}
