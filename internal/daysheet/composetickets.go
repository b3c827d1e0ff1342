package daysheet

import "tenthpoint/internal/report"

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
		func(t Ticket) { g.add(inboundCells(t)...) },
		func(t Ticket) { g.struck(inboundCells(t)...) })
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

func inboundCells(t Ticket) []cell {
	payable := text(t.unpriced())
	if t.Priced() {
		payable = amount(t.Payable)
	}
	return []cell{number(t.Number), text(t.Time), text(t.Grower), text(t.Truck), text(orNone(t.Bin)), amount(t.Net), given(t.Moisture), given(t.TestWeight),
		amount(t.Dockage), amount(t.Water), amount(t.Handling), amount(t.Quality), amount(t.Settled), amount(t.Quantity),
		amount(t.Drying), amount(t.Discounts), amount(t.Premiums), payable, text(t.how()), text(t.marks())}
}

func outboundTable(p Part) *grid {
	g := newGrid(figure("Ticket"), own("Hour"), own("For"), own("Truck"), words("From"), in("Net", p.units.weight), words("Mark"))
	cells := func(t Ticket) []cell {
		return []cell{number(t.Number), text(t.Time), text(t.Grower), text(t.Truck), text(orNone(t.Bin)), amount(t.Net), text(t.marks())}
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
