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

// byNumber merges tickets that count with those struck, in order of number.
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

func inboundTable(p Part) *grid[Ticket, Sum] {
	g := inboundGrid(p.units)
	byNumber(p.Tickets, p.Struck, g.add, g.struck)
	if len(p.Tickets) > 0 {
		g.total(p.Sum)
	}
	return g
}

func inboundGrid(u units) *grid[Ticket, Sum] {
	return newGrid([]column[Ticket, Sum]{
		{figure("Ticket"), func(t Ticket) cell { return number(t.Number) }, nil, always},
		{own("Hour"), func(t Ticket) cell { return text(t.Time) }, nil, always},
		{own("Grower"), func(t Ticket) cell { return text(t.Grower) }, func(s Sum) cell { return text(loads(s.Loads)) }, always},
		{own("Truck"), func(t Ticket) cell { return text(t.Truck) }, nil, always},
		{words("Bin"), func(t Ticket) cell { return text(orNone(t.Bin)) }, nil, always},
		{in("Net", u.weight), func(t Ticket) cell { return amount(t.Net) }, func(s Sum) cell { return amount(s.Net) }, always},
		{figure("Moist. %"), func(t Ticket) cell { return given(t.Moisture) }, func(s Sum) cell { return average(s.Moisture()) }, always},
		{figure("Test wt."), func(t Ticket) cell { return given(t.TestWeight) }, func(s Sum) cell { return average(s.TestWeight()) }, unlessEmpty},
		{in("Dockage", u.weight), func(t Ticket) cell { return amount(t.Dockage) }, func(s Sum) cell { return amount(s.Dockage) }, unlessEmpty},
		{in("Water shrink", u.weight), func(t Ticket) cell { return amount(t.Water) }, func(s Sum) cell { return amount(s.Water) }, always},
		{in("Handling", u.weight), func(t Ticket) cell { return amount(t.Handling) }, func(s Sum) cell { return amount(s.Handling) }, always},
		{in("Off for quality", u.weight), func(t Ticket) cell { return amount(t.Quality) }, func(s Sum) cell { return amount(s.Quality) }, unlessEmpty},
		{in("Settled", u.weight), func(t Ticket) cell { return amount(t.Settled) }, func(s Sum) cell { return amount(s.Settled) }, always},
		{in("Settled", u.per), func(t Ticket) cell { return amount(t.Quantity) }, func(s Sum) cell { return amount(s.Quantity) }, always},
		{figure("Drying $"), func(t Ticket) cell { return amount(t.Drying) }, func(s Sum) cell { return amount(s.Drying) }, always},
		{figure("Discounts $"), func(t Ticket) cell { return amount(t.Discounts) }, func(s Sum) cell { return amount(s.Discounts) }, always},
		{figure("Premiums $"), func(t Ticket) cell { return amount(t.Premiums) }, func(s Sum) cell { return amount(s.Premiums) }, unlessEmpty},
		{figure("Payable $"), Ticket.payable, func(s Sum) cell { return amount(s.Payable) }, always},
		{words("Disposition"), func(t Ticket) cell { return text(t.how()) }, nil, always},
		{words("Mark"), func(t Ticket) cell { return text(t.marks()) }, nil, unlessEmpty},
	})
}

// value and payable are figures of a ticket that has its price; otherwise the placeholder.
func (t Ticket) value() cell { return known(t.Value, t.Priced()) }

func (t Ticket) payable() cell {
	if t.Priced() {
		return amount(t.Payable)
	}
	return text(t.unpriced())
}

func outboundTable(p Part) *grid[Ticket, Sum] {
	g := newGrid([]column[Ticket, Sum]{
		{figure("Ticket"), func(t Ticket) cell { return number(t.Number) }, nil, always},
		{own("Hour"), func(t Ticket) cell { return text(t.Time) }, nil, always},
		{own("For"), func(t Ticket) cell { return text(t.Grower) }, func(s Sum) cell { return text(loads(s.Loads)) }, always},
		{own("Truck"), func(t Ticket) cell { return text(t.Truck) }, nil, always},
		{words("From"), func(t Ticket) cell { return text(orNone(t.Bin)) }, nil, always},
		{in("Net", p.units.weight), func(t Ticket) cell { return amount(t.Net) }, func(s Sum) cell { return amount(s.Net) }, always},
		{words("Mark"), func(t Ticket) cell { return text(t.marks()) }, nil, unlessEmpty},
	})
	byNumber(p.Tickets, p.Struck, g.add, g.struck)
	if len(p.Tickets) > 0 {
		g.total(p.Sum)
	}
	return g
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
