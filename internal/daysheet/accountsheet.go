package daysheet

import (
	"fmt"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// ComposeAccount makes a grower's statement.
func ComposeAccount(a Account, p elevator.Profile) report.Document {
	d := paper(p, "Account of "+a.Name, a.season(), a.Example, a.AsOf)
	put := func(blocks ...report.Block) { d.Blocks = append(d.Blocks, blocks...) }
	put(report.Pairs{Pairs: []report.Pair{
		{Label: "Grower", Value: joined(", ", a.GrowerID, a.Name), Own: true}, {Label: "Address", Value: orNot(a.Address)},
		{Label: "As of", Value: a.AsOf.String()}, {Label: "Tickets", Value: loads(a.loads())},
	}})
	if len(a.Parts)+len(a.Out) == 0 {
		put(report.Para{Text: "No ticket of this season is this grower's."})
	}
	for _, part := range a.Parts {
		put(report.Heading{Text: "Summary: " + part.Name}, part.summary(), part.dispositionTable())
	}
	if len(a.Fills) > 0 {
		put(report.Heading{Text: "Contracts"}, a.fills())
	}
	put(report.Para{Text: "Every figure is this grower's own part; what others own of the same loads is not in it. Void and corrected tickets are struck and not counted. " +
		"+ is to the owner, - from the owner, in weight and in money. Payable is the value of what has a price, with what is added and taken off. What has been paid is not in this book."})
	for _, part := range a.Parts {
		put(report.Heading{Text: "Loads: " + part.Name}, part.loads())
	}
	if len(a.Out) > 0 {
		put(report.Heading{Text: "Taken out"}, a.outTable())
	}
	return d
}

func orNot(s string) string {
	if s == "" {
		return "not written down"
	}
	return s
}

func (a Account) season() string {
	switch {
	case a.From.IsZero() && a.To.IsZero():
		return "all tickets"
	case a.From.IsZero():
		return fmt.Sprintf("tickets up to %s", a.To)
	case a.To.IsZero():
		return fmt.Sprintf("tickets from %s on", a.From)
	}
	return fmt.Sprintf("tickets from %s to %s", a.From, a.To)
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
		{figure("Loads"), func(s Sum) cell { return count(s.Loads) }, nil, always},
		{in("Net", w), func(s Sum) cell { return amount(s.Net) }, nil, always},
		{figure("Average moisture %"), func(s Sum) cell { return average(s.Moisture()) }, nil, always},
		{in("Settled", w), func(s Sum) cell { return amount(s.Settled) }, nil, always},
		{in("Settled", q), func(s Sum) cell { return amount(s.Quantity) }, nil, always},
		{figure("Drying $"), func(s Sum) cell { return fromOwner(s.Drying) }, nil, always},
		{figure("Discounts $"), func(s Sum) cell { return fromOwner(s.Discounts) }, nil, always},
		{figure("Premiums $"), func(s Sum) cell { return toOwner(s.Premiums) }, nil, unlessEmpty},
		{figure("Off and on $"), func(s Sum) cell { return fromOwner(s.Charges) }, nil, always},
		{figure("Value $"), func(s Sum) cell { return amount(s.Value) }, nil, always},
		{figure("Payable $"), func(s Sum) cell { return amount(s.Payable) }, nil, always},
		{figure("Loads without price"), func(s Sum) cell { return count(s.Later) }, nil, always},
		{in("Without price", q), func(s Sum) cell { return amount(s.LaterQuantity) }, nil, always},
		{figure("Off and on without price $"), func(s Sum) cell { return fromOwner(s.LaterCharges) }, nil, always},
	})
	g.add(p.Sum)
	return g.table("", "summary", p.Name, p.units.String())
}

// dispositionTable is the balance: sold, stored, and delivered on each contract.
func (p AccountPart) dispositionTable() report.Table {
	g := newGrid([]column[DispositionSum, none]{
		{words("Disposition"), func(d DispositionSum) cell { return text(d.How) }, nil, always},
		{words("Whose grain"), func(d DispositionSum) cell { return text(d.Whose.Said().String()) }, nil, unlessEmpty},
		{figure("Loads"), func(d DispositionSum) cell { return count(d.Sum.Loads) }, nil, always},
		{in("Settled", p.units.weight), func(d DispositionSum) cell { return amount(d.Sum.Settled) }, nil, always},
		{in("Settled", p.units.per), func(d DispositionSum) cell { return amount(d.Sum.Quantity) }, nil, always},
		{figure("Payable $"), func(d DispositionSum) cell { return amount(d.Sum.Payable) }, nil, always},
	})
	for _, d := range p.ByDisposition {
		g.add(d)
	}
	g.put(report.Total, DispositionSum{How: "All", Sum: p.Sum})
	return g.table("", "balance", p.Name, p.units.String())
}

// fromOwner is an amount taken from the owner, toOwner one that is added: on an
// owner's paper + is to the owner and - from the owner.
func fromOwner(a quantity.Amount) cell { return toOwner(a.Neg()) }

func toOwner(a quantity.Amount) cell {
	c := amount(a)
	c.isSigned = true
	return c
}

func (a Account) fills() report.Table {
	g := newGrid([]column[Fill, none]{
		{words("Contract"), func(f Fill) cell { return text(f.Number) }, nil, always},
		{words("Commodity"), func(f Fill) cell { return text(f.Name) }, nil, always},
		{figure("Agreed"), func(f Fill) cell { return amount(f.Quantity) }, nil, always},
		{figure("Delivered"), func(f Fill) cell { return amount(f.Delivered) }, nil, always},
		{figure("Still to come"), func(f Fill) cell { return amount(aboveZero(f.Left)) }, nil, always},
		{figure("Over"), func(f Fill) cell { return amount(aboveZero(f.Left.Neg())) }, nil, always},
		{words("Unit"), func(f Fill) cell { return text(f.Quantity.Unit().String()) }, nil, always},
		{figure("Loads"), func(f Fill) cell { return count(f.Loads) }, nil, always},
		{words("Price"), func(f Fill) cell { return text(f.Price.Written()) }, nil, always},
		{own("Until"), func(f Fill) cell { return text(f.Until.String()) }, nil, always},
	})
	for _, f := range a.Fills {
		g.add(f)
	}
	return g.table("", "contracts")
}

// aboveZero returns an amount, or zero if it is negative.
func aboveZero(a quantity.Amount) quantity.Amount {
	if a.Sign() < 0 {
		return quantity.Zero(a.Unit())
	}
	return a
}

// loads lists the tickets of a commodity; void or corrected ones stay in their place, struck out.
func (p AccountPart) loads() report.Table {
	w, q := p.units.weight, p.units.per
	g := newGrid([]column[Ticket, Sum]{
		{figure("Ticket"), func(t Ticket) cell { return number(t.Number) }, nil, always},
		{own("Day"), func(t Ticket) cell { return text(t.Day.String()) }, func(s Sum) cell { return text(loads(s.Loads)) }, always},
		{own("Truck"), func(t Ticket) cell { return text(t.Truck) }, nil, always},
		{own("Delivered by"), func(t Ticket) cell { return text(t.Grower) }, nil, always},
		{words("Share"), func(t Ticket) cell { return text(t.share()) }, nil, always},
		{in("Net", w), func(t Ticket) cell { return amount(t.Net) }, func(s Sum) cell { return amount(s.Net) }, always},
		{figure("Moist. %"), func(t Ticket) cell { return given(t.Moisture) }, nil, always},
		{in("Off and on", w), func(t Ticket) cell { return fromOwner(t.TakenOff()) }, func(s Sum) cell { return fromOwner(s.Net.Sub(s.Settled)) }, always},
		{in("Settled", w), func(t Ticket) cell { return amount(t.Settled) }, func(s Sum) cell { return amount(s.Settled) }, always},
		{in("Settled", q), func(t Ticket) cell { return amount(t.Quantity) }, func(s Sum) cell { return amount(s.Quantity) }, always},
		{figure("Drying $"), func(t Ticket) cell { return fromOwner(t.Drying) }, func(s Sum) cell { return fromOwner(s.Drying) }, always},
		{figure("Discounts $"), func(t Ticket) cell { return fromOwner(t.Discounts) }, func(s Sum) cell { return fromOwner(s.Discounts) }, always},
		{figure("Premiums $"), func(t Ticket) cell { return toOwner(t.Premiums) }, func(s Sum) cell { return toOwner(s.Premiums) }, unlessEmpty},
		{figure("Value $"), Ticket.value, func(s Sum) cell { return amount(s.Value) }, always},
		{figure("Payable $"), Ticket.payable, func(s Sum) cell { return amount(s.Payable) }, always},
		{words("Disposition"), func(t Ticket) cell { return text(t.how()) }, nil, always},
		{words("Mark"), func(t Ticket) cell { return text(t.marks()) }, nil, unlessEmpty},
	})
	byNumber(p.Tickets, p.Struck, g.add, g.struck)
	g.total(p.Sum)
	return g.table("", "loads", p.Name, p.units.String())
}

func (a Account) outTable() report.Table {
	g := newGrid([]column[Ticket, none]{
		{figure("Ticket"), func(t Ticket) cell { return number(t.Number) }, nil, always},
		{own("Day"), func(t Ticket) cell { return text(t.Day.String()) }, nil, always},
		{words("Commodity"), func(t Ticket) cell { return text(t.Name) }, nil, always},
		{own("Truck"), func(t Ticket) cell { return text(t.Truck) }, nil, always},
		{figure("Net"), func(t Ticket) cell { return amount(t.Net) }, nil, always},
		{words("Unit"), func(t Ticket) cell { return text(t.Net.Unit().String()) }, nil, always},
		{words("Mark"), func(t Ticket) cell { return text(t.marks()) }, nil, unlessEmpty},
	})
	for _, t := range a.Out {
		if t.InForce() {
			g.add(t)
		} else {
			g.struck(t)
		}
	}
	return g.table("", "taken out")
}
