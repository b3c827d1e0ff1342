package scaleticket

import (
	"fmt"
	"slices"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
)

// identitySection is whose scale this is.
func identitySection(t *facts) Section {
	p := newPart(t, "identity", "", Letterhead)
	letter(p, "business", "", t.House.Business, t.w.NoBusiness)
	p.Lines[0].Emphasis = true
	letter(p, "street", "", t.House.Street, t.w.NoStreet)
	letter(p, "town", "", t.House.Town, t.w.NoTown)
	letter(p, "phone", t.w.Phone, t.House.Phone, t.w.NoPhone)
	p.given(t.w.Licence, t.House.Licence)
	p.given(t.w.Scale, scaleNames(t))
	return p.Section
}

func letter(p *part, field, label, value, absent string) {
	if value == "" {
		label = ""
	}
	p.need("house."+field, label, value, absent)
}

// scaleNames names every scale that weighed the load, else the ones there are.
func scaleNames(t *facts) string {
	var names []string
	for _, w := range t.l.Weighings {
		if w.Scale != "" && !slices.Contains(names, w.Scale) {
			names = append(names, w.Scale)
		}
	}
	if len(names) == 0 {
		for _, s := range t.House.Scales {
			names = append(names, s.ID)
		}
	}
	return Joined(", ", names...)
}

// numberSection has the ticket's number, status and copy.
func numberSection(t *facts) Section {
	title, label := t.called()
	p := newPart(t, "number", title, Numbering)
	p.put(Line{Field: "number", Label: label, Value: t.ticketNumber(), Emphasis: true})
	p.put(Line{Field: "status", Label: t.w.Status, Value: statusWords(t)})
	p.put(Line{Field: "copy", Label: t.w.Copy, Value: Joined(", ", copyWords(t), t.w.word(t.For))})
	if t.l.Corrects != 0 {
		p.put(Line{Label: t.w.Corrects, Value: fmt.Sprintf(t.w.ByTicket, t.l.Corrects), Notes: some(t.l.Why)})
	}
	if t.l.Reissues != 0 {
		p.put(Line{Label: t.w.InPlaceOf, Value: fmt.Sprintf(t.w.VoidTicket, t.l.Reissues), Notes: some(t.l.Why)})
	}
	ending(p)
	if again := t.l.Reissue; again.By != 0 {
		p.put(Line{Label: t.w.ReissuedAs, Value: fmt.Sprintf(t.w.ByTicket, again.By), Notes: some(Joined(", ", again.Who, t.moment(again.At)))})
	}
	return p.Section
}

// called is the title of the paper, and the label of its number: a load turned away has no
// ticket.
func (t *facts) called() (title, label string) {
	if t.isRefused() {
		return t.w.say(message.New("Load rejected")), t.w.say(message.New("paper|Load"))
	}
	return t.w.ScaleTicket, t.w.Ticket
}

// ending says why a ticket or a load came to its end, and by whom.
func ending(p *part) {
	end := p.l.Ended
	by := some(Joined(", ", end.Who, p.moment(end.At)))
	switch {
	case p.l.Phase == load.Corrected:
		p.put(Line{Label: p.w.CorrectedBy, Value: fmt.Sprintf(p.w.ByTicket, end.By), Notes: append(some(p.w.word(end.Reason)), by...)})
	case end.Reason != "":
		p.put(Line{Label: p.w.Reason, Value: p.w.word(end.Reason), Notes: by})
	}
}

func statusWords(t *facts) string {
	switch t.l.Phase {
	case load.OnYard:
		return t.w.OnYard
	case load.Ready:
		return t.w.Ready
	case load.TurnedAway:
		return t.w.Refused + " " + t.moment(t.l.Ended.At)
	case load.Ticketed:
		return t.w.Issued + " " + t.moment(t.l.Issued.At)
	case load.Void:
		return t.w.Void + " " + t.moment(t.l.Ended.At)
	case load.Corrected:
		return t.w.Corrected + " " + t.moment(t.l.Ended.At)
	}
	return t.w.NotOpened
}

func copyWords(t *facts) string {
	switch {
	case t.isRefused():
		return t.w.Original
	case t.isDraft():
		return t.w.DraftCopy
	case t.Copy == 0:
		return t.w.Original
	}
	return fmt.Sprintf(t.w.Reprint, t.Copy)
}

// some returns a list of one text, or of none when it is empty.
func some(text string) []string {
	if text == "" {
		return nil
	}
	return []string{text}
}
