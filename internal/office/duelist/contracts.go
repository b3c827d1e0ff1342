package duelist

import (
	"maps"
	"slices"

	"tenthpoint/internal/book"
	"tenthpoint/internal/contract"
	"tenthpoint/internal/deadline"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office/terms"
	"tenthpoint/internal/quantity"
)

// fill applies what was delivered to the contracts, in the order the house chose.
func (g *gathering) fill() {
	var parts []contract.Part
	for _, p := range g.parts {
		parts = append(parts, contract.Part{Ticket: p.Ticket, Owner: g.cards.Now(p.grower), Commodity: p.Commodity, Day: p.delivered, Quantity: p.Quantity, Contract: contract.NumberIn(p.TermsOf(p.owner))})
	}
	g.filling = contract.Fill(g.terms, parts, g.house.FillOrder)
}

// ticketsOnContracts are the tickets of everybody who sells on contracts that may be due.
func (g *gathering) ticketsOnContracts() ([]book.LoadRow, error) {
	var growers []string
	for _, c := range g.terms {
		if _, closed := c.Closed(); !closed && (isOnCredit(c) && !c.IsSigned() || !c.Until.After(g.last)) {
			_, sellers := contract.Together(g.terms, c.Commodity, []string{c.Grower})
			for _, seller := range sellers {
				growers = append(growers, g.cards.Codes(seller)...)
			}
		}
	}
	slices.Sort(growers)
	byID := map[string]book.LoadRow{}
	for _, grower := range slices.Compact(growers) {
		filter := terms.Tickets(g.today)
		filter.Grower = grower
		rows, err := g.lists.Loads(filter)
		if err != nil {
			return nil, err
		}
		for _, r := range rows {
			byID[r.ID] = r
		}
	}
	return slices.Collect(maps.Values(byID)), nil
}

func isOnCredit(c elevator.ContractTerms) bool {
	return c.Form == elevator.DelayedPrice || c.Form == elevator.DeferredPayment
}

// contracts are those to be signed and those on which grain is still to come.
func (g *gathering) contracts() error {
	for _, f := range g.filling.Contracts {
		if _, closed := f.Closed(); closed {
			continue
		}
		if err := g.unsigned(f); err != nil {
			return err
		}
		if f.Left.Sign() > 0 {
			g.add(Due{Day: f.Until, Kind: Undelivered, Grower: f.Grower,
				What:     message.New("contract %v: of %s %s is still to come", f.Number, f.ContractTerms.Quantity, f.Left),
				IfPassed: message.New("what is missing is settled as the contract says, or it is extended")})
		}
	}
	return nil
}

// unsigned is the day by which a contract on credit is signed by both, where grain came on it.
func (g *gathering) unsigned(f contract.Filled) error {
	if !isOnCredit(f.ContractTerms) || f.IsSigned() || len(f.Applied) == 0 {
		return nil
	}
	var counted deadline.Counted
	for _, a := range f.Applied {
		counted = counted.With(a.Day)
	}
	day, rule, found := deadline.Earliest(g.rules, deadline.Signature, counted)
	if !found {
		return nil
	}
	passed := rule.Said()
	if rule.AtMarket {
		price, err := g.postedOn(f.Commodity, day)
		if err != nil {
			return err
		}
		passed = message.List(" ", passed, price)
	}
	g.add(Due{Day: day, Kind: Unsigned, Grower: f.Grower, IfPassed: passed,
		What: message.New("contract %v, %s: not signed by both, %s delivered", f.Number, f.Form.Name(), f.Delivered)})
	return nil
}

// postedOn proposes the price that was posted for the last day; nothing is priced by itself.
func (g *gathering) postedOn(commodity string, day quantity.Date) (message.Text, error) {
	rows, err := book.RecordsIn[elevator.PostedPrice](g.lists)
	if err != nil {
		return message.Text{}, err
	}
	for _, p := range rows {
		if p.Commodity == commodity && p.Day == day {
			return message.New("The price posted for that day is %s; a manager prices the contract, nothing does it by itself.", p.Price), nil
		}
	}
	if day.After(g.today) {
		return message.Text{}, nil
	}
	return message.New("No price is posted for that day."), nil
}
