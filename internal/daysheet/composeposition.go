package daysheet

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// position is the stock before and after the day.
func (c *composer) position() {
	c.heading(message.New("Position"))
	if len(c.Moves) == 0 {
		c.say(message.New("Nothing is in the house."))
		return
	}
	for _, unit := range weightUnits(c.Moves) {
		c.put(movesTable(c.Moves, unit))
	}
	c.say(message.New("The position counts the weight that was paid for, each load as settled, less what was weighed going out. Yesterday + in − out − taken back = tonight, in every line."))
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

// moveRow is the stock in one place, or in all places of a commodity.
type moveRow struct {
	name, bin message.Text
	Move
	bu        quantity.Amount
	inBushels bool
}

func (r moveRow) bushelCell() cell { return known(r.bu, r.inBushels) }

// movesTable is the position of one unit, with a total for each commodity.
func movesTable(moves []Move, unit quantity.Unit) report.Table {
	g := newGrid([]column[moveRow, none]{
		{wordsColumn("Commodity"), func(r moveRow) cell { return text(r.name) }, nil, always},
		{wordsColumn("Pit or bin"), func(r moveRow) cell { return text(r.bin) }, nil, always},
		{unitColumn("Yesterday", unit), func(r moveRow) cell { return amount(r.Before) }, nil, always},
		{unitColumn("In", unit), func(r moveRow) cell { return amount(r.In) }, nil, always},
		{unitColumn("Out", unit), func(r moveRow) cell { return amount(r.Out) }, nil, always},
		{unitColumn("Taken back", unit), func(r moveRow) cell { return amount(r.Back) }, nil, unlessEmpty},
		{unitColumn("Tonight", unit), func(r moveRow) cell { return amount(r.After) }, nil, always},
		{figureColumn("Tonight bu, by legal weight"), moveRow.bushelCell, nil, unlessEmpty},
	})
	movesOf(g, moves, unit, (*moveRow).join)
	return g.table(inUnit(message.New("position"), unit), message.Text{})
}

// inUnit is the name of a table in one of the units of weight.
func inUnit(what message.Text, unit quantity.Unit) message.Text {
	return message.List(" ", what, message.Own(unit.String()))
}

// movesOf adds the rows of a unit, each commodity with its total, to which join adds a
// place.
func movesOf(g *grid[moveRow, none], moves []Move, unit quantity.Unit, join func(*moveRow, Move)) {
	for _, same := range byCommodity(moves) {
		none, rows := quantity.Zero(unit), 0
		all := moveRow{name: message.New("All %s", same[0].Name), Move: Move{Before: none, In: none, Out: none, Back: none, After: none}, bu: quantity.Zero(quantity.Bushel)}
		for _, m := range same {
			if m.After.Unit() != unit {
				continue
			}
			bu, ok := m.bushels()
			g.add(moveRow{message.Words(m.Name), orNone(m.Bin), m, bu, ok})
			join(&all, m)
			if ok {
				all.bu, all.inBushels = all.bu.Add(bu), true
			}
			rows++
		}
		if rows > 0 {
			g.put(report.Total, all)
		}
	}
}

// join adds another place of the same commodity.
func (r *moveRow) join(m Move) {
	r.Before, r.In, r.Out, r.Back = r.Before.Add(m.Before), r.In.Add(m.In), r.Out.Add(m.Out), r.Back.Add(m.Back)
	r.joinAfter(m)
}

// joinAfter adds a closing balance, where nothing else of a place is known.
func (r *moveRow) joinAfter(m Move) { r.After = r.After.Add(m.After) }
