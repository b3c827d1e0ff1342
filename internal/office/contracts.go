package office

import (
	"context"
	"slices"

	"tenthpoint/internal/contract"
	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
)

// ContractNumbered finds a contract by its number.
func ContractNumbered(ctx context.Context, d Desk, number string) (elevator.ContractTerms, error) {
	all, err := Contracts(ctx, d)
	if err != nil {
		return elevator.ContractTerms{}, err
	}
	i := slices.IndexFunc(all, func(c elevator.ContractTerms) bool { return c.Number == number })
	if i < 0 {
		return elevator.ContractTerms{}, message.NotFound.Errorf("there is no contract %s here", number)
	}
	return all[i], nil
}

// ContractFill is one contract with its fills by the tickets in force.
func ContractFill(ctx context.Context, d Desk, c elevator.ContractTerms) (contract.Filled, error) {
	filled, err := ContractFills(ctx, d, c)
	if err != nil {
		return contract.Filled{}, err
	}
	return filled[0], nil
}

// ContractFills are contracts with their fills, in the order they are given.
func ContractFills(ctx context.Context, d Desk, contracts ...elevator.ContractTerms) ([]contract.Filled, error) {
	f, err := newFiller(ctx, d)
	if err != nil {
		return nil, err
	}
	return f.filled(contracts)
}

// Fills applies the tickets in force to the contracts of a grain of everybody who sells with the
// growers named, in the order the house chose.
func Fills(ctx context.Context, d Desk, commodity string, growers ...string) (contract.Filling, error) {
	f, err := newFiller(ctx, d)
	if err != nil {
		return contract.Filling{}, err
	}
	return f.fill(commodity, growers)
}

// filler applies tickets to contracts. Tickets are read once a grower.
type filler struct {
	ctx       context.Context
	desk      Desk
	contracts []elevator.ContractTerms
	cards     elevator.ByCode
	tickets   map[string][]daysheet.Ticket // by the code of the card
}

func newFiller(ctx context.Context, d Desk) (*filler, error) {
	growers, err := Growers(ctx, d)
	if err != nil {
		return nil, err
	}
	all, err := Contracts(ctx, d)
	if err != nil {
		return nil, err
	}
	cards := elevator.CardsByCode(growers)
	return &filler{ctx, d, contract.UnderCards(all, cards), cards, map[string][]daysheet.Ticket{}}, nil
}

func (f *filler) fill(commodity string, growers []string) (contract.Filling, error) {
	now := make([]string, len(growers))
	for i, code := range growers {
		now[i] = f.cards.Now(code)
	}
	together, sellers := contract.Together(f.contracts, commodity, now)
	var parts []contract.Part
	for _, seller := range sellers {
		tickets, err := f.ticketsOf(seller)
		if err != nil {
			return contract.Filling{}, err
		}
		parts = append(parts, deliveredBy(tickets, seller, commodity)...)
	}
	return contract.Fill(together, parts, contract.OrderOf(f.desk.Profile())), nil
}

func (f *filler) ticketsOf(seller string) ([]daysheet.Ticket, error) {
	if known, there := f.tickets[seller]; there {
		return known, nil
	}
	card := elevator.Card{Grower: elevator.Grower{ID: seller}, Codes: f.cards.Codes(seller)}
	tickets, err := ticketsOf(f.ctx, f.desk, card)
	f.tickets[seller] = tickets
	return tickets, err
}

// deliveredBy are a grower's parts of tickets in force, of one grain.
func deliveredBy(tickets []daysheet.Ticket, grower, commodity string) []contract.Part {
	var out []contract.Part
	for _, t := range tickets {
		if t.Commodity != commodity || t.Number == 0 || t.Outbound || !t.InForce() {
			continue
		}
		if own, has := t.PartOf(grower); has {
			out = append(out, contract.Part{Ticket: own.Number, Owner: grower, Commodity: commodity, Day: own.Delivered, Quantity: own.Quantity, Contract: contract.NumberIn(own.Terms())})
		}
	}
	return out
}

// filled are contracts as they are filled. Contracts of one grain are filled at once.
func (f *filler) filled(contracts []elevator.ContractTerms) ([]contract.Filled, error) {
	sellers := map[string][]string{} // by commodity
	for _, c := range contracts {
		sellers[c.Commodity] = append(sellers[c.Commodity], c.SellerIDs()...)
	}
	byNumber := map[string]contract.Filled{}
	for commodity, growers := range sellers {
		filling, err := f.fill(commodity, growers)
		if err != nil {
			return nil, err
		}
		for _, one := range filling.Contracts {
			byNumber[one.Number] = one
		}
	}
	out := make([]contract.Filled, len(contracts))
	for i, c := range contracts {
		one, known := byNumber[c.Number]
		if !known {
			return nil, message.NotFound.Errorf("there is no contract %s here", c.Number)
		}
		one.ContractTerms = c // with the codes it was written under
		out[i] = one
	}
	return out, nil
}

// ofGrower are the contracts of a grower whose tickets are known already.
func (f *filler) ofGrower(code string, tickets []daysheet.Ticket) ([]contract.Filled, error) {
	f.tickets[code] = tickets
	return f.filled(slices.DeleteFunc(slices.Clone(f.contracts), func(c elevator.ContractTerms) bool { return c.Grower != code }))
}
