package daysheet

import (
	"fmt"
	"strings"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// numberRow is a number that is not simply in force.
type numberRow struct {
	Ticket
	what, refers, by, reason string
	net, settled             cell
}

func numbersGrid(unit quantity.Unit) *grid[numberRow, none] {
	return newGrid([]column[numberRow, none]{
		{figure("Ticket"), func(r numberRow) cell { return number(r.Number) }, nil, always},
		{own("Of day"), func(r numberRow) cell { return text(r.Day.String()) }, nil, always},
		{own("Grower"), func(r numberRow) cell { return text(r.Grower) }, nil, always},
		{words("What"), func(r numberRow) cell { return text(r.what) }, nil, always},
		{words("Refers to"), func(r numberRow) cell { return text(r.refers) }, nil, always},
		{own("By"), func(r numberRow) cell { return text(r.by) }, nil, always},
		{words("Reason"), func(r numberRow) cell { return text(r.reason) }, nil, always},
		{in("Net", unit), func(r numberRow) cell { return r.net }, nil, always},
		{in("Settled", unit), func(r numberRow) cell { return r.settled }, nil, always},
	})
}

// numbers describes the numbers that are not simply in force.
func (c *composer) numbers() {
	c.heading("Voided, corrected, turned away")
	g := numbersGrid(c.weightUnit())
	for _, p := range c.Parts {
		for _, t := range p.Struck {
			g.add(numberRow{t, t.ending() + " the same day, never counted", t.refersTo(), t.EndedWho, t.Reason, amount(t.Net), text("")})
		}
	}
	for _, t := range c.Later {
		g.add(numberRow{t, t.ending() + " today, taken back", t.refersTo(), t.EndedWho, t.Reason, amount(t.Net.Neg()), settledBack(t)})
	}
	for _, t := range c.Corrections {
		g.add(numberRow{t, "corrected ticket, counts today", fmt.Sprintf("corrects %d of %s", t.Corrects, t.CorrectsOn), t.Weigher, "", amount(t.Net), settledIn(t)})
	}
	for _, t := range c.Reissues {
		g.add(numberRow{t, "reissued ticket, counts today", fmt.Sprintf("in place of %d of %s (void)", t.Reissues, t.ReissuesOn), t.Weigher, "", amount(t.Net), settledIn(t)})
	}
	c.put(g.table("No ticket was voided or corrected, and none corrects another.", "numbers"))
	c.refused()
}

// refused lists the loads that were turned away.
func (c *composer) refused() {
	g := newGrid([]column[Ticket, none]{
		{own("Load"), func(t Ticket) cell { return text(t.Load) }, nil, always},
		{own("Hour"), func(t Ticket) cell { return text(t.Time) }, nil, always},
		{own("Grower"), func(t Ticket) cell { return text(t.Grower) }, nil, always},
		{words("Commodity"), func(t Ticket) cell { return text(t.Name) }, nil, always},
		{own("Truck"), func(t Ticket) cell { return text(t.Truck) }, nil, always},
		{own("By"), func(t Ticket) cell { return text(t.EndedWho) }, nil, always},
		{words("Reason"), func(t Ticket) cell { return text(t.Reason) }, nil, always},
	})
	for _, t := range c.Refused {
		g.add(t)
	}
	if len(c.Refused) > 0 {
		c.put(g.table("", "refused"))
	} else {
		c.say("No load was turned away.")
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
		return text("")
	}
	return amount(t.moves())
}

func settledBack(t Ticket) cell {
	if t.Outbound {
		return text("")
	}
	return amount(t.moves().Neg())
}

// ending returns a word for how the ticket ended.
func (t Ticket) ending() string {
	switch {
	case t.Ended.IsZero():
		return "in force"
	case t.EndedBy > 0:
		return "corrected"
	}
	return "void"
}

func (t Ticket) by() string {
	if t.EndedBy == 0 {
		return ""
	}
	return fmt.Sprintf("by ticket %d", t.EndedBy)
}

// again returns the number of the ticket that replaces a void one.
func (t Ticket) again() string {
	if t.ReissuedBy == 0 {
		return ""
	}
	return fmt.Sprintf("reissued as %d", t.ReissuedBy)
}

// refersTo is the ticket that took a ticket's place.
func (t Ticket) refersTo() string { return t.by() + t.again() }

// inPlace is the ticket whose place a ticket took.
func (t Ticket) inPlace() string {
	switch {
	case t.Corrects > 0:
		return fmt.Sprintf("corrects %d", t.Corrects)
	case t.Reissues > 0:
		return fmt.Sprintf("in place of %d (void)", t.Reissues)
	}
	return ""
}

// doubts lists what an auditor asks about: typed weights, limits accepted, flags.
func (c *composer) doubts() {
	c.heading("Typed weights, limits accepted, doubts at the bench")
	type doubt struct {
		Ticket
		what, words string
	}
	g := newGrid([]column[doubt, none]{
		{figure("Ticket"), func(d doubt) cell { return number(d.Number) }, nil, always},
		{own("Grower"), func(d doubt) cell { return text(d.Grower) }, nil, always},
		{words("What"), func(d doubt) cell { return text(d.what) }, nil, always},
		{words("Words"), func(d doubt) cell { return text(d.words) }, nil, always},
	})
	for _, t := range c.Manual {
		g.add(doubt{t, "MANUAL WT", strings.Join(t.Manual, "; ")})
	}
	for _, t := range c.Accepted {
		g.add(doubt{t, "limit accepted", strings.Join(t.Accepted, "; ")})
	}
	for _, t := range c.Answered {
		g.add(doubt{t, "asked and answered", strings.Join(t.Answered, "; ")})
	}
	for _, t := range c.Flagged {
		g.add(doubt{t, "flag", sentencesOf(t.Flags)})
	}
	c.put(g.table("Every weight came from the scale, no limit was passed over, no moisture was doubted.", "doubts"))
}

// sentencesOf returns warnings as people read them: without the code, "meter-overdue: ", they are
// filed under.
func sentencesOf(flags []string) string {
	var out []string
	for _, flag := range flags {
		if code, sentence, filed := strings.Cut(flag, ": "); filed && !strings.Contains(code, " ") {
			flag = sentence
		}
		out = append(out, flag)
	}
	return strings.Join(out, " ")
}

// evening are the notes of the evening.
func (c *composer) evening() {
	c.heading("In the evening")
	none := func(all []string, words string) string {
		if len(all) == 0 {
			return words
		}
		return strings.Join(all, " ")
	}
	pairs := []report.Pair{
		{Label: "On the yard", Value: none(c.Notes.Yard, "No truck was without its ticket.")},
		{Label: "Retained samples", Value: none(c.Notes.Samples, "None was due.")},
		{Label: "Disputes", Value: none(c.Notes.Disputes, "None was open.")},
		{Label: "Moisture meters", Value: none(c.Notes.Meters, "None was overdue or outside its limit.")},
	}
	if len(c.Notes.Scales) > 0 { // scales without a log, and days closed before there was one
		pairs = append(pairs, report.Pair{Label: "Truck scales", Value: strings.Join(c.Notes.Scales, " ")})
	}
	c.put(report.Pairs{Pairs: pairs})
}
