package scaleticket

import (
	"fmt"

	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// weight is gross less tare: every draft full, every draft empty, net.
func (c *composer) weight() {
	c.open("weight", c.w.Weight, Ledger)
	var texts []string
	for _, w := range c.l.Weighings {
		texts = append(texts, w.Weight.Written())
	}
	col := columnOf(texts...)
	drafts := c.l.Drafts()
	if len(drafts) == 0 {
		drafts = []string{""}
	}
	for _, which := range []load.Which{load.Gross, load.Tare} {
		for i, draft := range drafts {
			c.weighed(col, which, draft, i == 0)
		}
	}
	c.netLine(col)
}

// weighed puts the weight in force of one side, and those it replaced.
func (c *composer) weighed(col column, which load.Which, draft string, first bool) {
	label := c.sideLabel(which, draft)
	w, ok := c.l.Weight(which, draft)
	if !ok {
		c.put(Line{Field: string(which), Label: label, Value: c.w.NotWeighed, Missing: true})
		return
	}
	line := Line{Field: string(which), Label: label, Value: col.off(w.Weight), Notes: some(c.weightSource(w))}
	switch {
	case which == load.Gross && first:
		line.Value = col.figure(w.Weight)
	case which == load.Gross:
		line.Value = col.on(w.Weight)
	}
	if w.Source == load.ByHand {
		line.Mark = c.w.MarkManual
	}
	c.put(line)
	for _, old := range c.l.Struck {
		if old.Which == which && old.Draft == draft {
			c.struck(col, old)
		}
	}
}

// struck puts a weight that was replaced by a later one.
func (c *composer) struck(col column, w load.Taken) {
	line := Line{
		Kind: Struck, Label: c.sideLabel(w.Which, w.Draft) + ", " + c.w.StruckWeight,
		Value: col.figure(w.Weight), Notes: some(Joined(", ", c.weightSource(w), c.timeOf(w))),
	}
	if w.Source == load.ByHand {
		line.Mark = c.w.MarkManual
	}
	c.put(line)
}

func (c *composer) timeOf(w load.Taken) string {
	if w.Source == load.StoredTare {
		return ""
	}
	return c.hour(w.At)
}

func (c *composer) sideLabel(which load.Which, draft string) string {
	side := c.w.Gross
	if which == load.Tare {
		side = c.w.Tare
	}
	if draft == "" {
		return side
	}
	return fmt.Sprintf(c.w.OfDraft, side, c.w.say(draft))
}

// weightSource says where a weight came from.
func (c *composer) weightSource(w load.Taken) string {
	scale := ""
	if w.Scale != "" {
		scale = c.w.OnScale + " " + w.Scale
	}
	switch w.Source {
	case load.ByHand:
		return Joined(", ", scale, c.w.TypedBy+" "+w.Who, c.w.say(w.Reason))
	case load.StoredTare:
		return Joined(", ", c.w.StoredTareOf+" "+c.date(w.Weighing.Taken), scale, c.w.UsedBy+" "+w.Who)
	}
	return scale
}

// netLine puts the net, which is a step of the settlement, or while there is
// none gross less tare as far as they are weighed.
func (c *composer) netLine(col column) {
	line := Line{Kind: Total, Field: "net", Label: c.w.Net, Emphasis: true}
	net, ok := c.net()
	if !ok {
		line.Value = c.netLater()
		c.put(line)
		return
	}
	line.Value = col.figure(net)
	c.put(line)
	if net.Sign() > 0 {
		c.warn(c.lightNet(net))
	}
}

// netLater stands for a net that has not been weighed out.
func (c *composer) netLater() string {
	if c.isRefused() {
		return c.w.NotWeighed
	}
	return c.w.NetWhenWeighed
}

// net is the net in the unit of the scale.
func (c *composer) net() (quantity.Amount, bool) {
	if c.s != nil {
		if step, ok := c.s.Sheet.Step(settle.LineNet); ok {
			return step.Value(), true
		}
		return c.s.Net.Value(), true
	}
	if len(c.l.Weighings) == 0 {
		return quantity.Amount{}, false
	}
	net := quantity.Zero(c.l.Weighings[0].Weight.Unit())
	for _, draft := range c.l.Drafts() {
		gross, full := c.l.Weight(load.Gross, draft)
		tare, empty := c.l.Weight(load.Tare, draft)
		if !full || !empty || gross.Weight.Unit() != net.Unit() || tare.Weight.Unit() != net.Unit() {
			return quantity.Amount{}, false
		}
		net = net.Add(gross.Weight).Sub(tare.Weight)
	}
	return net, true
}

// lightNet warns of a load too light for the scale.
func (c *composer) lightNet(net quantity.Amount) string {
	for _, w := range c.l.Weighings {
		if scale, ok := c.House.Scale(w.Scale); ok {
			return c.w.say(scale.LightNet(net))
		}
	}
	return ""
}
