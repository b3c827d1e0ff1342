package daysheet

import (
	"fmt"
	"slices"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
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

// title tells in or out.
func (p Part) title() string {
	if p.Outbound {
		return p.Name + ", out"
	}
	return p.Name
}

// received is the grain of the day by commodity.
func (c *composer) received() {
	c.heading("Grain")
	for _, u := range c.units() {
		g := newGrid(words("Commodity"), figure("Loads"), in("Net", u.weight), in("Dockage", u.weight), in("Water shrink", u.weight),
			in("Handling", u.weight), in("Off for quality", u.weight), in("Settled", u.weight), in("Settled", u.per),
			figure("Average moisture %"), figure("Average test weight lb/bu"))
		for _, p := range c.Parts {
			if p.units == u {
				c.receivedRows(g, p)
			}
		}
		c.put(g.withoutEmpty("Dockage", "Off for quality", "Average test weight").table("", "grain", u.String()))
	}
	if len(c.Parts) == 0 {
		c.say("No grain moved.")
		return
	}
	c.say("Averages are weighed by net weight. Settled is net less dockage, water shrink, handling and what discounts take in weight.")
}

// String names a pair of units: "lb bu".
func (u units) String() string { return u.weight.String() + " " + u.per.String() }

func (c *composer) receivedRows(g *grid, p Part) {
	moisture, tested := p.Sum.Moisture()
	weight, weighed := p.Sum.TestWeight()
	row := func(title string, s Sum, averages ...cell) []cell {
		return append([]cell{text(title), count(s.Loads), amount(s.Net), settledOf(p, s.Dockage), settledOf(p, s.Water), settledOf(p, s.Handling),
			settledOf(p, s.Quality), settledOf(p, s.Settled), settledOf(p, s.Quantity)}, averages...)
	}
	g.add(row(p.title(), p.Sum, average(moisture, tested), average(weight, weighed))...)
	if len(p.Against) == 0 {
		return
	}
	all, back := p.Sum, p.Back.negative()
	all.join(back)
	g.add(row("less: "+p.title()+" of earlier days, voided or corrected today", back, text(""), text(""))...)
	g.total(row(p.title()+", to the day's account", all, text(""), text(""))...)
}

// settledOf leaves what settlement says empty for grain that left: it is only
// weighed.
func settledOf(p Part, a quantity.Amount) cell {
	if p.Outbound {
		return text("")
	}
	return amount(a)
}

// charged is the money of the day by commodity.
func (c *composer) charged() {
	g := newGrid(words("Commodity"), figure("Drying $"), figure("Discounts $"), figure("Premiums $"), figure("Charges $"), figure("Value $"),
		figure("Payable $"), figure("Loads, price later"), figure("Charges, price later $"), figure("Quantity, price later"))
	all := noMoney()
	for _, p := range c.Parts {
		if p.Outbound {
			continue
		}
		g.add(append(moneyCells(p.title(), p.Sum.Money), amount(p.Sum.LaterQuantity))...)
		all.join(p.Sum.Money)
		if len(p.Against) > 0 {
			back := p.Back.negative()
			g.add(append(moneyCells("less: "+p.title()+" of earlier days", back.Money), amount(back.LaterQuantity))...)
			all.join(back.Money)
		}
	}
	if len(g.rows) == 0 {
		return
	}
	g.total(append(moneyCells("All, to the day's account", all), text(""))...)
	c.heading("Charges and payments")
	c.put(g.table("", "charges"))
	c.say("Charges are drying and discounts less premiums. Payable is value less the charges of the loads that have their price; loads without one are charged and not yet paid.")
}

func moneyCells(title string, m Money) []cell {
	return []cell{text(title), amount(m.Drying), amount(m.Discounts), amount(m.Premiums), amount(m.Charges), amount(m.Value), amount(m.Payable),
		count(m.Later), amount(m.LaterCharges)}
}

func (c *composer) hourBars() report.Bars {
	b := report.Bars{Title: "Loads by hour", Empty: "No load was ticketed."}
	most := 1
	for _, h := range c.Hours {
		most = max(most, h.In+h.Out)
	}
	for _, h := range c.Hours {
		n := h.In + h.Out
		b.Labels, b.Heights, b.Values = append(b.Labels, h.Hour), append(b.Heights, n*1000/most), append(b.Values, fmt.Sprint(n))
	}
	return b
}

func (c *composer) spreadBars() report.Bars {
	b := report.Bars{Title: "Loads by moisture, whole percents", Empty: "No load was tested."}
	most := 1
	for _, s := range c.Spread {
		most = max(most, s.Loads)
	}
	for _, s := range c.Spread {
		b.Labels, b.Heights, b.Values = append(b.Labels, s.Moisture), append(b.Heights, s.Loads*1000/most), append(b.Values, fmt.Sprint(s.Loads))
	}
	return b
}

func (c *composer) places() {
	if len(c.Places) == 0 {
		return
	}
	c.heading("By pit and bin")
	for _, u := range c.units() {
		g := newGrid(words("Commodity"), words("Pit or bin"), words("Way"), figure("Loads"), in("Net", u.weight), in("Settled", u.weight), in("Settled", u.per))
		all := newSum(u)
		for _, p := range c.Places {
			if p.Sum.units() == u && !p.Outbound {
				g.add(text(p.Name), text(orNone(p.Bin)), text("in"), count(p.Sum.Loads), amount(p.Sum.Net), amount(p.Sum.Settled), amount(p.Sum.Quantity))
				all.join(p.Sum)
			}
		}
		if len(g.rows) > 0 {
			g.total(text("All in"), text(""), text(""), count(all.Loads), amount(all.Net), amount(all.Settled), amount(all.Quantity))
		}
		c.placesOut(g, u)
		c.put(g.table("", "places", u.String()))
	}
}

func (c *composer) placesOut(g *grid, u units) {
	all := newSum(u)
	for _, p := range c.Places {
		if p.Sum.units() == u && p.Outbound {
			g.add(text(p.Name), text(orNone(p.Bin)), text("out"), count(p.Sum.Loads), amount(p.Sum.Net), text(""), text(""))
			all.join(p.Sum)
		}
	}
	if all.Loads > 0 {
		g.total(text("All out"), text(""), text(""), count(all.Loads), amount(all.Net), text(""), text(""))
	}
}

func orNone(s string) string {
	if s == "" {
		return "not named"
	}
	return s
}

func (c *composer) dealt() {
	if len(c.Dealt) == 0 {
		return
	}
	c.heading("Sold, stored, on contract")
	for _, u := range c.units() {
		g := newGrid(words("Commodity"), words("Disposition"), figure("Loads"), in("Settled", u.weight), in("Settled", u.per))
		all := newSum(u)
		for _, one := range c.Dealt {
			if one.Sum.units() == u {
				g.add(text(one.Name), text(one.How), count(one.Sum.Loads), amount(one.Sum.Settled), amount(one.Sum.Quantity))
				all.join(one.Sum)
			}
		}
		if len(g.rows) > 0 {
			g.total(text("All"), text(""), count(all.Loads), amount(all.Settled), amount(all.Quantity))
			c.put(g.table("", "dealt", u.String()))
		}
	}
}
