package daysheet

import (
	"fmt"
	"strings"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

func (c *composer) position() {
	c.heading("Position")
	if len(c.Moves) == 0 {
		c.say("Nothing is in the house.")
		return
	}
	for _, unit := range weightUnits(c.Moves) {
		c.put(movesTable(c.Moves, unit))
	}
	c.say("The position counts the weight that was paid for, in pounds as settled, less what was weighed going out. Yesterday + in − out − taken back = tonight, in every line.")
}

func weightUnits(moves []Move) []quantity.Unit {
	var out []quantity.Unit
	seen := map[quantity.Unit]bool{}
	for _, m := range moves {
		if u := m.After.Unit(); !seen[u] {
			seen[u] = true
			out = append(out, u)
		}
	}
	return out
}

// movesTable is the position of one unit, with a total for each commodity.
func movesTable(moves []Move, unit quantity.Unit) report.Table {
	g := newGrid(words("Commodity"), words("Pit or bin"), in("Yesterday", unit), in("In", unit), in("Out", unit), in("Taken back", unit), in("Tonight", unit),
		figure("Tonight bu, by legal weight"))
	for _, same := range byCommodity(moves) {
		movesOf(g, same, unit)
	}
	return g.withoutEmpty("Taken back", "Tonight bu").table("position "+unit.String(), "")
}

// movesOf adds the rows of one commodity.
func movesOf(g *grid, moves []Move, unit quantity.Unit) {
	none, rows := quantity.Zero(unit), 0
	all := Move{Before: none, In: none, Out: none, Back: none, After: none}
	bushels, inBushels := quantity.Zero(quantity.Bushel), false
	for _, m := range moves {
		if m.After.Unit() != unit {
			continue
		}
		bu, ok := m.bushels()
		g.add(text(m.Name), text(orNone(m.Bin)), amount(m.Before), amount(m.In), amount(m.Out), amount(m.Back), amount(m.After), known(bu, ok))
		all = Move{Before: all.Before.Add(m.Before), In: all.In.Add(m.In), Out: all.Out.Add(m.Out), Back: all.Back.Add(m.Back), After: all.After.Add(m.After)}
		if ok {
			bushels, inBushels = bushels.Add(bu), true
		}
		rows++
	}
	if rows > 0 {
		g.total(text("All "+moves[0].Name), text(""), amount(all.Before), amount(all.In), amount(all.Out), amount(all.Back), amount(all.After), known(bushels, inBushels))
	}
}

// numbers tells what became of numbers that are not simply in force.
func (c *composer) numbers() {
	c.heading("Voided, corrected, turned away")
	g := newGrid(figure("Ticket"), words("Of day"), words("Grower"), words("What"), words("Refers to"), words("By"), words("Reason"), in("Net", c.weightUnit()), in("Settled", c.weightUnit()))
	for _, p := range c.Parts {
		for _, t := range p.Struck {
			g.add(number(t.Number), text(t.Day.String()), text(t.Grower), text(t.ending()+" the same day, never counted"), text(t.by()), text(t.EndedWho), text(t.Reason), amount(t.net()), text(""))
		}
	}
	for _, t := range c.Later {
		g.add(number(t.Number), text(t.Day.String()), text(t.Grower), text(t.ending()+" today, taken back"), text(t.by()), text(t.EndedWho), text(t.Reason), amount(t.net().Neg()), settledBack(t))
	}
	for _, t := range c.Corrections {
		g.add(number(t.Number), text(t.Day.String()), text(t.Grower), text("corrected ticket, counts today"), text(fmt.Sprintf("corrects %d of %s", t.Corrects, t.CorrectsOn)), text(t.Weigher), text(""), amount(t.net()), settledIn(t))
	}
	c.put(g.table("numbers", "No ticket was voided or corrected, and none corrects another."))
	g = newGrid(words("Load"), words("Hour"), words("Grower"), words("Commodity"), words("Truck"), words("By"), words("Reason"))
	for _, t := range c.Refused {
		g.add(text(t.Load), text(t.Time), text(t.Grower), text(t.Name), text(t.Truck), text(t.EndedWho), text(t.Reason))
	}
	if len(c.Refused) > 0 {
		c.put(g.table("refused", ""))
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

// doubts are what an auditor asks about: typed weights, limits accepted,
// flags.
func (c *composer) doubts() {
	c.heading("Typed weights, limits accepted, doubts at the bench")
	g := newGrid(figure("Ticket"), words("Grower"), words("What"), words("Words"))
	for _, t := range c.Manual {
		g.add(number(t.Number), text(t.Grower), text("MANUAL WT"), text(strings.Join(t.Manual, "; ")))
	}
	for _, t := range c.Accepted {
		g.add(number(t.Number), text(t.Grower), text("limit accepted"), text(strings.Join(t.Accepted, "; ")))
	}
	for _, t := range c.Flagged {
		g.add(number(t.Number), text(t.Grower), text("flag"), text(strings.Join(t.Flags, "; ")))
	}
	c.put(g.table("doubts", "Every weight came from the scale, no limit was passed over, no moisture was doubted."))
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
