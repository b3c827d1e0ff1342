package scaleticket

import (
	"fmt"
	"slices"

	"tenthpoint/internal/load"
)

// identity is whose scale this is.
func (c *composer) identity() {
	c.open("identity", "", Letterhead)
	c.letter("business", "", c.House.Business, c.w.NoBusiness)
	c.doc.Sections[0].Lines[0].Emphasis = true
	c.letter("street", "", c.House.Street, c.w.NoStreet)
	c.letter("town", "", c.House.Town, c.w.NoTown)
	c.letter("phone", c.w.Phone, c.House.Phone, c.w.NoPhone)
	c.given(c.w.Licence, c.House.Licence)
	c.given(c.w.Scale, c.scales())
}

func (c *composer) letter(field, label, value, absent string) {
	if value == "" {
		label = ""
	}
	c.need("house."+field, label, value, absent)
}

// scales names every scale that weighed the load, else the ones there are.
func (c *composer) scales() string {
	var names []string
	for _, w := range c.l.Weighings {
		if w.Scale != "" && !slices.Contains(names, w.Scale) {
			names = append(names, w.Scale)
		}
	}
	if len(names) == 0 {
		for _, s := range c.House.Scales {
			names = append(names, s.ID)
		}
	}
	return Joined(", ", names...)
}

// number is which ticket this is, how it stands and which copy is in hand.
func (c *composer) number() {
	c.open("number", c.w.ScaleTicket, Numbering)
	c.put(Line{Field: "number", Label: c.w.Ticket, Value: c.ticketNumber(), Emphasis: true})
	c.put(Line{Field: "status", Label: c.w.Status, Value: c.status()})
	c.put(Line{Field: "copy", Label: c.w.Copy, Value: c.copyWords()})
	if c.l.Corrects != 0 {
		c.put(Line{Label: c.w.Corrects, Value: fmt.Sprintf(c.w.ByTicket, c.l.Corrects), Notes: some(c.l.Why)})
	}
	if c.l.Reissues != 0 {
		c.put(Line{Label: c.w.InPlaceOf, Value: fmt.Sprintf(c.w.VoidTicket, c.l.Reissues), Notes: some(c.l.Why)})
	}
	c.ending()
	if again := c.l.Again; again.By != 0 {
		c.put(Line{Label: c.w.ReissuedAs, Value: fmt.Sprintf(c.w.ByTicket, again.By), Notes: some(Joined(", ", again.Who, c.moment(again.At)))})
	}
}

// ending says why a ticket or a load came to its end, and by whom.
func (c *composer) ending() {
	end := c.l.Ended
	by := some(Joined(", ", end.Who, c.moment(end.At)))
	switch {
	case c.l.Phase == load.Corrected:
		c.put(Line{Label: c.w.CorrectedBy, Value: fmt.Sprintf(c.w.ByTicket, end.By), Notes: append(some(c.w.say(end.Reason)), by...)})
	case end.Reason != "":
		c.put(Line{Label: c.w.Reason, Value: c.w.say(end.Reason), Notes: by})
	}
}

func (c *composer) status() string {
	switch c.l.Phase {
	case load.OnYard:
		return c.w.OnYard
	case load.Ready:
		return c.w.Ready
	case load.TurnedAway:
		return c.w.Refused + " " + c.moment(c.l.Ended.At)
	case load.Ticketed:
		return c.w.Issued + " " + c.moment(c.l.Issued.At)
	case load.Void:
		return c.w.Void + " " + c.moment(c.l.Ended.At)
	case load.Corrected:
		return c.w.Corrected + " " + c.moment(c.l.Ended.At)
	}
	return c.w.NotOpened
}

func (c *composer) copyWords() string {
	switch {
	case c.isRefused():
		return c.w.Original
	case c.isDraft():
		return c.w.DraftCopy
	case c.Copy == 0:
		return c.w.Original
	}
	return fmt.Sprintf(c.w.Reprint, c.Copy)
}

// some is a list of one text, or of none when it is empty.
func some(text string) []string {
	if text == "" {
		return nil
	}
	return []string{text}
}
