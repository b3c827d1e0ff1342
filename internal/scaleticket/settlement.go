package scaleticket

import "tenthpoint/internal/load"

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
		moneyLines(p)
	}
	p.put(Line{Field: "disposition", Label: t.w.Disposition, Value: dispositionWords(t)})
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
	if p.l.Details.Price == nil {
		value = p.unpriced()
	}
	p.put(Line{Kind: Total, Field: "payable", Label: p.w.Payable, Value: value, Emphasis: true})
}

// dispositionWords names the disposition of the grain.
func dispositionWords(t *facts) string {
	switch t.l.Details.Disposition {
	case load.Sold:
		return t.w.Sold
	case load.Stored:
		return t.w.Stored
	case load.Contract:
		return Joined(" ", t.w.OnContract, t.l.Details.ContractNo)
	}
	return t.w.NotDecided
}
