package scaleticket

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
		Made: made(t), Preview: t.isDraft() && !t.isRefused(), square: squareOf(t),
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
