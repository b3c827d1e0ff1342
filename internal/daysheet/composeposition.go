package daysheet

import (
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// position is the grain in the house before and after the day.
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
	return g.withoutEmpty("Taken back", "Tonight bu").table("", "position", unit.String())
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
