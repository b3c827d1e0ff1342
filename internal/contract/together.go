package contract

import (
	"slices"

	"tenthpoint/internal/elevator"
)

// UnderCards are contracts whose sellers are named by the cards that go on: a card that has taken over
// another one delivers on its contracts.
func UnderCards(all []elevator.ContractTerms, cards elevator.ByCode) []elevator.ContractTerms {
	out := slices.Clone(all)
	for i, c := range out {
		out[i].Grower, out[i].Sellers = cards.Now(c.Grower), slices.Clone(c.Sellers)
		for at, s := range c.Sellers {
			out[i].Sellers[at].GrowerID = cards.Now(s.GrowerID)
		}
	}
	return out
}

// Together are the contracts of a grain that share a seller with the growers named, directly or
// through others, and all their sellers: what one of them delivers may fill any of these.
func Together(all []elevator.ContractTerms, commodity string, growers []string) (together []elevator.ContractTerms, sellers []string) {
	sellers = slices.Clone(growers)
	taken := map[string]bool{}
	for again := true; again; {
		again = false
		for _, c := range all {
			if c.Commodity != commodity || taken[c.Number] || !slices.ContainsFunc(sellers, c.IsSeller) {
				continue
			}
			taken[c.Number], again = true, true
			together = append(together, c)
			for _, seller := range c.SellerIDs() {
				if !slices.Contains(sellers, seller) {
					sellers = append(sellers, seller)
				}
			}
		}
	}
	return together, sellers
}
