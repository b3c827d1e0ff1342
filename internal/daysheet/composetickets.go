package daysheet

import (
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// tickets lists every ticket of the day, a table for each commodity and way,
// with its sum under it. What never counted is struck and not in the sum.
func (c *composer) tickets() {
	if len(c.Parts) == 0 {
		return
	}
	c.put(report.NewPage{})
	for _, p := range c.Parts {
		c.heading("Tickets: " + p.title())
		if p.Outbound {
			c.put(outboundTable(p).table("None counts today.", "tickets", p.title(), p.units.String()))
			continue
		}
		c.put(inboundTable(p).table("None counts today.", "tickets", p.title(), p.units.String()))
	}
}

// byNumber merges what counts with what is struck, in the order of the numbers.
func byNumber(tickets, struckOnes []Ticket, counted, struck func(Ticket)) {
	for _, t := range tickets {
		for len(struckOnes) > 0 && struckOnes[0].Number < t.Number {
			struck(struckOnes[0])
			struckOnes = struckOnes[1:]
		}
		counted(t)
	}
	for _, t := range struckOnes {
		struck(t)
	}
}

func inboundTable(p Part) *grid {
	w, q := p.units.weight, p.units.per
	g := newGrid(figure("Ticket"), own("Hour"), own("Grower"), own("Truck"), words("Bin"), in("Net", w), figure("Moist. %"), figure("Test wt."),
		in("Dockage", w), in("Water shrink", w), in("Handling", w), in("Off for quality", w), in("Settled", w), in("Settled", q),
		figure("Drying $"), figure("Discounts $"), figure("Premiums $"), figure("Payable $"), words("Disposition"), words("Mark"))
	byNumber(p.Tickets, p.Struck,
		func(t Ticket) { g.add(inboundCells(t, p.units)...) },
		func(t Ticket) { g.struck(inboundCells(t, p.units)...) })
	s := p.Sum
	moisture, tested := s.Moisture()
	weight, weighed := s.TestWeight()
	if len(p.Tickets) > 0 {
		g.total(text(""), text(""), text(loads(s.Loads)), text(""), text(""), amount(s.Net), average(moisture, tested), average(weight, weighed),
			amount(s.Dockage), amount(s.Water), amount(s.Handling), amount(s.Quality), amount(s.Settled), amount(s.Quantity),
			amount(s.Drying), amount(s.Discounts), amount(s.Premiums), amount(s.Payable), text(""), text(""))
	}
	return g.withoutEmpty("Test wt.", "Dockage", "Off for quality", "Premiums", "Mark")
}

func inboundCells(t Ticket, u units) []cell {
	moisture, tested := t.Figures["moisture"]
	weight, weighed := t.Figures["factor.test-weight"]
	discounts, premiums := t.adjusted()
	payable := text(t.unpriced())
	if t.priced() {
		payable = amount(t.money("payable"))
	}
	return []cell{number(t.Number), text(t.Time), text(t.Grower), text(t.Truck), text(orNone(t.Bin)), amount(t.net()), known(moisture, tested),
		known(weight, weighed && weight.Unit() == quantity.LbPerBushel),
		amount(t.figure("dockage", u.weight)), amount(t.figure("shrink.water", u.weight)), amount(t.figure("handling", u.weight)), amount(t.quality()),
		amount(t.figure("settled", u.weight)), amount(t.figure("quantity", u.per)),
		amount(t.money("drying")), amount(discounts), amount(premiums), payable, text(t.how()), text(t.marks())}
}

func outboundTable(p Part) *grid {
	g := newGrid(figure("Ticket"), own("Hour"), own("For"), own("Truck"), words("From"), in("Net", p.units.weight), words("Mark"))
	cells := func(t Ticket) []cell {
		return []cell{number(t.Number), text(t.Time), text(t.Grower), text(t.Truck), text(orNone(t.Bin)), amount(t.net()), text(t.marks())}
	}
	byNumber(p.Tickets, p.Struck, func(t Ticket) { g.add(cells(t)...) }, func(t Ticket) { g.struck(cells(t)...) })
	if len(p.Tickets) > 0 {
		g.total(text(""), text(""), text(loads(p.Sum.Loads)), text(""), text(""), amount(p.Sum.Net), text(""))
	}
	return g.withoutEmpty("Mark")
}

// marks are the words beside a ticket in a list.
func (t Ticket) marks() string {
	out := ""
	if !t.Ended.IsZero() {
		out = joined(" ", t.ending(), t.by())
	}
	out = joined(", ", out, t.again(), t.inPlace())
	if len(t.Manual) > 0 {
		out = joined(", ", out, "MANUAL WT")
	}
	return out
}
