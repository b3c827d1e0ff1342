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

// ComposePosition makes the paper of the position: what is there in the evening
// of the last day, then place by place every day on which something moved, each
// beginning with what the day before ended with.
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
	g := newGrid(words("Commodity"), words("Pit or bin"), in("Weight", unit), figure("Bushels, by legal weight"))
	for _, same := range byCommodity(moves) {
		weight, bushels, counted := quantity.Zero(unit), quantity.Zero(quantity.Bushel), false
		rows := 0
		for _, m := range same {
			if m.After.Unit() != unit {
				continue
			}
			bu, ok := m.bushels()
			g.add(text(m.Name), text(orNone(m.Bin)), amount(m.After), known(bu, ok))
			weight, rows = weight.Add(m.After), rows+1
			if ok {
				bushels, counted = bushels.Add(bu), true
			}
		}
		if rows > 0 {
			g.total(text("All "+same[0].Name), text(""), amount(weight), known(bushels, counted))
		}
	}
	return g.withoutEmpty("Bushels").table("", "tonight", unit.String())
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
	g := newGrid(words("Commodity"), words("Pit or bin"), own("Day"), in("Yesterday", unit), in("In", unit), in("Out", unit), in("Taken back", unit), in("Tonight", unit))
	for _, m := range days {
		if m.After.Unit() == unit {
			g.add(text(m.Name), text(orNone(m.Bin)), text(m.Day.String()), amount(m.Before), amount(m.In), amount(m.Out), amount(m.Back), amount(m.After))
		}
	}
	return g.withoutEmpty("Taken back").table("", "days", unit.String())
}
