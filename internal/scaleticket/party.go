package scaleticket

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
)

// party is whose grain it is.
func (c *composer) party() {
	d := c.l.Details
	c.open("party", c.w.Party, Facts)
	label := c.w.Grower
	if d.Direction == load.Outbound {
		label = c.w.Owner
	}
	c.need("grower", label, d.Grower.Name, c.w.NotNamed)
	if owner, ok := c.owner(); ok {
		c.put(Line{Label: c.w.ThisCopyFor, Value: shareWords(owner), Emphasis: true})
	} else {
		c.put(Line{Field: "shares", Label: c.w.Shares, Value: c.sharesWords()})
	}
	if d.Direction == load.Outbound {
		c.need("consignee", c.w.Consignee, d.Consignee, c.w.NotNamed)
	} else {
		c.given(c.w.Consignee, d.Consignee)
	}
	c.given(c.w.Agent, d.Agent)
}

// sharesWords tells who owns how much of the load.
func (c *composer) sharesWords() string {
	owners := c.l.Details.Shares
	if len(owners) < 2 {
		return c.w.WholeLoad
	}
	var parts []string
	for _, o := range owners {
		parts = append(parts, shareWords(o))
	}
	return Joined("; ", parts...)
}

func shareWords(o load.Owner) string {
	return o.Name + " " + shareFigure(o)
}

// shareFigure is an owner's part as it was agreed: 1/3, or 33.5 %.
func shareFigure(o load.Owner) string {
	if o.Of.Equal(quantity.Int(100, quantity.Plain)) {
		return o.Parts.Figure() + " %"
	}
	return o.Parts.Figure() + "/" + o.Of.Figure()
}

// movement is what came or went, when and on what.
func (c *composer) movement() {
	d := c.l.Details
	c.open("movement", c.w.Movement, Facts)
	c.fact(c.w.Movement, c.direction(), c.w.NotStated)
	c.need("day", c.w.Date, c.date(d.Day), c.w.NotDated)
	c.need("commodity", c.w.Commodity, Joined(", ", c.commodity(), d.Class), c.w.NotNamed)
	c.fact(c.w.CropYear, d.CropYear, c.w.NotStated)
	c.need("truck", c.w.Truck, c.truck(), c.w.NotNamed)
	c.fact(c.w.Trailer, d.Truck.Trailer, c.w.None)
	c.weighedAt(load.Gross, c.w.GrossAt)
	c.weighedAt(load.Tare, c.w.TareAt)
	c.fact(c.w.Driver, d.Driver, c.w.NotNamed)
	c.known("bin", c.w.Bin, d.Bin, c.w.NotNamed)
	if d.Remark != "" {
		c.put(Line{Field: "remark", Label: c.w.Remark, Value: d.Remark})
	}
}

func (c *composer) direction() string {
	switch c.l.Details.Direction {
	case load.Inbound:
		return c.w.Inbound
	case load.Outbound:
		return c.w.Outbound
	}
	return ""
}

// grain is the commodity of the load, where it is one that is known here.
func (c *composer) grain() (grain.Commodity, bool) {
	if c.Edition != nil {
		return c.Edition.Commodity, true
	}
	known, err := grain.ByID(c.l.Details.Commodity)
	return known, err == nil
}

func (c *composer) commodity() string {
	if known, ok := c.grain(); ok {
		return c.w.say(known.Name)
	}
	return c.l.Details.Commodity
}

func (c *composer) truck() string {
	t := c.l.Details.Truck
	switch {
	case t.Plate == "" || t.Plate == t.ID:
		return t.ID
	case t.ID == "":
		return c.w.Plate + " " + t.Plate
	}
	return t.ID + ", " + c.w.Plate + " " + t.Plate
}

// weighedAt says when one side was weighed, and whether the driver was on.
func (c *composer) weighedAt(which load.Which, label string) {
	var times []string
	for _, w := range c.l.Weighings {
		if w.Which == which {
			times = append(times, Joined(" ", c.w.say(w.Draft), Joined(", ", c.when(w), c.driver(w))))
		}
	}
	c.need(string(which), label, Joined("; ", times...), c.w.NotWeighed)
}

// when is the time a weight was taken; of a stored tare, the day.
func (c *composer) when(w load.Taken) string {
	if w.Source == load.StoredTare {
		return c.w.StoredTareOf + " " + c.date(w.Weighing.Taken)
	}
	return c.hour(w.At)
}

func (c *composer) driver(w load.Taken) string {
	switch {
	case w.Source == load.StoredTare:
		return ""
	case w.DriverOn == "on":
		return c.w.DriverOn
	case w.DriverOn == "off":
		return c.w.DriverOff
	}
	return c.w.DriverNotNoted
}
