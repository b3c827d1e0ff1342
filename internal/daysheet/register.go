package daysheet

import (
	"cmp"
	"slices"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/title"
)

// Period is the days an examiner asks about, both ends included.
type Period struct{ From, To quantity.Date }

// Message is the period in words.
func (p Period) Message() message.Text { return message.New("from %s to %s", p.From, p.To) }

// registerPaper begins a register.
func registerPaper(p elevator.Profile, title message.Text, period Period, example bool) report.Document {
	return paper(p, title, period.Message(), example, period.To)
}

// TicketRegister lists every number from the first to the last one given out in a period. A number
// without a ticket is listed as missing: that can only happen by altering the book.
func TicketRegister(p elevator.Profile, period Period, tickets []Ticket, example bool) report.Document {
	d := registerPaper(p, message.New("Register of tickets"), period, example)
	slices.SortFunc(tickets, func(a, b Ticket) int { return cmp.Compare(a.Number, b.Number) })
	g := registerGrid(period, p.Rules == "canada")
	numbers, missing := registerNumbers(g, tickets)
	d.Blocks = []report.Block{report.Para{Strong: true, Text: numberSentence(tickets, numbers, missing)},
		g.table(message.New("tickets"), message.New("No ticket was issued in this period."))}
	return d
}

// registerGrid has a row for each ticket, and in the place of a total the numbers that
// are not there.
func registerGrid(period Period, canada bool) *grid[Ticket, Range] {
	return newGrid([]column[Ticket, Range]{
		{figureColumn("Ticket"), func(t Ticket) cell { return number(t.Number) }, func(gap Range) cell { return text(gap.Message()) }, always},
		{wordsColumn("Day"), func(t Ticket) cell { return date(t.Day) }, nil, always},
		{wordsColumn("Hour"), func(t Ticket) cell { return name(t.Time) }, nil, always},
		{wordsColumn("Way"), func(t Ticket) cell { return text(t.way()) }, nil, always},
		{wordsColumn("Grower"), func(t Ticket) cell { return name(t.Grower) }, func(Range) cell { return text(message.New("NUMBER MISSING")) }, always},
		{wordsColumn("Commodity"), func(t Ticket) cell { return said(t.Name) }, nil, always},
		{wordsColumn("Owners"), func(t Ticket) cell { return name(t.owners()) }, nil, always},
		{wordsColumn("Truck"), func(t Ticket) cell { return name(t.Truck) }, nil, always},
		{figureColumn("Gross"), func(t Ticket) cell { return t.recorded(settle.LineGross) }, nil, always},
		{figureColumn("Tare"), func(t Ticket) cell { return t.recorded(settle.LineTare) }, nil, always},
		{figureColumn("Net"), func(t Ticket) cell { return amount(t.ScaleNet) }, nil, always},
		{wordsColumn("Weighed in"), func(t Ticket) cell { return name(t.ScaleNet.Unit().String()) }, nil, always},
		{unitColumn("Moisture", quantity.Percent), func(t Ticket) cell { return measured(t.Moisture) }, nil, always},
		{figureColumn("Test weight"), func(t Ticket) cell { return t.recorded(testWeightLine) }, nil, always},
		{wordsColumn("Test weight in"), func(t Ticket) cell { return testWeightUnit(t, canada) }, nil, always},
		{unitColumn("Protein", quantity.Percent), func(t Ticket) cell { return t.recorded(proteinLine) }, nil, unlessEmpty},
		{wordsColumn("Protein at"), func(t Ticket) cell { return text(t.ProteinBasis) }, nil, unlessEmpty},
		{figureColumn("Dockage"), func(t Ticket) cell { return known(t.Dockage, !t.Outbound) }, nil, always},
		{wordsColumn("Grade"), func(t Ticket) cell { return name(t.Grade) }, nil, always},
		{figureColumn("Settled"), func(t Ticket) cell { return known(t.Quantity, !t.Outbound) }, nil, always},
		{wordsColumn("Settled in"), Ticket.settledUnit, nil, always},
		{figureColumn("Price"), func(t Ticket) cell { return measured(t.Price) }, nil, always},
		{wordsColumn("Title"), func(t Ticket) cell { return text(t.title()) }, nil, always},
		{wordsColumn("Weigher"), func(t Ticket) cell { return name(t.Weigher) }, nil, always},
		{wordsColumn("Status"), func(t Ticket) cell { return text(t.status(period)) }, func(Range) cell { return text(message.New("look into this")) }, always},
	})
}

// testWeightLine and proteinLine are the lines of a settlement that have these results.
var (
	testWeightLine = settle.FactorLine(grain.TestWeight)
	proteinLine    = settle.FactorLine(grain.Protein)
)

// testWeightUnit is the unit of the test weight. In Canada pounds are those of a Winchester bushel or
// of Avery's, so the bushel is named.
func testWeightUnit(t Ticket, canada bool) cell {
	a, there := t.Figures[testWeightLine]
	switch {
	case !there:
		return cell{}
	case canada && a.Unit() == quantity.LbPerBushel:
		return text(message.New("%v (%s)", a.Unit().String(), message.New("Winchester bushel")))
	}
	return name(a.Unit().String())
}

// settledUnit is the unit a ticket was settled in; grain that left was not.
func (t Ticket) settledUnit() cell {
	if t.Outbound {
		return cell{}
	}
	return name(t.Quantity.Unit().String())
}

// recorded returns a line of the settlement as recorded.
func (t Ticket) recorded(line string) cell {
	a, there := t.Figures[line]
	return known(a, there)
}

// measured is an amount that may not be known.
func measured(a *quantity.Amount) cell {
	if a == nil {
		return cell{}
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

// title is whose grain the house has and under what, owner by owner where they differ; grain that
// leaves has none.
func (t Ticket) title() message.Text {
	if t.Outbound {
		return message.Text{}
	}
	if !t.isApart() {
		return titleWords(t.Terms())
	}
	out := make([]message.Text, len(t.Titles))
	for i, terms := range t.Titles {
		out[i] = titleWords(terms)
		if i < len(t.Owners) {
			out[i] = message.List(" ", message.Own(t.Owners[i]), out[i])
		}
	}
	return message.Texts(", ", out)
}

// titleWords are the terms in the words of facts.
func titleWords(t title.Terms) message.Text {
	if t.Under == title.Nothing {
		return message.List(", ", t.Said(), string(t.Whose))
	}
	return message.List(", ", message.List(" ", string(t.Under), message.Own(t.No)), string(t.Whose))
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

func (t Ticket) way() message.Text {
	if t.Outbound {
		return message.New("out")
	}
	return message.New("in")
}

// status is all that became of a ticket.
func (t Ticket) status(period Period) message.Text {
	is, outside := message.New("issued"), message.Text{}
	if !t.Ended.IsZero() {
		is = message.List(" ", t.ending(), t.Ended, t.by())
	}
	if !t.Day.Between(period.From, period.To) {
		outside = message.New("counts outside the period")
	}
	return message.List(", ", is, t.again(), t.inPlace(), outside)
}

func numberSentence(tickets []Ticket, numbers, missing int64) message.Text {
	if len(tickets) == 0 {
		return message.New("No number was given out.")
	}
	all := Range{tickets[0].Number, tickets[len(tickets)-1].Number}
	if missing == 0 {
		return message.New("Numbers %s: %d tickets, no number is missing.", all, numbers)
	}
	return message.New("Numbers %s: %d tickets, %d NUMBERS ARE MISSING. Tickets are never deleted by the program: check the book.", all, numbers, missing)
}

// VoidRegister lists what was voided, corrected or turned away in a period.
func VoidRegister(p elevator.Profile, period Period, ended []Ticket, example bool) report.Document {
	d := registerPaper(p, message.New("Register of voids, corrections and refusals"), period, example)
	slices.SortStableFunc(ended, func(a, b Ticket) int { return cmp.Or(a.Ended.Cmp(b.Ended), cmp.Compare(a.Number, b.Number)) })
	g := newGrid([]column[Ticket, none]{
		{figureColumn("Ticket"), func(t Ticket) cell { return number(t.Number) }, nil, always},
		{wordsColumn("Load"), func(t Ticket) cell { return name(t.Load) }, nil, always},
		{wordsColumn("Of day"), func(t Ticket) cell { return date(t.Day) }, nil, always},
		{wordsColumn("Ended on"), func(t Ticket) cell { return date(t.Ended) }, nil, always},
		{wordsColumn("What"), func(t Ticket) cell { return text(t.endedHow()) }, nil, always},
		{wordsColumn("Refers to"), func(t Ticket) cell { return text(t.refersTo()) }, nil, always},
		{wordsColumn("Grower"), func(t Ticket) cell { return name(t.Grower) }, nil, always},
		{wordsColumn("Commodity"), func(t Ticket) cell { return said(t.Name) }, nil, always},
		{figureColumn("Net"), func(t Ticket) cell { return known(t.Net, !t.Refused) }, nil, always},
		{wordsColumn("Unit"), Ticket.netUnit, nil, always},
		{wordsColumn("By"), func(t Ticket) cell { return name(t.EndedWho) }, nil, always},
		{wordsColumn("Reason"), func(t Ticket) cell { return name(t.Reason) }, nil, always},
	})
	for _, t := range ended {
		g.add(t)
	}
	d.Blocks = []report.Block{g.table(message.New("voids"), message.New("Nothing was voided, corrected or rejected."))}
	return d
}

// endedHow says how a load ended: its ticket voided or corrected, or turned away.
func (t Ticket) endedHow() message.Text {
	if t.Refused {
		return message.New("rejected")
	}
	return t.ending()
}

// netUnit is the unit of a net weight; a load turned away has none.
func (t Ticket) netUnit() cell {
	if t.Refused {
		return cell{}
	}
	return name(t.Net.Unit().String())
}

// OverrideRegister lists where people overrode the rules: weights typed by hand, limits accepted,
// readings used in spite of a flag.
func OverrideRegister(p elevator.Profile, period Period, tickets []Ticket, example bool) report.Document {
	d := registerPaper(p, message.New("Register of typed weights, limits accepted and flags"), period, example)
	type override struct {
		Ticket
		what, words message.Text
	}
	g := newGrid([]column[override, none]{
		{figureColumn("Ticket"), func(o override) cell { return number(o.Number) }, nil, always},
		{wordsColumn("Day"), func(o override) cell { return date(o.Day) }, nil, always},
		{wordsColumn("Grower"), func(o override) cell { return name(o.Grower) }, nil, always},
		{wordsColumn("Commodity"), func(o override) cell { return said(o.Name) }, nil, always},
		{wordsColumn("What"), func(o override) cell { return text(o.what) }, nil, always},
		{wordsColumn("Words"), func(o override) cell { return text(o.words) }, nil, always},
		{wordsColumn("Weigher"), func(o override) cell { return name(o.Weigher) }, nil, always},
	})
	for _, t := range tickets {
		for _, list := range []struct {
			what  message.Text
			words []message.Text
		}{{message.New("typed weight"), t.Manual}, {message.New("limit accepted"), t.Accepted}, {message.New("asked and answered"), t.Answered}, {message.New("flag at the bench"), filed(t.Flags)}} {
			for _, w := range list.words {
				g.add(override{t, list.what, w})
			}
		}
	}
	d.Blocks = []report.Block{g.table(message.New("overrides"), message.New("No weight was typed, no limit was passed over, no reading was doubted."))}
	return d
}

// filed are doubts with the codes they are filed under.
func filed(flags []load.Flag) []message.Text {
	out := make([]message.Text, len(flags))
	for i, f := range flags {
		out[i] = f.Filed()
	}
	return out
}
