package growers

import (
	"tenthpoint/internal/contract"
	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Card is all that is known of the chosen grower, as a sheet.
func (g *Growers) Card() []model.CardLine {
	one, ok := g.grower()
	if !ok {
		return nil
	}
	c := &session.Card{Session: g.session}
	c.Add(model.CardTitle, one.Name, "")
	c.Add(model.CardMiddle, g.session.Say("grower %s", one.ID), "")
	for _, line := range []string{one.Address, one.Phone} {
		if line != "" {
			c.Add(model.CardMiddle, line, "")
		}
	}
	cardShares(c, one)
	cardFarms(c, one)
	cardTrucks(c, trucksOf(g.session, one.ID))
	cardLiens(g, c)
	g.season.card(c, one.ID)
	return c.Lines
}

func cardShares(c *session.Card, one elevator.Grower) {
	c.Part(c.Session.Say("SHARES"))
	if len(one.Shares) == 0 {
		c.Add(model.CardPair, c.Session.Say("The whole of every load"), one.Name)
		return
	}
	for _, o := range session.UsualShares(c.Session, one) {
		c.Add(model.CardPair, o.Name, o.Part().String())
	}
}

func cardTrucks(c *session.Card, trucks []elevator.Truck) {
	c.Part(c.Session.Say("TRUCKS AND STORED TARES"))
	if len(trucks) == 0 {
		c.Add(model.CardText, c.Session.Say("No truck is written down for this grower. Ctrl+T adds one."), "")
	}
	for _, t := range trucks {
		cardTruck(c, t)
	}
}

func cardTruck(c *session.Card, t elevator.Truck) {
	name := session.Join(", ", t.ID, t.Plate)
	if t.Trailer != "" {
		name = session.Join(", ", name, c.Session.Say("trailer %s", t.Trailer))
	}
	if t.Tare == nil {
		c.Add(model.CardPair, name, c.Session.Say("no stored tare"))
		return
	}
	taken := c.Session.Say("weighed %s, %d days ago", c.Session.Date(t.Taken), t.Taken.DaysUntil(c.Session.Desk.Today()))
	if isOldTare(c.Session, t) {
		c.Noted(model.CardMark, name, t.Tare.String(), c.Session.Say("%s: weigh it empty again", taken))
		return
	}
	c.Noted(model.CardPair, name, t.Tare.String(), taken)
}

func cardContracts(c *session.Card, contracts []contract.Filled) {
	if len(contracts) == 0 {
		return
	}
	c.Part(c.Session.Say("CONTRACTS"))
	for _, f := range contracts {
		note := c.Session.Say("%s of %s delivered, at %s until %s", f.Delivered, f.Quantity, f.PriceText(), c.Session.Date(f.Until))
		kind, left := model.CardPair, c.Session.Say("%s left", f.Left)
		if over := f.Over(); over.Sign() > 0 {
			kind, left = model.CardMark, c.Session.Say("%s too much", over)
		}
		c.Noted(kind, session.Join(", ", f.Number, c.Session.Say(grain.NameOf(f.Commodity))), left, note)
	}
}

// cardDelivered shows one grain: quantity, moisture, disposition and money.
func cardDelivered(c *session.Card, p daysheet.AccountPart) {
	s := p.Sum
	note := c.Session.Say("%d loads, net %s", s.Loads, s.Net)
	if s.Loads == 1 {
		note = c.Session.Say("1 load, net %s", s.Net)
	}
	if m, known := s.Moisture(); known {
		note += c.Session.Say(", %s moisture on average", m)
	}
	c.Noted(model.CardTotal, p.Name, s.Quantity.String(), note)
	for _, d := range p.ByDisposition {
		c.Add(model.CardPair, c.Session.Text(d.How), d.Sum.Quantity.String())
	}
	c.Add(model.CardPair, c.Session.Say("Charges, discounts"), session.ToOwner(s.Charges.Neg()))
	c.Add(model.CardPair, c.Session.Say("Payable"), s.Payable.String())
	if s.Later > 0 {
		c.Add(model.CardPair, c.Session.Say("Without price"), s.LaterQuantity.String())
	}
	c.Add(model.CardGap, "", "")
}
