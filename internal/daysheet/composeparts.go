package daysheet

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/settle"
)

// units lists the pairs of units that occur, each with a table of its own.
func (c *composer) units() []units {
	var out []units
	for _, p := range c.Parts {
		if !slices.Contains(out, p.units) {
			out = append(out, p.units)
		}
	}
	return out
}

// title names the direction: in or out.
func (p Part) title() message.Text {
	if p.Outbound {
		return message.New("%s, out", p.Name)
	}
	return message.Words(p.Name)
}

// received is the grain of the day by commodity.
func (c *composer) received() {
	c.heading(message.New("Grain"))
	for _, u := range c.units() {
		g := c.receivedGrid(u)
		for _, p := range c.Parts {
			if p.units == u {
				c.receivedRows(g, p)
			}
		}
		c.put(g.table(u.table(message.New("grain")), message.Text{}))
	}
	if len(c.Parts) == 0 {
		c.say(message.New("No grain moved."))
		return
	}
	c.say(message.New("Averages are weighed by net weight. Settled is net less dockage, water shrink, handling and what discounts take in weight."))
}

// String names a pair of units: "lb bu".
func (u units) String() string { return u.weight.String() + " " + u.per.String() }

// table is the name of a table in a pair of units.
func (u units) table(what message.Text) message.Text {
	return message.List(" ", what, message.Own(u.String()))
}

// receivedRow is the intake of a commodity, or reversals of earlier days.
type receivedRow struct {
	title    message.Text
	outbound bool // grain that left is only weighed
	sum      Sum
	averages bool
}

func (c *composer) receivedGrid(u units) *grid[receivedRow, none] {
	settled := func(of func(Sum) quantity.Amount) func(receivedRow) cell {
		return func(r receivedRow) cell {
			if r.outbound {
				return cell{}
			}
			return amount(of(r.sum))
		}
	}
	return newGrid([]column[receivedRow, none]{
		{wordsColumn("Commodity"), func(r receivedRow) cell { return text(r.title) }, nil, always},
		{figureColumn("Loads"), func(r receivedRow) cell { return count(r.sum.Loads) }, nil, always},
		{unitColumn("Net", u.weight), func(r receivedRow) cell { return amount(r.sum.Net) }, nil, always},
		{unitColumn("Dockage", u.weight), settled(func(s Sum) quantity.Amount { return s.Dockage }), nil, unlessEmpty},
		{unitColumn("Water shrink", u.weight), settled(func(s Sum) quantity.Amount { return s.Water }), nil, always},
		{unitColumn("Handling", u.weight), settled(func(s Sum) quantity.Amount { return s.Handling }), nil, always},
		{unitColumn("Off for quality", u.weight), settled(func(s Sum) quantity.Amount { return s.Quality }), nil, unlessEmpty},
		{unitColumn("Settled", u.weight), settled(func(s Sum) quantity.Amount { return s.Settled }), nil, always},
		{unitColumn("Settled", u.per), settled(func(s Sum) quantity.Amount { return s.Quantity }), nil, always},
		{unitColumn("Average moisture", quantity.Percent), receivedRow.moisture, nil, always},
		{unitColumn("Average test weight", quantity.LbPerBushel), func(r receivedRow) cell { return r.testWeight(quantity.LbPerBushel) }, nil, unlessEmpty},
		{unitColumn("Average test weight", quantity.KgPerHL), func(r receivedRow) cell { return r.testWeight(quantity.KgPerHL) }, nil, c.metric()},
	})
}

func (r receivedRow) moisture() cell {
	moisture, tested := r.sum.Moisture()
	return average(moisture, tested && r.averages)
}

// testWeight is the average of those tested in a unit.
func (r receivedRow) testWeight(in quantity.Unit) cell {
	weight, weighed := r.sum.TestWeight(in)
	return average(weight, weighed && r.averages)
}

// metric says whether test weights in kg/hL are on the sheet: sheets closed before they were
// print as they did.
func (c *composer) metric() presence {
	if c.Closed != nil && !c.Closed.Metric {
		return never
	}
	return unlessEmpty
}

func (c *composer) receivedRows(g *grid[receivedRow, none], p Part) {
	g.add(receivedRow{p.title(), p.Outbound, p.Sum, true})
	if len(p.Against) == 0 {
		return
	}
	all, back := p.Sum, p.Back.negative()
	all.join(back)
	g.add(receivedRow{message.New("less: %s of earlier days, voided or corrected today", p.title()), p.Outbound, back, false})
	g.put(report.Total, receivedRow{message.New("%s, to the day's account", p.title()), p.Outbound, all, false})
}

// chargedRow is the money of a commodity, or of all; of all there is no quantity, since
// each commodity has its own unit.
type chargedRow struct {
	title message.Text
	Money
	later cell
}

func chargedGrid(taken string) *grid[chargedRow, none] {
	return newGrid([]column[chargedRow, none]{
		{wordsColumn("Commodity"), func(r chargedRow) cell { return text(r.title) }, nil, always},
		{unitColumn("Drying", quantity.Dollar), func(r chargedRow) cell { return amount(r.Drying) }, nil, always},
		{unitColumn("Discounts", quantity.Dollar), func(r chargedRow) cell { return amount(r.Discounts) }, nil, always},
		{unitColumn("Premiums", quantity.Dollar), func(r chargedRow) cell { return amount(r.Premiums) }, nil, always},
		{unitColumn(taken, quantity.Dollar), func(r chargedRow) cell { return amount(r.Charges) }, nil, always},
		{unitColumn("Value", quantity.Dollar), func(r chargedRow) cell { return amount(r.Value) }, nil, always},
		{unitColumn("Payable", quantity.Dollar), func(r chargedRow) cell { return amount(r.Payable) }, nil, always},
		{figureColumn("Loads without price"), func(r chargedRow) cell { return count(r.Later) }, nil, always},
		{unitColumn(taken+" without price", quantity.Dollar), func(r chargedRow) cell { return amount(r.LaterCharges) }, nil, always},
		{figureColumn("Quantity without price"), func(r chargedRow) cell { return r.later }, nil, always},
	})
}

// charged is the money of the day by commodity.
func (c *composer) charged() {
	g := chargedGrid(c.taken())
	all := noMoney()
	for _, p := range c.Parts {
		if p.Outbound {
			continue
		}
		g.add(chargedRow{p.title(), p.Sum.Money, amount(p.Sum.LaterQuantity)})
		all.join(p.Sum.Money)
		if len(p.Against) > 0 {
			back := p.Back.negative()
			g.add(chargedRow{message.New("less: %s of earlier days", p.title()), back.Money, amount(back.LaterQuantity)})
			all.join(back.Money)
		}
	}
	if len(g.rows) == 0 {
		return
	}
	g.put(report.Total, chargedRow{title: message.New("All, to the day's account"), Money: all})
	c.heading(message.New("Charges and payments"))
	c.put(g.table(message.New("charges"), message.Text{}))
	if !c.hasTitles() {
		c.say(message.New("Charges are drying and discounts less premiums. Payable is value less the charges of the loads that have their price; loads without one are charged and not yet paid."))
		return
	}
	c.say(message.New("These are figures of the house: what it charges and takes off stands without a sign, premiums are what it adds. Drying is a charge for a service; discounts and premiums are for quality. Taken is drying and discounts less premiums. Payable is value less that, of what has a price; what has none is charged and not yet paid."))
}

// placeRow is one bin's intake and shipments of one commodity, or the total.
type placeRow struct {
	name, bin, way message.Text
	sum            Sum
	weighedOnly    bool
}

func placesGrid(u units) *grid[placeRow, none] {
	settled := func(of func(Sum) quantity.Amount) func(placeRow) cell {
		return func(r placeRow) cell { return known(of(r.sum), !r.weighedOnly) }
	}
	return newGrid([]column[placeRow, none]{
		{wordsColumn("Commodity"), func(r placeRow) cell { return text(r.name) }, nil, always},
		{wordsColumn("Pit or bin"), func(r placeRow) cell { return text(r.bin) }, nil, always},
		{wordsColumn("Way"), func(r placeRow) cell { return text(r.way) }, nil, always},
		{figureColumn("Loads"), func(r placeRow) cell { return count(r.sum.Loads) }, nil, always},
		{unitColumn("Net", u.weight), func(r placeRow) cell { return amount(r.sum.Net) }, nil, always},
		{unitColumn("Settled", u.weight), settled(func(s Sum) quantity.Amount { return s.Settled }), nil, always},
		{unitColumn("Settled", u.per), settled(func(s Sum) quantity.Amount { return s.Quantity }), nil, always},
	})
}

func (c *composer) places() {
	if len(c.Places) == 0 {
		return
	}
	c.heading(message.New("By pit and bin"))
	for _, u := range c.units() {
		g := placesGrid(u)
		c.placesOf(g, u, false)
		c.placesOf(g, u, true)
		c.put(g.table(u.table(message.New("places")), message.Text{}))
	}
}

// placesOf adds the places of grain that came, or of grain that left, with their sum.
func (c *composer) placesOf(g *grid[placeRow, none], u units, outbound bool) {
	all, way, total := newSum(u), message.New("in"), message.New("All in")
	if outbound {
		way, total = message.New("out"), message.New("All out")
	}
	for _, p := range c.Places {
		if p.Sum.units() == u && p.Outbound == outbound {
			g.add(placeRow{message.Words(p.Name), orNone(p.Bin), way, p.Sum, outbound})
			all.join(p.Sum)
		}
	}
	if all.Loads > 0 {
		g.put(report.Total, placeRow{name: total, sum: all, weighedOnly: outbound})
	}
}

func orNone(s string) message.Text {
	if s == "" {
		return message.New("not named")
	}
	return message.Name(s)
}

func dispositionGrid(u units) *grid[DispositionSum, none] {
	return newGrid([]column[DispositionSum, none]{
		{wordsColumn("Commodity"), func(d DispositionSum) cell { return text(d.Name) }, nil, always},
		{wordsColumn("Disposition"), func(d DispositionSum) cell { return text(d.How) }, nil, always},
		{wordsColumn("Whose grain"), func(d DispositionSum) cell { return text(d.Whose.Said()) }, nil, unlessEmpty},
		{figureColumn("Loads"), func(d DispositionSum) cell { return count(d.Sum.Loads) }, nil, always},
		{unitColumn("Settled", u.weight), func(d DispositionSum) cell { return amount(d.Sum.Settled) }, nil, always},
		{unitColumn("Settled", u.per), func(d DispositionSum) cell { return amount(d.Sum.Quantity) }, nil, always},
	})
}

// taken is the title of drying and discounts less premiums.
func (c *composer) taken() string {
	if c.hasTitles() {
		return "Taken"
	}
	return "Charges"
}

// hasTitles reports whether the day is one of which it was written down whose grain
// is whose: earlier sheets print as they did.
func (c *composer) hasTitles() bool {
	if c.Closed != nil {
		return c.Closed.Engine.HasTitles()
	}
	return !slices.ContainsFunc(c.Tickets, func(t Ticket) bool {
		_, charges := t.Figures[settle.LineCharges]
		return charges
	})
}

func (c *composer) dispositions() {
	if len(c.ByDisposition) == 0 {
		return
	}
	c.heading(message.New("Sold, stored, on contract"))
	for _, u := range c.units() {
		g := dispositionGrid(u)
		all := newSum(u)
		for _, one := range c.ByDisposition {
			if one.Sum.units() == u {
				if !c.hasTitles() {
					one.Whose = ""
				}
				g.add(one)
				all.join(one.Sum)
			}
		}
		if len(g.rows) > 0 {
			g.put(report.Total, DispositionSum{Name: message.New("All"), Sum: all})
			c.put(g.table(u.table(message.New("disposition")), message.Text{}))
		}
	}
}
