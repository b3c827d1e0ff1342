package scaleticket

import (
	"fmt"

	"tenthpoint/internal/load"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/scaleticket/barcode"
	"tenthpoint/internal/settle"
)

// Compose makes the document of a ticket. It never fails: a load of which
// nothing is known is a slip on which everything is missing.
func Compose(t Ticket) Document {
	t.fillIn()
	c := &composer{Ticket: t, w: t.Words, l: t.Load, s: t.Settlement}
	c.doc.Made, c.doc.Preview = c.made(), c.isDraft() && !c.isRefused()
	c.doc.Running = c.w.Ticket + " " + c.ticketNumber()
	c.doc.PageOf, c.doc.Named = c.w.PageOf, c.w.Named
	c.marks()
	c.identity()
	c.number()
	c.party()
	c.movement()
	c.headline()
	c.weight()
	c.quality()
	c.settlement()
	c.signature()
	c.footer()
	c.working()
	c.doc.payload = c.pack()
	return c.doc
}

// composer writes one document.
type composer struct {
	Ticket
	w   Words
	l   *load.Load
	s   *settle.Settlement
	doc Document
}

// open begins a section; lines that are put follow under it.
func (c *composer) open(id, title string, form Form) {
	c.doc.Sections = append(c.doc.Sections, Section{ID: id, Title: title, Form: form})
}

func (c *composer) put(lines ...Line) {
	last := &c.doc.Sections[len(c.doc.Sections)-1]
	for _, l := range lines {
		l.Missing = l.Missing && !c.isRefused()
		last.Lines = append(last.Lines, l)
	}
}

// fact puts a pair; without a value it prints the word for its absence.
func (c *composer) fact(label, value, absent string) {
	c.known("", label, value, absent)
}

// known is a fact that the form has a field for.
func (c *composer) known(field, label, value, absent string) {
	if value == "" {
		value = absent
	}
	c.put(Line{Field: field, Label: label, Value: value})
}

// need puts a pair that no ticket can do without.
func (c *composer) need(field, label, value, absent string) {
	if value == "" {
		c.put(Line{Field: field, Label: label, Value: absent, Missing: true})
		return
	}
	c.put(Line{Field: field, Label: label, Value: value})
}

// given puts a pair only where there is something to say.
func (c *composer) given(label, value string) {
	if value != "" {
		c.put(Line{Label: label, Value: value})
	}
}

func (c *composer) warn(sentence string) {
	if sentence != "" {
		c.put(Line{Kind: Warning, Label: sentence})
	}
}

// isDraft reports whether the slip is a preview and no ticket.
func (c *composer) isDraft() bool { return c.Copy == Draft || c.l.Number == 0 }

// isRefused reports whether the load was turned away: nothing is to come.
func (c *composer) isRefused() bool { return c.l.Phase == load.TurnedAway }

// whenSettled stands for a figure that the settlement will bring, if one is to
// come.
func (c *composer) whenSettled() string {
	if c.isRefused() {
		return c.w.NotSettled
	}
	return c.w.WhenSettled
}

// isExample reports whether anything on the slip is invented.
func (c *composer) isExample() bool {
	return c.House.Demo || c.Edition != nil && c.Edition.Status == rates.Example
}

func (c *composer) ticketNumber() string {
	switch {
	case c.isRefused():
		return c.w.NoNumber
	case c.l.Number == 0:
		return c.w.NumberLater
	}
	return fmt.Sprint(c.l.Number)
}

// owner is the one owner whose slip this is, and whether it is one's.
func (c *composer) owner() (load.Owner, bool) {
	if c.Owner == 0 {
		return load.Owner{}, false
	}
	return c.l.Details.Shares[c.Owner-1], true
}

// ownPart is that owner's part of the settlement; nil when there is none.
func (c *composer) ownPart() *settle.ShareLine {
	if c.s == nil || c.Owner == 0 || c.Owner > len(c.s.Shares) {
		return nil
	}
	return &c.s.Shares[c.Owner-1]
}

// named sets a name before what it names, or either alone.
func (c *composer) named(name, what string) string {
	if name == "" || what == "" {
		return name + what
	}
	return fmt.Sprintf(c.w.Named, name, what)
}

// pack takes the payload from the settlement of the whole load.
func (c *composer) pack() barcode.Payload {
	if c.s == nil || c.Code == "" || c.isDraft() {
		return barcode.Payload{}
	}
	dry := c.s.Quantity
	if c.s.Bushels != nil {
		dry = c.s.Bushels
	}
	return barcode.Payload{
		Ticket: c.l.Number, Net: c.s.Net.Value(), Moisture: c.s.Moisture.Value(),
		Dry: dry.Value(), Code: c.Code,
	}
}
