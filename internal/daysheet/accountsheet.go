package daysheet

import (
	"tenthpoint/internal/contract"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// ComposeAccount makes a grower's statement.
func ComposeAccount(a Account, p elevator.Profile) report.Document {
	d := paper(p, message.New("Account of %v", a.Name), a.season(), a.Example, a.AsOf)
	put := func(blocks ...report.Block) { d.Blocks = append(d.Blocks, blocks...) }
	put(report.Pairs{Pairs: []report.Pair{
		{Label: message.New("Grower"), Value: message.Names(", ", []string{a.GrowerID, a.Name})}, {Label: message.New("Address"), Value: orNot(a.Address)},
		{Label: message.New("As of"), Value: message.Name(a.AsOf.String())}, {Label: message.New("Tickets"), Value: loads(a.loads())},
	}})
	if len(a.Parts)+len(a.Out) == 0 {
		put(report.Para{Text: message.New("No ticket of this season is this grower's.")})
	}
	for _, part := range a.Parts {
		put(report.Heading{Text: message.New("Summary: %s", part.Name)}, part.summary(), part.dispositionTable())
	}
	if len(a.Contracts) > 0 {
		put(report.Heading{Text: message.New("Contracts")}, a.contractTable())
	}
	put(report.Para{Text: message.New("Every figure is this grower's own part; what others own of the same loads is not in it. Void and corrected tickets are struck and not counted. " +
		"+ is to the owner, - from the owner, in weight and in money. Payable is the value of what has a price, with what is added and taken off. What has been paid is on the settlement sheets.")})
	for _, part := range a.Parts {
		put(report.Heading{Text: message.New("Loads: %s", part.Name)}, part.loads())
	}
	if len(a.Out) > 0 {
		put(report.Heading{Text: message.New("Taken out")}, a.outTable())
	}
	return d
}

func orNot(s string) message.Text {
	if s == "" {
		return message.New("not written down")
	}
	return message.Name(s)
}

func (a Account) season() message.Text {
	switch {
	case a.From.IsZero() && a.To.IsZero():
		return message.New("all tickets")
	case a.From.IsZero():
		return message.New("tickets up to %s", a.To)
	case a.To.IsZero():
		return message.New("tickets from %s on", a.From)
	}
	return message.New("tickets from %s to %s", a.From, a.To)
}

func (a Account) loads() int {
	n := 0
	for _, p := range a.Parts {
		n += p.Sum.Loads
	}
	return n
}

// summary is a commodity in one row.
func (p AccountPart) summary() report.Table {
	w, q := p.units.weight, p.units.per
	g := newGrid([]column[Sum, none]{
		{figureColumn("Loads"), func(s Sum) cell { return count(s.Loads) }, nil, always},
		{unitColumn("Net", w), func(s Sum) cell { return amount(s.Net) }, nil, always},
		{unitColumn("Average moisture", quantity.Percent), func(s Sum) cell { return average(s.Moisture()) }, nil, always},
		{unitColumn("Settled", w), func(s Sum) cell { return amount(s.Settled) }, nil, always},
		{unitColumn("Settled", q), func(s Sum) cell { return amount(s.Quantity) }, nil, always},
		{unitColumn("Drying", quantity.Dollar), func(s Sum) cell { return fromOwner(s.Drying) }, nil, always},
		{unitColumn("Discounts", quantity.Dollar), func(s Sum) cell { return fromOwner(s.Discounts) }, nil, always},
		{unitColumn("Premiums", quantity.Dollar), func(s Sum) cell { return toOwner(s.Premiums) }, nil, unlessEmpty},
		{unitColumn("Off and on", quantity.Dollar), func(s Sum) cell { return fromOwner(s.Charges) }, nil, always},
		{unitColumn("Value", quantity.Dollar), func(s Sum) cell { return amount(s.Value) }, nil, always},
		{unitColumn("Payable", quantity.Dollar), func(s Sum) cell { return amount(s.Payable) }, nil, always},
		{figureColumn("Loads without price"), func(s Sum) cell { return count(s.Later) }, nil, always},
		{unitColumn("Without price", q), func(s Sum) cell { return amount(s.LaterQuantity) }, nil, always},
		{unitColumn("Off and on without price", quantity.Dollar), func(s Sum) cell { return fromOwner(s.LaterCharges) }, nil, always},
	})
	g.add(p.Sum)
	return g.table(p.table(message.New("summary")), message.Text{})
}

// table is the name of one of a commodity's tables.
func (p AccountPart) table(what message.Text) message.Text {
	return message.List(" ", what, p.Name, message.Own(p.units.String()))
}

// dispositionTable is the balance: sold, stored, and delivered on each contract.
func (p AccountPart) dispositionTable() report.Table {
	g := newGrid([]column[DispositionSum, none]{
		{wordsColumn("Disposition"), func(d DispositionSum) cell { return text(d.How) }, nil, always},
		{wordsColumn("Whose grain"), func(d DispositionSum) cell { return text(d.Whose.Said()) }, nil, unlessEmpty},
		{figureColumn("Loads"), func(d DispositionSum) cell { return count(d.Sum.Loads) }, nil, always},
		{unitColumn("Settled", p.units.weight), func(d DispositionSum) cell { return amount(d.Sum.Settled) }, nil, always},
		{unitColumn("Settled", p.units.per), func(d DispositionSum) cell { return amount(d.Sum.Quantity) }, nil, always},
		{unitColumn("Payable", quantity.Dollar), func(d DispositionSum) cell { return amount(d.Sum.Payable) }, nil, always},
	})
	for _, d := range p.ByDisposition {
		g.add(d)
	}
	g.put(report.Total, DispositionSum{How: message.New("All"), Sum: p.Sum})
	return g.table(p.table(message.New("balance")), message.Text{})
}

// fromOwner is an amount taken from the owner, toOwner one that is added: on an
// owner's paper + is to the owner and - from the owner.
func fromOwner(a quantity.Amount) cell { return toOwner(a.Neg()) }

func toOwner(a quantity.Amount) cell {
	c := amount(a)
	c.isSigned = true
	return c
}

func (a Account) contractTable() report.Table {
	g := newGrid([]column[contract.Filled, none]{
		{wordsColumn("Contract"), func(f contract.Filled) cell { return name(f.Number) }, nil, always},
		{wordsColumn("Commodity"), func(f contract.Filled) cell { return said(grain.NameOf(f.Commodity)) }, nil, always},
		{figureColumn("Agreed"), func(f contract.Filled) cell { return amount(f.Quantity) }, nil, always},
		{figureColumn("Delivered"), func(f contract.Filled) cell { return amount(f.Delivered) }, nil, always},
		{figureColumn("Still to come"), func(f contract.Filled) cell { return amount(f.Left) }, nil, always},
		{figureColumn("Over"), func(f contract.Filled) cell { return amount(f.Over()) }, nil, always},
		{wordsColumn("Unit"), func(f contract.Filled) cell { return name(f.Quantity.Unit().String()) }, nil, always},
		{figureColumn("Loads"), func(f contract.Filled) cell { return count(f.Loads()) }, nil, always},
		{wordsColumn("Price"), func(f contract.Filled) cell { return text(contractPrice(f)) }, nil, always},
		{wordsColumn("Until"), func(f contract.Filled) cell { return date(f.Until) }, nil, always},
	})
	for _, f := range a.Contracts {
		g.add(f)
	}
	return g.table(message.New("contracts"), message.Text{})
}

// loads lists the tickets of a commodity; void or corrected ones stay in their place, struck out.
func (p AccountPart) loads() report.Table {
	w, q := p.units.weight, p.units.per
	g := newGrid([]column[Ticket, Sum]{
		{figureColumn("Ticket"), func(t Ticket) cell { return number(t.Number) }, nil, always},
		{wordsColumn("Day"), func(t Ticket) cell { return date(t.Day) }, func(s Sum) cell { return text(loads(s.Loads)) }, always},
		{wordsColumn("Truck"), func(t Ticket) cell { return name(t.Truck) }, nil, always},
		{wordsColumn("Delivered by"), func(t Ticket) cell { return name(t.Grower) }, nil, always},
		{wordsColumn("Share"), func(t Ticket) cell { return text(t.share()) }, nil, always},
		{unitColumn("Net", w), func(t Ticket) cell { return amount(t.Net) }, func(s Sum) cell { return amount(s.Net) }, always},
		{unitColumn("Moist.", quantity.Percent), func(t Ticket) cell { return given(t.Moisture) }, nil, always},
		{unitColumn("Off and on", w), func(t Ticket) cell { return fromOwner(t.TakenOff()) }, func(s Sum) cell { return fromOwner(s.Net.Sub(s.Settled)) }, always},
		{unitColumn("Settled", w), func(t Ticket) cell { return amount(t.Settled) }, func(s Sum) cell { return amount(s.Settled) }, always},
		{unitColumn("Settled", q), func(t Ticket) cell { return amount(t.Quantity) }, func(s Sum) cell { return amount(s.Quantity) }, always},
		{unitColumn("Drying", quantity.Dollar), func(t Ticket) cell { return fromOwner(t.Drying) }, func(s Sum) cell { return fromOwner(s.Drying) }, always},
		{unitColumn("Discounts", quantity.Dollar), func(t Ticket) cell { return fromOwner(t.Discounts) }, func(s Sum) cell { return fromOwner(s.Discounts) }, always},
		{unitColumn("Premiums", quantity.Dollar), func(t Ticket) cell { return toOwner(t.Premiums) }, func(s Sum) cell { return toOwner(s.Premiums) }, unlessEmpty},
		{unitColumn("Value", quantity.Dollar), Ticket.value, func(s Sum) cell { return amount(s.Value) }, always},
		{unitColumn("Payable", quantity.Dollar), Ticket.payable, func(s Sum) cell { return amount(s.Payable) }, always},
		{wordsColumn("Disposition"), func(t Ticket) cell { return text(t.how()) }, nil, always},
		{wordsColumn("Mark"), func(t Ticket) cell { return text(t.marks()) }, nil, unlessEmpty},
	})
	byNumber(p.Tickets, p.Struck, g.add, g.struck)
	g.total(p.Sum)
	return g.table(p.table(message.New("loads")), message.Text{})
}

func (a Account) outTable() report.Table {
	g := newGrid([]column[Ticket, none]{
		{figureColumn("Ticket"), func(t Ticket) cell { return number(t.Number) }, nil, always},
		{wordsColumn("Day"), func(t Ticket) cell { return date(t.Day) }, nil, always},
		{wordsColumn("Commodity"), func(t Ticket) cell { return said(t.Name) }, nil, always},
		{wordsColumn("Truck"), func(t Ticket) cell { return name(t.Truck) }, nil, always},
		{figureColumn("Net"), func(t Ticket) cell { return amount(t.Net) }, nil, always},
		{wordsColumn("Unit"), func(t Ticket) cell { return name(t.Net.Unit().String()) }, nil, always},
		{wordsColumn("Mark"), func(t Ticket) cell { return text(t.marks()) }, nil, unlessEmpty},
	})
	for _, t := range a.Out {
		if t.InForce() {
			g.add(t)
		} else {
			g.struck(t)
		}
	}
	return g.table(message.New("taken out"), message.Text{})
}

// contractPrice is the price of a contract, or what is fixed of one that is open.
func contractPrice(f contract.Filled) message.Text {
	if f.Price.Sign() > 0 {
		return report.Figure(f.Price.Written())
	}
	return f.PriceText()
}
