package scaleticket

import "tenthpoint/internal/scaleticket/barcode"

// Compose makes the document of a ticket. It never fails: for an empty load it makes a slip on
// which everything is missing.
func Compose(ticket Ticket) Document {
	t := factsOf(ticket)
	parts := sections(t)
	t.w.figures(parts)
	_, called := t.called()
	return Document{
		Marks: marks(t), Stamp: stamp(t), Sections: parts, Footer: footer(t), CodeLine: codeLine(t),
		Running: called + " " + t.ticketNumber(), PageOf: t.w.PageOf, Named: t.w.Named,
		Made: made(t), Preview: t.isDraft() && !t.isRefused(), payload: payloadOf(t),
	}
}

// sections are the parts of a ticket in their order.
func sections(t *facts) []Section {
	list := []Section{
		identitySection(t), numberSection(t), partySection(t), movementSection(t), headlineSection(t),
		weightSection(t), qualitySection(t), settlementSection(t),
	}
	if shares, ok := sharesSection(t); ok {
		list = append(list, shares)
	}
	return append(list, signatureSection(t), workingSection(t))
}

// payloadOf takes the payload from the settlement of the whole load.
func payloadOf(t *facts) barcode.Payload {
	if t.s == nil || t.Code == "" || t.isDraft() {
		return barcode.Payload{}
	}
	dry := t.s.Quantity
	if t.s.Bushels != nil {
		dry = t.s.Bushels
	}
	return barcode.Payload{
		Ticket: t.l.Number, Net: t.s.Net.Value(), Moisture: t.s.Moisture.Value(),
		Dry: dry.Value(), Code: t.Code,
	}
}
