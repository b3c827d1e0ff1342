package daysheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// Period is the days an examiner asks about, both ends included.
type Period struct{ From, To quantity.Date }

// String is the period in words.
func (p Period) String() string { return fmt.Sprintf("from %s to %s", p.From, p.To) }

// registerPaper begins a register.
func registerPaper(p elevator.Profile, title string, period Period, example bool) report.Document {
	return paper(p, title, period.String(), example, period.To)
}

// TicketRegister lists every number from the first to the last one given out in
// a period. A number that no ticket carries stands there as missing: there is
// no way for that to come about but by altering the book.
func TicketRegister(p elevator.Profile, period Period, tickets []Ticket, example bool) report.Document {
	d := registerPaper(p, "Register of tickets", period, example)
	slices.SortFunc(tickets, func(a, b Ticket) int { return cmp.Compare(a.Number, b.Number) })
	g := newGrid(figure("Ticket"), own("Day"), own("Hour"), words("Way"), own("Grower"), words("Commodity"), own("Truck"),
		figure("Net"), words("Unit"), figure("Settled"), words("Unit"), own("Weigher"), words("Status"))
	numbers, missing := registerNumbers(g, period, tickets)
	d.Blocks = []report.Block{report.Para{Strong: true, Text: numberSentence(tickets, numbers, missing)},
		g.table("No ticket was issued in this period.", "tickets")}
	return d
}

// registerNumbers adds a row for each ticket and for each number that is not
// there, and counts both.
func registerNumbers(g *grid, period Period, tickets []Ticket) (numbers, missing int64) {
	for i, t := range tickets {
		if i > 0 && t.Number > tickets[i-1].Number+1 {
			gap := Range{tickets[i-1].Number + 1, t.Number - 1}
			g.total(text(gap.String()), text(""), text(""), text(""), text("NUMBER MISSING"), text(""), text(""), text(""), text(""), text(""), text(""), text(""), text("look into this"))
			missing += gap.Last - gap.First + 1
		}
		numbers++
		settled, unit := text(""), ""
		if !t.Outbound {
			settled, unit = amount(t.Quantity), t.Quantity.Unit().String()
		}
		cells := []cell{number(t.Number), text(t.Day.String()), text(t.Time), text(t.way()), text(t.Grower), text(t.Name), text(t.Truck),
			amount(t.Net), text(t.Net.Unit().String()), settled, text(unit), text(t.Weigher), text(t.status(period))}
		if t.InForce() {
			g.add(cells...)
		} else {
			g.struck(cells...)
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
	g := newGrid(figure("Ticket"), own("Load"), own("Of day"), own("Ended on"), words("What"), words("Refers to"), own("Grower"), words("Commodity"),
		figure("Net"), words("Unit"), own("By"), words("Reason"))
	slices.SortStableFunc(ended, func(a, b Ticket) int { return cmp.Or(a.Ended.Cmp(b.Ended), cmp.Compare(a.Number, b.Number)) })
	for _, t := range ended {
		what, net, unit := t.ending(), amount(t.Net), t.Net.Unit().String()
		if t.Refused {
			what, net, unit = "turned away", text(""), ""
		}
		g.add(number(t.Number), text(t.Load), text(t.Day.String()), text(t.Ended.String()), text(what), text(t.refersTo()), text(t.Grower), text(t.Name),
			net, text(unit), text(t.EndedWho), text(t.Reason))
	}
	d.Blocks = []report.Block{g.table("Nothing was voided, corrected or turned away.", "voids")}
	return d
}

// OverrideRegister lists where a person's word went before the rules: weights
// typed by hand, limits passed over, readings used in spite of a doubt.
func OverrideRegister(p elevator.Profile, period Period, tickets []Ticket, example bool) report.Document {
	d := registerPaper(p, "Register of typed weights, limits accepted and doubts", period, example)
	g := newGrid(figure("Ticket"), own("Day"), own("Grower"), words("Commodity"), words("What"), words("Words"), own("Weigher"))
	for _, t := range tickets {
		for _, list := range []struct {
			what  string
			words []string
		}{{"typed weight", t.Manual}, {"limit accepted", t.Accepted}, {"asked and answered", t.Answered}, {"doubt at the bench", t.Flags}} {
			for _, w := range list.words {
				g.add(number(t.Number), text(t.Day.String()), text(t.Grower), text(t.Name), text(list.what), text(strings.TrimSpace(w)), text(t.Weigher))
			}
		}
	}
	d.Blocks = []report.Block{g.table("No weight was typed, no limit was passed over, no reading was doubted.", "overrides")}
	return d
}
