package daysheet

import (
	"tenthpoint/internal/elevator"
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
	d := paper(p, "Position", period.String(), example, period.To)
	put := func(blocks ...report.Block) { d.Blocks = append(d.Blocks, blocks...) }
	put(report.Heading{Text: "In the evening of " + period.To.String()})
	if len(tonight) == 0 {
		put(report.Para{Text: "Nothing is in the house."})
	}
	for _, unit := range weightUnits(tonight) {
		put(tonightTable(tonight, unit))
	}
	put(report.Para{Text: "The position counts the weight that was paid for, less what was weighed going out."}, report.Heading{Text: "Day by day"})
	moves := make([]Move, len(days))
	for i, m := range days {
		moves[i] = m.Move
	}
	for _, unit := range weightUnits(moves) {
		put(daysTable(days, unit))
	}
	if len(days) == 0 {
		put(report.Para{Text: "Nothing moved in this period."})
	}
	return d
}

func tonightTable(moves []Move, unit quantity.Unit) report.Table {
	g := newGrid([]column[moveRow, none]{
		{words("Commodity"), func(r moveRow) cell { return text(r.name) }, nil, always},
		{words("Pit or bin"), func(r moveRow) cell { return text(r.bin) }, nil, always},
		{in("Weight", unit), func(r moveRow) cell { return amount(r.After) }, nil, always},
		{figure("Bushels, by legal weight"), moveRow.bushelCell, nil, unlessEmpty},
	})
	movesOf(g, moves, unit, (*moveRow).joinAfter)
	return g.table("", "tonight", unit.String())
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
		{words("Commodity"), func(m DayMove) cell { return text(m.Name) }, nil, always},
		{words("Pit or bin"), func(m DayMove) cell { return text(orNone(m.Bin)) }, nil, always},
		{own("Day"), func(m DayMove) cell { return text(m.Day.String()) }, nil, always},
		{in("Yesterday", unit), func(m DayMove) cell { return amount(m.Before) }, nil, always},
		{in("In", unit), func(m DayMove) cell { return amount(m.In) }, nil, always},
		{in("Out", unit), func(m DayMove) cell { return amount(m.Out) }, nil, always},
		{in("Taken back", unit), func(m DayMove) cell { return amount(m.Back) }, nil, unlessEmpty},
		{in("Tonight", unit), func(m DayMove) cell { return amount(m.After) }, nil, always},
	})
	for _, m := range days {
		if m.After.Unit() == unit {
			g.add(m)
		}
	}
	return g.table("", "days", unit.String())
}
