package daysheet

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// DayMove is a day on which something moved in one place.
type DayMove struct {
	Day quantity.Date
	Move
}

// ComposePosition makes the paper of the position: the stock in the evening of the last day, then
// place by place every day on which something moved, each beginning with the balance of the day
// before.
func ComposePosition(p elevator.Profile, period Period, tonight []Move, days []DayMove, example bool) report.Document {
	d := paper(p, message.New("Position"), period.Message(), example, period.To)
	put := func(blocks ...report.Block) { d.Blocks = append(d.Blocks, blocks...) }
	put(report.Heading{Text: message.New("In the evening of %s", period.To)})
	if len(tonight) == 0 {
		put(report.Para{Text: message.New("Nothing is in the house.")})
	}
	for _, unit := range weightUnits(tonight) {
		put(tonightTable(tonight, unit))
	}
	put(report.Para{Text: message.New("The position counts the weight that was paid for, less what was weighed going out.")}, report.Heading{Text: message.New("Day by day")})
	moves := make([]Move, len(days))
	for i, m := range days {
		moves[i] = m.Move
	}
	for _, unit := range weightUnits(moves) {
		put(daysTable(days, unit))
	}
	if len(days) == 0 {
		put(report.Para{Text: message.New("Nothing moved in this period.")})
	}
	return d
}

func tonightTable(moves []Move, unit quantity.Unit) report.Table {
	g := newGrid([]column[moveRow, none]{
		{wordsColumn("Commodity"), func(r moveRow) cell { return text(r.name) }, nil, always},
		{wordsColumn("Pit or bin"), func(r moveRow) cell { return text(r.bin) }, nil, always},
		{unitColumn("Weight", unit), func(r moveRow) cell { return amount(r.After) }, nil, always},
		{figureColumn("Bushels, by legal weight"), moveRow.bushelCell, nil, unlessEmpty},
	})
	movesOf(g, moves, unit, (*moveRow).joinAfter)
	return g.table(inUnit(message.New("tonight"), unit), message.Text{})
}

// byCommodity parts moves, which are sorted by name, into runs of one name.
func byCommodity(moves []Move) [][]Move {
	var out [][]Move
	for len(moves) > 0 {
		same := 1
		for same < len(moves) && moves[same].Name == moves[0].Name {
			same++
		}
		out, moves = append(out, moves[:same]), moves[same:]
	}
	return out
}

func daysTable(days []DayMove, unit quantity.Unit) report.Table {
	g := newGrid([]column[DayMove, none]{
		{wordsColumn("Commodity"), func(m DayMove) cell { return said(m.Name) }, nil, always},
		{wordsColumn("Pit or bin"), func(m DayMove) cell { return text(orNone(m.Bin)) }, nil, always},
		{wordsColumn("Day"), func(m DayMove) cell { return date(m.Day) }, nil, always},
		{unitColumn("Yesterday", unit), func(m DayMove) cell { return amount(m.Before) }, nil, always},
		{unitColumn("In", unit), func(m DayMove) cell { return amount(m.In) }, nil, always},
		{unitColumn("Out", unit), func(m DayMove) cell { return amount(m.Out) }, nil, always},
		{unitColumn("Taken back", unit), func(m DayMove) cell { return amount(m.Back) }, nil, unlessEmpty},
		{unitColumn("Tonight", unit), func(m DayMove) cell { return amount(m.After) }, nil, always},
	})
	for _, m := range days {
		if m.After.Unit() == unit {
			g.add(m)
		}
	}
	return g.table(inUnit(message.New("days"), unit), message.Text{})
}
