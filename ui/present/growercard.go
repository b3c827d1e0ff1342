package present

import (
	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/house"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/slip"
)

// Card is all that is known of the chosen grower, as a sheet.
func (g *Growers) Card() []slip.PaperLine {
	one, ok := g.grower()
	if !ok {
		return nil
	}
	c := &card{frame: g.frame}
	c.add(slip.PaperTitle, one.Name, "")
	c.add(slip.PaperMiddle, Say("grower %s", one.ID), "")
	for _, line := range []string{one.Address, one.Phone} {
		if line != "" {
			c.add(slip.PaperMiddle, line, "")
		}
	}
	cardShares(c, one)
	cardTrucks(c, g.trucksOf(one.ID))
	g.season(c)
	return c.lines
}

func cardShares(c *card, one house.Grower) {
	c.part(Say("SHARES"))
	if len(one.Shares) == 0 {
		c.add(slip.PaperPair, Say("The whole of every load"), one.Name)
		return
	}
	for _, o := range c.frame.known().owners(one) {
		c.add(slip.PaperPair, o.Name, shareWords(o))
	}
}

// shareWords is a share as people say it: "1/3" or "40 %".
func shareWords(o load.Owner) string {
	if o.Of.Equal(quantity.Int(100, quantity.Plain)) {
		return o.Parts.Figure() + " %"
	}
	return o.Parts.Figure() + "/" + o.Of.Figure()
}

func cardTrucks(c *card, trucks []house.Truck) {
	c.part(Say("TRUCKS AND STORED TARES"))
	if len(trucks) == 0 {
		c.add(slip.PaperText, Say("No truck is written down for this grower. Ctrl+T adds one."), "")
	}
	for _, t := range trucks {
		cardTruck(c, t)
	}
}

func cardTruck(c *card, t house.Truck) {
	name := join(", ", t.ID, t.Plate)
	if t.Trailer != "" {
		name = join(", ", name, Say("trailer %s", t.Trailer))
	}
	if t.Tare == nil {
		c.add(slip.PaperPair, name, Say("no stored tare"))
		return
	}
	taken := Say("weighed %s, %d days ago", c.frame.Date(t.Taken), t.Taken.DaysUntil(c.frame.Desk.Today()))
	if isOldTare(c.frame, t) {
		c.noted(slip.PaperMark, name, t.Tare.String(), Say("%s: weigh it empty again", taken))
		return
	}
	c.noted(slip.PaperPair, name, t.Tare.String(), taken)
}

// season is contracts and deliveries, once they have been added up.
func (g *Growers) season(c *card) {
	switch {
	case g.accountErr != nil:
		c.part(Say("DELIVERED"))
		c.add(slip.PaperMark, sentence(g.accountErr), "")
		return
	case g.accountOf != g.chosen:
		c.part(Say("DELIVERED"))
		c.add(slip.PaperText, Say("being added up …"), "")
		return
	}
	cardContracts(c, g.account.Fills)
	c.part(Say("DELIVERED SINCE %s", g.frame.Date(g.account.From)))
	if len(g.account.Parts) == 0 {
		c.add(slip.PaperText, Say("Nothing yet this season."), "")
	}
	for _, part := range g.account.Parts {
		cardDelivered(c, part)
	}
}

func cardContracts(c *card, fills []daysheet.Fill) {
	if len(fills) == 0 {
		return
	}
	c.part(Say("CONTRACTS"))
	for _, f := range fills {
		note := Say("%s of %s delivered, at %s until %s", f.Delivered, f.Quantity, f.Price, c.frame.Date(f.Until))
		kind, left := slip.PaperPair, Say("%s left", f.Left)
		if f.Left.Sign() < 0 {
			kind, left = slip.PaperMark, Say("%s too much", f.Left.Neg())
		}
		c.noted(kind, join(", ", f.Number, Say(f.Name)), left, note)
	}
}

// cardDelivered is one grain: how much, how wet, what became of it and what it
// brought.
func cardDelivered(c *card, p daysheet.AccountPart) {
	s := p.Sum
	note := Say("%d loads, net %s", s.Loads, s.Net)
	if s.Loads == 1 {
		note = Say("1 load, net %s", s.Net)
	}
	if m, known := s.Moisture(); known {
		note += Say(", %s moisture on average", m)
	}
	c.noted(slip.PaperTotal, p.Name, s.Quantity.String(), note)
	for _, d := range p.Dealt {
		c.add(slip.PaperPair, Say(d.How), d.Sum.Quantity.String())
	}
	c.add(slip.PaperPair, Say("Charges"), s.Charges.String())
	c.add(slip.PaperPair, Say("Payable"), s.Payable.String())
	if s.Later > 0 {
		c.add(slip.PaperPair, Say("Price later"), s.LaterQuantity.String())
	}
	c.add(slip.PaperGap, "", "")
}
