package scaleticket

import (
	"slices"

	"tenthpoint/internal/load"
	"tenthpoint/internal/title"
)

// settlementSection is from the net weight to the money, in two columns that add: weights down to
// the settled weight, money down to the payable.
func settlementSection(t *facts) Section {
	p := newPart(t, "settlement", t.w.Settlement, Ledger)
	if !t.isRefused() {
		for _, problem := range t.Problems {
			p.warn(t.w.say(problem))
		}
	}
	if t.isWeighedOnly() {
		weighedSettlement(p)
		return p.Section
	}
	ratesLine(p)
	if t.s == nil {
		unsettled(p)
	} else {
		weightLines(p)
		quantityLines(p)
		ownWeights(p)
		if p.withoutMoney() {
			p.put(Line{Field: "price", Label: p.w.Price, Value: p.w.NotForDriver})
		} else {
			moneyLines(p)
		}
	}
	dealLines(p)
	return p.Section
}

// ratesLine names the edition the load is settled under.
func ratesLine(p *part) {
	if p.Edition == nil {
		p.put(Line{Field: "edition", Label: p.w.Rates, Value: p.w.NoRates, Missing: true})
		return
	}
	p.put(Line{Field: "edition", Label: p.w.Rates, Value: p.Edition.ID, Notes: some(p.Edition.Title)})
}

// unsettled lists the lines of a future settlement, with placeholders.
func unsettled(p *part) {
	later := func(labels ...string) {
		for _, label := range labels {
			p.put(Line{Label: label, Value: p.whenSettled()})
		}
	}
	later(p.w.Water, p.w.Handling, p.w.DryWeight)
	bushelLine(p)
	later(p.w.DryBushels)
	priceLine(p)
	later(p.w.Drying, p.w.Discounts)
	value := p.whenSettled()
	if p.deal().Price == nil {
		value = p.unpriced()
	}
	p.put(Line{Kind: Total, Field: "payable", Label: p.w.Payable, Value: value, Emphasis: true})
}

// dealLines are whose grain it is and what it is held under. A load whose owners
// have deals of their own tells them owner by owner.
func dealLines(p *part) {
	if p.s != nil && !p.s.Engine.HasTitles() {
		p.put(Line{Field: "disposition", Label: p.w.Disposition, Value: p.w.terms(p.l.Details.Terms)})
		return
	}
	for i, deal := range p.deals() {
		owner := ""
		if len(p.deals()) > 1 {
			owner = p.l.Details.Shares[i].Name + ": "
		}
		p.put(Line{Field: "disposition", Label: owner + p.w.HeldUnder, Value: p.w.terms(deal.Terms)},
			Line{Label: owner + p.w.WhoseGrain, Value: p.w.say(deal.Owner().Said())})
	}
}

// deals are those this slip tells of: one owner's, each owner's where they differ, or
// the load's.
func (t *facts) deals() []load.Deal {
	if t.Owner != 0 {
		return []load.Deal{t.deal()}
	}
	if t.apart() {
		return t.l.Details.Deals()
	}
	return []load.Deal{t.l.Details.Deals()[0]}
}

// deal is that of the one owner whose slip this is, or of the load.
func (t *facts) deal() load.Deal {
	if t.Owner != 0 {
		return t.l.Details.DealOf(t.Owner - 1)
	}
	if len(t.l.Details.Shares) == 1 {
		return t.l.Details.DealOf(0)
	}
	return t.l.Details.Deal()
}

// apart reports whether owners have deals of their own and this slip is of all.
func (t *facts) apart() bool {
	return t.Owner == 0 && len(t.l.Details.Shares) > 1 && slices.ContainsFunc(t.l.Details.Shares, func(o load.Owner) bool { return o.Own != nil })
}

// terms is the title that grain is held under: "on contract C-77", "not decided".
func (w Words) terms(t title.Terms) string {
	if t.Under == title.Contract {
		return Joined(" ", w.OnContract, t.No)
	}
	return Joined(" ", w.say(t.Under.Name()), t.No)
}
