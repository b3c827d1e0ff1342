package daysheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/title"
)

// Period is the days an examiner asks about, both ends included.
type Period struct{ From, To quantity.Date }

// String is the period in words.
func (p Period) String() string { return fmt.Sprintf("from %s to %s", p.From, p.To) }

// registerPaper begins a register.
func registerPaper(p elevator.Profile, title string, period Period, example bool) report.Document {
	return paper(p, title, period.String(), example, period.To)
}

// TicketRegister lists every number from the first to the last one given out in a period. A number
// without a ticket is listed as missing: that can only happen by altering the book.
func TicketRegister(p elevator.Profile, period Period, tickets []Ticket, example bool) report.Document {
	d := registerPaper(p, "Register of tickets", period, example)
	slices.SortFunc(tickets, func(a, b Ticket) int { return cmp.Compare(a.Number, b.Number) })
	g := registerGrid(period)
	numbers, missing := registerNumbers(g, tickets)
	d.Blocks = []report.Block{report.Para{Strong: true, Text: numberSentence(tickets, numbers, missing)},
		g.table("No ticket was issued in this period.", "tickets")}
	return d
}

// registerGrid has a row for each ticket, and in the place of a total the numbers that
// are not there.
func registerGrid(period Period) *grid[Ticket, Range] {
	return newGrid([]column[Ticket, Range]{
		{figure("Ticket"), func(t Ticket) cell { return number(t.Number) }, func(gap Range) cell { return text(gap.String()) }, always},
		{own("Day"), func(t Ticket) cell { return text(t.Day.String()) }, nil, always},
		{own("Hour"), func(t Ticket) cell { return text(t.Time) }, nil, always},
		{words("Way"), func(t Ticket) cell { return text(t.way()) }, nil, always},
		{own("Grower"), func(t Ticket) cell { return text(t.Grower) }, func(Range) cell { return text("NUMBER MISSING") }, always},
		{words("Commodity"), func(t Ticket) cell { return text(t.Name) }, nil, always},
		{own("Owners"), func(t Ticket) cell { return text(t.owners()) }, nil, always},
		{own("Truck"), func(t Ticket) cell { return text(t.Truck) }, nil, always},
		{figure("Gross"), func(t Ticket) cell { return t.recorded(settle.LineGross) }, nil, always},
		{figure("Tare"), func(t Ticket) cell { return t.recorded(settle.LineTare) }, nil, always},
		{figure("Net"), func(t Ticket) cell { return amount(t.ScaleNet) }, nil, always},
		{words("Weighed in"), func(t Ticket) cell { return text(t.ScaleNet.Unit().String()) }, nil, always},
		{figure("Moisture %"), func(t Ticket) cell { return measured(t.Moisture) }, nil, always},
		{figure("Test weight"), func(t Ticket) cell { return measured(t.TestWeight) }, nil, always},
		{figure("Dockage"), func(t Ticket) cell { return known(t.Dockage, !t.Outbound) }, nil, always},
		{own("Grade"), func(t Ticket) cell { return text(t.Grade) }, nil, always},
		{figure("Settled"), func(t Ticket) cell { return known(t.Quantity, !t.Outbound) }, nil, always},
		{words("Settled in"), Ticket.settledUnit, nil, always},
		{figure("Price"), func(t Ticket) cell { return measured(t.Price) }, nil, always},
		{words("Title"), func(t Ticket) cell { return text(t.title()) }, nil, always},
		{own("Weigher"), func(t Ticket) cell { return text(t.Weigher) }, nil, always},
		{words("Status"), func(t Ticket) cell { return text(t.status(period)) }, func(Range) cell { return text("look into this") }, always},
	})
}

// settledUnit is the unit a ticket was settled in; grain that left was not.
func (t Ticket) settledUnit() cell {
	if t.Outbound {
		return text("")
	}
	return text(t.Quantity.Unit().String())
}

// recorded returns a line of the settlement as recorded.
func (t Ticket) recorded(line string) cell {
	a, there := t.Figures[line]
	return known(a, there)
}

// measured is an amount that may not be known.
func measured(a *quantity.Amount) cell {
	if a == nil {
		return text("")
	}
	return amount(*a)
}

// owners are those who share, each with the part.
func (t Ticket) owners() string {
	out := make([]string, len(t.Owners))
	for i, id := range t.Owners {
		out[i] = id
		if i < len(t.Parts) {
			out[i] += " " + t.Parts[i]
		}
	}
	return strings.Join(out, ", ")
}

// title is whose grain the house has and under what, owner by owner where they
// differ.
func (t Ticket) title() string {
	if !t.isApart() {
		return titleWords(t.terms())
	}
	out := make([]string, len(t.Titles))
	for i, terms := range t.Titles {
		out[i] = titleWords(terms)
		if i < len(t.Owners) {
			out[i] = t.Owners[i] + " " + out[i]
		}
	}
	return strings.Join(out, ", ")
}

// titleWords are the terms in the words of facts, which programs read too.
func titleWords(t title.Terms) string {
	words := joined(" ", string(t.Under), t.No)
	if t.Whose != "" {
		words = joined(", ", words, string(t.Whose))
	}
	return words
}

// registerNumbers adds a row for each ticket and for each number that is not
// there, and counts both.
func registerNumbers(g *grid[Ticket, Range], tickets []Ticket) (numbers, missing int64) {
	for i, t := range tickets {
		if i > 0 && t.Number > tickets[i-1].Number+1 {
			gap := Range{tickets[i-1].Number + 1, t.Number - 1}
			g.total(gap)
			missing += gap.Last - gap.First + 1
		}
		numbers++
		if t.InForce() {
			g.add(t)
		} else {
			g.struck(t)
		}
	}
	return numbers, missing
}

func (t Ticket) way() string {
	if t.Outbound {
		return "out"
	}
	return "in"
}

// status is all that became of a ticket.
func (t Ticket) status(period Period) string {
	out := "issued"
	if !t.Ended.IsZero() {
		out = joined(" ", t.ending(), t.Ended.String(), t.by())
	}
	out = joined(", ", out, t.again(), t.inPlace())
	if !t.Day.Between(period.From, period.To) {
		out = joined(", ", out, "counts outside the period")
	}
	return out
}

func numberSentence(tickets []Ticket, numbers, missing int64) string {
	if len(tickets) == 0 {
		return "No number was given out."
	}
	all := Range{tickets[0].Number, tickets[len(tickets)-1].Number}
	if missing == 0 {
		return fmt.Sprintf("Numbers %s: %d tickets, no number is missing.", all, numbers)
	}
	return fmt.Sprintf("Numbers %s: %d tickets, %d NUMBERS ARE MISSING. Tickets are never deleted by the program: check the book.", all, numbers, missing)
}

// VoidRegister lists what was voided, corrected or turned away in a period.
func VoidRegister(p elevator.Profile, period Period, ended []Ticket, example bool) report.Document {
	d := registerPaper(p, "Register of voids, corrections and refusals", period, example)
	slices.SortStableFunc(ended, func(a, b Ticket) int { return cmp.Or(a.Ended.Cmp(b.Ended), cmp.Compare(a.Number, b.Number)) })
	g := newGrid([]column[Ticket, none]{
		{figure("Ticket"), func(t Ticket) cell { return number(t.Number) }, nil, always},
		{own("Load"), func(t Ticket) cell { return text(t.Load) }, nil, always},
		{own("Of day"), func(t Ticket) cell { return text(t.Day.String()) }, nil, always},
		{own("Ended on"), func(t Ticket) cell { return text(t.Ended.String()) }, nil, always},
		{words("What"), func(t Ticket) cell { return text(t.endedHow()) }, nil, always},
		{words("Refers to"), func(t Ticket) cell { return text(t.refersTo()) }, nil, always},
		{own("Grower"), func(t Ticket) cell { return text(t.Grower) }, nil, always},
		{words("Commodity"), func(t Ticket) cell { return text(t.Name) }, nil, always},
		{figure("Net"), func(t Ticket) cell { return known(t.Net, !t.Refused) }, nil, always},
		{words("Unit"), Ticket.netUnit, nil, always},
		{own("By"), func(t Ticket) cell { return text(t.EndedWho) }, nil, always},
		{words("Reason"), func(t Ticket) cell { return text(t.Reason) }, nil, always},
	})
	for _, t := range ended {
		g.add(t)
	}
	d.Blocks = []report.Block{g.table("Nothing was voided, corrected or turned away.", "voids")}
	return d
}

// endedHow says how a load ended: its ticket voided or corrected, or turned away.
func (t Ticket) endedHow() string {
	if t.Refused {
		return "turned away"
	}
	return t.ending()
}

// netUnit is the unit of a net weight; a load turned away has none.
func (t Ticket) netUnit() cell {
	if t.Refused {
		return text("")
	}
	return text(t.Net.Unit().String())
}

// OverrideRegister lists where people overrode the rules: weights typed by hand, limits accepted,
// readings used in spite of a flag.
func OverrideRegister(p elevator.Profile, period Period, tickets []Ticket, example bool) report.Document {
	d := registerPaper(p, "Register of typed weights, limits accepted and doubts", period, example)
	type override struct {
		Ticket
		what, words string
	}
	g := newGrid([]column[override, none]{
		{figure("Ticket"), func(o override) cell { return number(o.Number) }, nil, always},
		{own("Day"), func(o override) cell { return text(o.Day.String()) }, nil, always},
		{own("Grower"), func(o override) cell { return text(o.Grower) }, nil, always},
		{words("Commodity"), func(o override) cell { return text(o.Name) }, nil, always},
		{words("What"), func(o override) cell { return text(o.what) }, nil, always},
		{words("Words"), func(o override) cell { return text(o.words) }, nil, always},
		{own("Weigher"), func(o override) cell { return text(o.Weigher) }, nil, always},
	})
	for _, t := range tickets {
		for _, list := range []struct {
			what  string
			words []string
		}{{"typed weight", t.Manual}, {"limit accepted", t.Accepted}, {"asked and answered", t.Answered}, {"doubt at the bench", t.Flags}} {
			for _, w := range list.words {
				g.add(override{t, list.what, strings.TrimSpace(w)})
			}
		}
	}
	d.Blocks = []report.Block{g.table("No weight was typed, no limit was passed over, no reading was doubted.", "overrides")}
	return d
}
