package daysheet

import (
	"tenthpoint/internal/message"
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
		c.heading(message.New("Tickets: %s", p.title()))
		name := message.List(" ", message.New("tickets"), p.title(), message.Own(p.units.String()))
		if p.Outbound {
			c.put(outboundTable(p).table(name, message.New("None counts today.")))
			continue
		}
		c.put(c.inboundTable(p).table(name, message.New("None counts today.")))
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

func (c *composer) inboundTable(p Part) *grid[Ticket, Sum] {
	g := c.inboundGrid(p.units)
	byNumber(p.Tickets, p.Struck, g.add, g.struck)
	if len(p.Tickets) > 0 {
		g.total(p.Sum)
	}
	return g
}

func (c *composer) inboundGrid(u units) *grid[Ticket, Sum] {
	return newGrid([]column[Ticket, Sum]{
		{figureColumn("Ticket"), func(t Ticket) cell { return number(t.Number) }, nil, always},
		{wordsColumn("Hour"), func(t Ticket) cell { return name(t.Time) }, nil, always},
		{wordsColumn("Grower"), func(t Ticket) cell { return name(t.Grower) }, func(s Sum) cell { return text(loads(s.Loads)) }, always},
		{wordsColumn("Truck"), func(t Ticket) cell { return name(t.Truck) }, nil, always},
		{wordsColumn("Bin"), func(t Ticket) cell { return text(orNone(t.Bin)) }, nil, always},
		{unitColumn("Net", u.weight), func(t Ticket) cell { return amount(t.Net) }, func(s Sum) cell { return amount(s.Net) }, always},
		{unitColumn("Moist.", quantity.Percent), func(t Ticket) cell { return given(t.Moisture) }, func(s Sum) cell { return average(s.Moisture()) }, always},
		{figureColumn("Test wt."), func(t Ticket) cell { return testWeightIn(t, quantity.LbPerBushel) }, func(s Sum) cell { return average(s.TestWeight(quantity.LbPerBushel)) }, unlessEmpty},
		{unitColumn("Test wt.", quantity.KgPerHL), func(t Ticket) cell { return testWeightIn(t, quantity.KgPerHL) }, func(s Sum) cell { return average(s.TestWeight(quantity.KgPerHL)) }, c.metric()},
		{unitColumn("Dockage", u.weight), func(t Ticket) cell { return amount(t.Dockage) }, func(s Sum) cell { return amount(s.Dockage) }, unlessEmpty},
		{unitColumn("Water shrink", u.weight), func(t Ticket) cell { return amount(t.Water) }, func(s Sum) cell { return amount(s.Water) }, always},
		{unitColumn("Handling", u.weight), func(t Ticket) cell { return amount(t.Handling) }, func(s Sum) cell { return amount(s.Handling) }, always},
		{unitColumn("Off for quality", u.weight), func(t Ticket) cell { return amount(t.Quality) }, func(s Sum) cell { return amount(s.Quality) }, unlessEmpty},
		{unitColumn("Settled", u.weight), func(t Ticket) cell { return amount(t.Settled) }, func(s Sum) cell { return amount(s.Settled) }, always},
		{unitColumn("Settled", u.per), func(t Ticket) cell { return amount(t.Quantity) }, func(s Sum) cell { return amount(s.Quantity) }, always},
		{unitColumn("Drying", quantity.Dollar), func(t Ticket) cell { return amount(t.Drying) }, func(s Sum) cell { return amount(s.Drying) }, always},
		{unitColumn("Discounts", quantity.Dollar), func(t Ticket) cell { return amount(t.Discounts) }, func(s Sum) cell { return amount(s.Discounts) }, always},
		{unitColumn("Premiums", quantity.Dollar), func(t Ticket) cell { return amount(t.Premiums) }, func(s Sum) cell { return amount(s.Premiums) }, unlessEmpty},
		{unitColumn("Payable", quantity.Dollar), Ticket.payable, func(s Sum) cell { return amount(s.Payable) }, always},
		{wordsColumn("Disposition"), func(t Ticket) cell { return text(t.how()) }, nil, always},
		{wordsColumn("Mark"), func(t Ticket) cell { return text(t.marks()) }, nil, unlessEmpty},
	})
}

// testWeightIn is the test weight of a ticket where it was tested in a unit.
func testWeightIn(t Ticket, unit quantity.Unit) cell {
	if t.TestWeight == nil || t.TestWeight.Unit() != unit {
		return cell{}
	}
	return amount(*t.TestWeight)
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
		{figureColumn("Ticket"), func(t Ticket) cell { return number(t.Number) }, nil, always},
		{wordsColumn("Hour"), func(t Ticket) cell { return name(t.Time) }, nil, always},
		{wordsColumn("For"), func(t Ticket) cell { return name(t.Grower) }, func(s Sum) cell { return text(loads(s.Loads)) }, always},
		{wordsColumn("Truck"), func(t Ticket) cell { return name(t.Truck) }, nil, always},
		{wordsColumn("From"), func(t Ticket) cell { return text(orNone(t.Bin)) }, nil, always},
		{unitColumn("Net", p.units.weight), func(t Ticket) cell { return amount(t.Net) }, func(s Sum) cell { return amount(s.Net) }, always},
		{wordsColumn("Mark"), func(t Ticket) cell { return text(t.marks()) }, nil, unlessEmpty},
	})
	byNumber(p.Tickets, p.Struck, g.add, g.struck)
	if len(p.Tickets) > 0 {
		g.total(p.Sum)
	}
	return g
}

// marks are the words beside a ticket in a list.
func (t Ticket) marks() message.Text {
	var ended, typed message.Text
	if !t.Ended.IsZero() {
		ended = message.List(" ", t.ending(), t.by())
	}
	if len(t.Manual) > 0 {
		typed = message.New("MANUAL WT")
	}
	return message.List(", ", ended, t.again(), t.inPlace(), typed)
}
