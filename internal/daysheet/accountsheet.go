package daysheet

import (
	"fmt"

	"tenthpoint/internal/house"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// ComposeAccount makes a grower's statement.
func ComposeAccount(a Account, p house.Profile) report.Document {
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
		put(report.Heading{Text: "Summary: " + part.Name}, part.summary(), part.dealtTable())
	}
	if len(a.Fills) > 0 {
		put(report.Heading{Text: "Contracts"}, a.fills())
	}
	put(report.Para{Text: "Every figure is this grower's own part; what others own of the same loads is not in it. Void and corrected tickets are struck and not counted. " +
		"Payable is value less charges of the loads that have their price. What has been paid is not in this book."})
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
	s := p.Sum
	moisture, tested := s.Moisture()
	g := newGrid(figure("Loads"), in("Net", p.units.weight), figure("Average moisture %"), in("Settled", p.units.weight), in("Settled", p.units.per),
		figure("Drying $"), figure("Discounts $"), figure("Premiums $"), figure("Charges $"), figure("Value $"), figure("Payable $"),
		figure("Loads, price later"), in("Price later", p.units.per), figure("Charges, price later $"))
	g.add(count(s.Loads), amount(s.Net), average(moisture, tested), amount(s.Settled), amount(s.Quantity), amount(s.Drying), amount(s.Discounts),
		amount(s.Premiums), amount(s.Charges), amount(s.Value), amount(s.Payable), count(s.Later), amount(s.LaterQuantity), amount(s.LaterCharges))
	return g.withoutEmpty("Premiums").table("", "summary", p.Name, p.units.String())
}

// dealtTable is the balance: what is sold, what is stored, what went on which
// contract.
func (p AccountPart) dealtTable() report.Table {
	g := newGrid(words("Disposition"), figure("Loads"), in("Settled", p.units.weight), in("Settled", p.units.per), figure("Payable $"))
	for _, d := range p.Dealt {
		g.add(text(d.How), count(d.Sum.Loads), amount(d.Sum.Settled), amount(d.Sum.Quantity), amount(d.Sum.Payable))
	}
	g.total(text("All"), count(p.Sum.Loads), amount(p.Sum.Settled), amount(p.Sum.Quantity), amount(p.Sum.Payable))
	return g.table("", "balance", p.Name, p.units.String())
}

func (a Account) fills() report.Table {
	g := newGrid(words("Contract"), words("Commodity"), figure("Agreed"), figure("Delivered"), figure("Still to come"), figure("Over"), words("Unit"),
		figure("Loads"), words("Price"), own("Until"))
	for _, f := range a.Fills {
		left, over := f.Left, quantity.Zero(f.Left.Unit())
		if left.Sign() < 0 {
			left, over = over, left.Neg()
		}
		g.add(text(f.Number), text(f.Name), amount(f.Quantity), amount(f.Delivered), amount(left), amount(over), text(f.Quantity.Unit().String()),
			count(f.Loads), text(f.Price.Written()), text(f.Until.String()))
	}
	return g.table("", "contracts")
}

// loads lists the tickets of a commodity; what is void or corrected stands in
// its place and is struck.
func (p AccountPart) loads() report.Table {
	w, q := p.units.weight, p.units.per
	g := newGrid(figure("Ticket"), own("Day"), own("Truck"), own("Delivered by"), words("Share"), in("Net", w), figure("Moist. %"),
		in("Taken off", w), in("Settled", w), in("Settled", q), figure("Drying $"), figure("Discounts $"), figure("Premiums $"),
		figure("Value $"), figure("Payable $"), words("Disposition"), words("Mark"))
	byNumber(p.Tickets, p.Struck,
		func(t Ticket) { g.add(accountCells(t)...) },
		func(t Ticket) { g.struck(accountCells(t)...) })
	s := p.Sum
	g.total(text(""), text(loads(s.Loads)), text(""), text(""), text(""), amount(s.Net), text(""), amount(s.Net.Sub(s.Settled)), amount(s.Settled),
		amount(s.Quantity), amount(s.Drying), amount(s.Discounts), amount(s.Premiums), amount(s.Value), amount(s.Payable), text(""), text(""))
	return g.withoutEmpty("Premiums", "Mark").table("", "loads", p.Name, p.units.String())
}

func accountCells(t Ticket) []cell {
	value, payable := text(""), text(t.unpriced())
	if t.Priced() {
		value, payable = amount(t.Value), amount(t.Payable)
	}
	return []cell{number(t.Number), text(t.Day.String()), text(t.Truck), text(t.Grower), text(t.share()), amount(t.Net), given(t.Moisture),
		amount(t.TakenOff()), amount(t.Settled), amount(t.Quantity), amount(t.Drying), amount(t.Discounts), amount(t.Premiums), value, payable, text(t.how()), text(t.marks())}
}

func (a Account) outTable() report.Table {
	g := newGrid(figure("Ticket"), own("Day"), words("Commodity"), own("Truck"), figure("Net"), words("Unit"), words("Mark"))
	for _, t := range a.Out {
		cells := []cell{number(t.Number), text(t.Day.String()), text(t.Name), text(t.Truck), amount(t.Net), text(t.Net.Unit().String()), text(t.marks())}
		if t.InForce() {
			g.add(cells...)
		} else {
			g.struck(cells...)
		}
	}
	return g.withoutEmpty("Mark").table("", "taken out")
}
