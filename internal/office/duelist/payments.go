package duelist

import (
	"tenthpoint/internal/book"
	"tenthpoint/internal/deadline"
	"tenthpoint/internal/message"
	"tenthpoint/internal/paysheet"
)

// payments are the settlement sheets on which money is open: deferred ones on their own day, others
// by the law of the place.
func (g *gathering) payments() error {
	paid, err := book.RecordsIn[paysheet.Payment](g.lists)
	if err != nil {
		return err
	}
	for _, open := range paysheet.OpenSheets(g.sheets, paid) {
		if !open.PayAfter.IsZero() {
			g.add(Due{Day: open.PayAfter, Kind: Deferred, Grower: open.Grower,
				What:     message.New("settlement sheet %d: %s is to be paid from that day", open.Number, open.Left),
				IfPassed: message.New("it is paid as was agreed")})
			continue
		}
		counted := deadline.Counted{Settled: open.Day}
		for _, line := range open.Lines {
			counted = counted.With(line.Delivered)
		}
		if day, rule, found := deadline.Earliest(g.rules, deadline.Payment, counted); found {
			g.add(Due{Day: day, Kind: Unpaid, Grower: open.Grower, IfPassed: rule.Said(),
				What: message.New("settlement sheet %d: %s is open", open.Number, open.Left)})
		}
	}
	return nil
}

// unsettled is grain sold at a price that no settlement sheet has taken yet.
func (g *gathering) unsettled() error {
	var sold lots
	for _, p := range g.parts {
		if p.Price == nil {
			continue
		}
		if day, rule, found := deadline.Earliest(g.rules, deadline.Payment, deadline.Counted{}.With(p.delivered)); found {
			g.near(&sold, lot{day: day, grower: p.grower, commodity: p.Commodity, passed: rule.Said()}, p.Ticket, g.left(p))
		}
	}
	g.addLots(sold, Unpaid, message.Words("sold and on no settlement sheet"))
	return nil
}

// storage is grain that is kept free of charge until a day still to come.
func (g *gathering) storage() error {
	if g.house.Tariff == nil {
		return nil
	}
	var free lots
	for _, p := range g.parts {
		e, found := g.house.Tariff(p.Commodity, p.delivered)
		if !found {
			continue
		}
		if day, isFree := e.FreeUntil(p.TermsOf(p.owner).Under, p.delivered); isFree && !day.Before(g.today) {
			g.near(&free, lot{day: day, grower: p.grower, commodity: p.Commodity, passed: message.New("it is charged by tariff %v", e.ID)}, p.Ticket, g.left(p))
		}
	}
	g.addLots(free, FreeUntil, message.Words("free storage ends"))
	return nil
}

// liens are lenders' notices whose last day is still to come.
func (g *gathering) liens() error {
	all, err := book.RecordsIn[paysheet.Lien](g.lists)
	for _, l := range all {
		if l.InForce(g.today) {
			g.add(Due{Day: l.Until, Kind: Lien, Grower: l.Grower, What: message.New("notice of lien %d of %v ends", l.Number, l.Holder),
				IfPassed: message.New("it binds no more unless it is filed again; confirm locally")})
		}
	}
	return err
}
