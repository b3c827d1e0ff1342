package daysheet

import (
	"fmt"
	"strings"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// numbers tells what became of numbers that are not simply in force.
func (c *composer) numbers() {
	c.heading("Voided, corrected, turned away")
	g := newGrid(figure("Ticket"), own("Of day"), own("Grower"), words("What"), words("Refers to"), own("By"), words("Reason"), in("Net", c.weightUnit()), in("Settled", c.weightUnit()))
	for _, p := range c.Parts {
		for _, t := range p.Struck {
			g.add(number(t.Number), text(t.Day.String()), text(t.Grower), text(t.ending()+" the same day, never counted"), text(t.refersTo()), text(t.EndedWho), text(t.Reason), amount(t.Net), text(""))
		}
	}
	for _, t := range c.Later {
		g.add(number(t.Number), text(t.Day.String()), text(t.Grower), text(t.ending()+" today, taken back"), text(t.refersTo()), text(t.EndedWho), text(t.Reason), amount(t.Net.Neg()), settledBack(t))
	}
	for _, t := range c.Corrections {
		g.add(number(t.Number), text(t.Day.String()), text(t.Grower), text("corrected ticket, counts today"), text(fmt.Sprintf("corrects %d of %s", t.Corrects, t.CorrectsOn)), text(t.Weigher), text(""), amount(t.Net), settledIn(t))
	}
	for _, t := range c.Reissues {
		g.add(number(t.Number), text(t.Day.String()), text(t.Grower), text("reissued ticket, counts today"), text(fmt.Sprintf("in place of %d of %s (void)", t.Reissues, t.ReissuesOn)), text(t.Weigher), text(""), amount(t.Net), settledIn(t))
	}
	c.put(g.table("No ticket was voided or corrected, and none corrects another.", "numbers"))
	g = newGrid(own("Load"), own("Hour"), own("Grower"), words("Commodity"), own("Truck"), own("By"), words("Reason"))
	for _, t := range c.Refused {
		g.add(text(t.Load), text(t.Time), text(t.Grower), text(t.Name), text(t.Truck), text(t.EndedWho), text(t.Reason))
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

// ending is what became of a ticket, in a word.
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

// again is what a void ticket was reissued as.
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

// doubts are what an auditor asks about: typed weights, limits accepted,
// flags.
func (c *composer) doubts() {
	c.heading("Typed weights, limits accepted, doubts at the bench")
	g := newGrid(figure("Ticket"), own("Grower"), words("What"), words("Words"))
	for _, t := range c.Manual {
		g.add(number(t.Number), text(t.Grower), text("MANUAL WT"), text(strings.Join(t.Manual, "; ")))
	}
	for _, t := range c.Accepted {
		g.add(number(t.Number), text(t.Grower), text("limit accepted"), text(strings.Join(t.Accepted, "; ")))
	}
	for _, t := range c.Answered {
		g.add(number(t.Number), text(t.Grower), text("asked and answered"), text(strings.Join(t.Answered, "; ")))
	}
	for _, t := range c.Flagged {
		g.add(number(t.Number), text(t.Grower), text("flag"), text(sentencesOf(t.Flags)))
	}
	c.put(g.table("Every weight came from the scale, no limit was passed over, no moisture was doubted.", "doubts"))
}

// sentencesOf are doubts as people read them: without the code, "meter-overdue: ",
// that each is filed under.
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
	c.put(report.Pairs{Pairs: []report.Pair{
		{Label: "On the yard", Value: none(c.Notes.Yard, "No truck was without its ticket.")},
		{Label: "Retained samples", Value: none(c.Notes.Samples, "None was due.")},
		{Label: "Disputes", Value: none(c.Notes.Disputes, "None was open.")},
		{Label: "Moisture meters", Value: none(c.Notes.Meters, "None was overdue or outside its limit.")},
	}})
}
