package daysheet

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// numberRow is a number that is not simply in force.
type numberRow struct {
	Ticket
	what, refers message.Text
	by, reason   string
	net, settled cell
}

func numbersGrid(unit quantity.Unit) *grid[numberRow, none] {
	return newGrid([]column[numberRow, none]{
		{figureColumn("Ticket"), func(r numberRow) cell { return number(r.Number) }, nil, always},
		{wordsColumn("Of day"), func(r numberRow) cell { return date(r.Day) }, nil, always},
		{wordsColumn("Grower"), func(r numberRow) cell { return name(r.Grower) }, nil, always},
		{wordsColumn("What"), func(r numberRow) cell { return text(r.what) }, nil, always},
		{wordsColumn("Refers to"), func(r numberRow) cell { return text(r.refers) }, nil, always},
		{wordsColumn("By"), func(r numberRow) cell { return name(r.by) }, nil, always},
		{wordsColumn("Reason"), func(r numberRow) cell { return name(r.reason) }, nil, always},
		{unitColumn("Net", unit), func(r numberRow) cell { return r.net }, nil, always},
		{unitColumn("Settled", unit), func(r numberRow) cell { return r.settled }, nil, always},
	})
}

// numbers describes the numbers that are not simply in force.
func (c *composer) numbers() {
	c.heading(message.New("Voided, corrected, rejected"))
	g := numbersGrid(c.weightUnit())
	for _, p := range c.Parts {
		for _, t := range p.Struck {
			g.add(numberRow{t, neverCounted(t), t.refersTo(), t.EndedWho, t.Reason, amount(t.Net), cell{}})
		}
	}
	for _, t := range c.Later {
		g.add(numberRow{t, takenBack(t), t.refersTo(), t.EndedWho, t.Reason, amount(t.Net.Neg()), settledBack(t)})
	}
	for _, t := range c.Corrections {
		g.add(numberRow{t, message.New("corrected ticket, counts today"), message.New("corrects %d of %s", t.Corrects, t.CorrectsOn), t.Weigher, "", amount(t.Net), settledIn(t)})
	}
	for _, t := range c.Reissues {
		g.add(numberRow{t, message.New("reissued ticket, counts today"), message.New("in place of %d of %s (void)", t.Reissues, t.ReissuesOn), t.Weigher, "", amount(t.Net), settledIn(t)})
	}
	c.put(g.table(message.New("numbers"), message.New("No ticket was voided or corrected, and none corrects another.")))
	c.refused()
}

// refused lists the loads that were turned away.
func (c *composer) refused() {
	g := newGrid([]column[Ticket, none]{
		{wordsColumn("Load"), func(t Ticket) cell { return name(t.Load) }, nil, always},
		{wordsColumn("Hour"), func(t Ticket) cell { return name(t.Time) }, nil, always},
		{wordsColumn("Grower"), func(t Ticket) cell { return name(t.Grower) }, nil, always},
		{wordsColumn("Commodity"), func(t Ticket) cell { return said(t.Name) }, nil, always},
		{wordsColumn("Truck"), func(t Ticket) cell { return name(t.Truck) }, nil, always},
		{wordsColumn("By"), func(t Ticket) cell { return name(t.EndedWho) }, nil, always},
		{wordsColumn("Reason"), func(t Ticket) cell { return name(t.Reason) }, nil, always},
	})
	for _, t := range c.Refused {
		g.add(t)
	}
	if len(c.Refused) > 0 {
		c.put(g.table(message.New("refused"), message.Text{}))
	} else {
		c.say(message.New("No load was rejected."))
	}
}

// weightUnit is the unit of the day's weights, where they are all in one.
func (c *composer) weightUnit() quantity.Unit {
	unit := quantity.Plain
	for i, p := range c.Parts {
		if i > 0 && p.units.weight != unit {
			return quantity.Plain
		}
		unit = p.units.weight
	}
	return unit
}

func settledIn(t Ticket) cell {
	if t.Outbound {
		return cell{}
	}
	return amount(t.moves())
}

func settledBack(t Ticket) cell {
	if t.Outbound {
		return cell{}
	}
	return amount(t.moves().Neg())
}

// ending returns a word for how the ticket ended.
func (t Ticket) ending() message.Text {
	switch {
	case t.Ended.IsZero():
		return message.New("in force")
	case t.EndedBy > 0:
		return message.New("corrected")
	}
	return message.New("void")
}

// neverCounted says how a ticket ended on its own day, takenBack on a later one.
func neverCounted(t Ticket) message.Text {
	if t.EndedBy > 0 {
		return message.New("corrected the same day, never counted")
	}
	return message.New("void the same day, never counted")
}

func takenBack(t Ticket) message.Text {
	if t.EndedBy > 0 {
		return message.New("corrected today, taken back")
	}
	return message.New("void today, taken back")
}

func (t Ticket) by() message.Text {
	if t.EndedBy == 0 {
		return message.Text{}
	}
	return message.New("by ticket %d", t.EndedBy)
}

// again returns the number of the ticket that replaces a void one.
func (t Ticket) again() message.Text {
	if t.ReissuedBy == 0 {
		return message.Text{}
	}
	return message.New("reissued as %d", t.ReissuedBy)
}

// refersTo is the ticket that took a ticket's place.
func (t Ticket) refersTo() message.Text { return message.List("", t.by(), t.again()) }

// inPlace is the ticket whose place a ticket took.
func (t Ticket) inPlace() message.Text {
	switch {
	case t.Corrects > 0:
		return message.New("corrects %d", t.Corrects)
	case t.Reissues > 0:
		return message.New("in place of %d (void)", t.Reissues)
	}
	return message.Text{}
}

// doubts lists what an auditor asks about: typed weights, limits accepted, flags.
func (c *composer) doubts() {
	c.heading(message.New("Typed weights, limits accepted, flags at the bench"))
	type doubt struct {
		Ticket
		what, words message.Text
	}
	g := newGrid([]column[doubt, none]{
		{figureColumn("Ticket"), func(d doubt) cell { return number(d.Number) }, nil, always},
		{wordsColumn("Grower"), func(d doubt) cell { return name(d.Grower) }, nil, always},
		{wordsColumn("What"), func(d doubt) cell { return text(d.what) }, nil, always},
		{wordsColumn("Words"), func(d doubt) cell { return text(d.words) }, nil, always},
	})
	for _, t := range c.Manual {
		g.add(doubt{t, message.New("MANUAL WT"), message.Texts("; ", t.Manual)})
	}
	for _, t := range c.Accepted {
		g.add(doubt{t, message.New("limit accepted"), message.Texts("; ", t.Accepted)})
	}
	for _, t := range c.Answered {
		g.add(doubt{t, message.New("asked and answered"), message.Texts("; ", t.Answered)})
	}
	for _, t := range c.Flagged {
		g.add(doubt{t, message.New("flag"), message.Texts(" ", t.Flags)})
	}
	c.put(g.table(message.New("flags"), message.New("Every weight came from the scale, no limit was passed over, no moisture was doubted.")))
}

// evening are the notes of the evening.
func (c *composer) evening() {
	c.heading(message.New("In the evening"))
	none := func(all []message.Kept, words message.Text) message.Text {
		if len(all) == 0 {
			return words
		}
		return message.Texts(" ", all)
	}
	pairs := []report.Pair{
		{Label: message.New("On the yard"), Value: none(c.Notes.Yard, message.New("No truck was without its ticket."))},
		{Label: message.New("Retained samples"), Value: none(c.Notes.Samples, message.New("None was due."))},
		{Label: message.New("Disputes"), Value: none(c.Notes.Disputes, message.New("None was open."))},
		{Label: message.New("Moisture meters"), Value: none(c.Notes.Meters, message.New("None was overdue or outside its limit."))},
	}
	if len(c.Notes.Undecided) > 0 {
		pairs = append(pairs, report.Pair{Label: message.New("Not decided"), Value: message.Texts(" ", c.Notes.Undecided)})
	}
	if len(c.Notes.Due) > 0 {
		pairs = append(pairs, report.Pair{Label: message.New("Falls due"), Value: message.Texts(" ", c.Notes.Due)})
	}
	if len(c.Notes.Scales) > 0 { // scales without a log, and days closed before there was one
		pairs = append(pairs, report.Pair{Label: message.New("Truck scales"), Value: message.Texts(" ", c.Notes.Scales)})
	}
	c.put(report.Pairs{Pairs: pairs})
}
