// Package trial settles one load under an edition at a grid of moistures: what the edition does to
// them, side by side, before it is used.
package trial

import (
	"fmt"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// Trial is the result of an edition for one load at a grid of moistures.
type Trial struct {
	Edition *rates.Edition
	// Sheet holds the figures of the rows that no settlement has.
	Sheet *worksheet.Sheet
	Rows  []Row
}

// Row is one moisture of the grid. Refused says why there is no
// settlement; the steps are then nil.
type Row struct {
	Moisture   quantity.Amount
	Settlement *settle.Settlement
	Refused    message.Text
	// Points are those above the shrink-to that shrink is taken for.
	Points *worksheet.Step
	// Taken is water and handling in percent of the wet weight.
	Taken *worksheet.Step
	// Each is the net value of one unit of the load as delivered, after all charges,
	// or without a price, what it is charged: below zero, as it is taken.
	Each *worksheet.Step
}

// Of settles the facts at every moisture of a grid, everything else the same.
func Of(e *rates.Edition, f settle.Facts, grid []quantity.Amount) *Trial {
	t := &Trial{Edition: e, Sheet: &worksheet.Sheet{}}
	for _, moisture := range grid {
		f.Moisture = settle.Reading{Percent: moisture, Source: message.Words("trial")}
		t.Rows = append(t.Rows, t.row(f, moisture))
	}
	return t
}

// Grid is the moistures from first to last by a step above zero. It ends at
// 1000 rows, more than anyone reads.
func Grid(first, last, step quantity.Amount) []quantity.Amount {
	var out []quantity.Amount
	for at := first; step.Sign() > 0 && !at.More(last) && len(out) < 1000; at = at.Add(step) {
		out = append(out, at)
	}
	return out
}

func (t *Trial) row(f settle.Facts, moisture quantity.Amount) Row {
	row := Row{Moisture: moisture}
	s, err := settle.Settle(f, t.Edition)
	if err != nil {
		row.Refused = message.Of(err)
		return row
	}
	row.Settlement = s
	t.Sheet.Section(message.New("At %s", moisture.Written()))
	id := fmt.Sprintf("row.%d", len(t.Rows)+1)
	row.Points = t.points(id, s)
	taken := worksheet.Times(worksheet.Sum(s.Water, s.Handling), worksheet.Const(hundredPercent))
	row.Taken = t.Sheet.Work(id+".taken", message.Words("Water and handling"), worksheet.Over(taken, s.Wet), hundredth, worksheet.Unsourced)
	units := t.net(id, s)
	what := s.Payable
	if f.Price == nil {
		what = s.Adjustments
	}
	row.Each = t.Sheet.Work(id+".each", message.New("%s per unit delivered", what.Label()), worksheet.Over(what, units), tenthOfCent, worksheet.Unsourced)
	return row
}

// points are those the settlement counted, or where its method counts none, the
// moisture less the shrink-to; none where no water is taken.
func (t *Trial) points(id string, s *settle.Settlement) *worksheet.Step {
	if counted, ok := s.Sheet.Step("shrink.points"); ok {
		return counted
	}
	if to := t.Edition.Shrink.To; to.Given() && s.Water.Value().Sign() > 0 {
		above := worksheet.Points(s.Moisture, worksheet.Const(to.Amount))
		return t.Sheet.Work(id+".points", message.Words("Points above shrink-to"), above, quantity.Unrounded, worksheet.Unsourced)
	}
	return t.Sheet.Skip(id+".points", message.Words("Points above shrink-to"), quantity.Point, quantity.Unrounded, message.Words("no water is taken"), worksheet.Unsourced)
}

var (
	hundredPercent = quantity.Int(100, quantity.Percent)
	hundredth      = quantity.To("0.01", quantity.HalfUp)
	tenthOfCent    = quantity.To("0.001", quantity.HalfUp)
)

// delivered are the names of the net weight in the units that are settled by.
var delivered = map[quantity.Unit]message.Text{
	quantity.Bushel: message.Words("Delivered bushels"), quantity.Cwt: message.Words("Delivered hundredweight"), quantity.Tonne: message.Words("Delivered tonnes"),
}

// net is the net weight in the unit that is settled by, exact: it only
// divides.
func (t *Trial) net(id string, s *settle.Settlement) *worksheet.Step {
	u := t.Edition.Units
	var units worksheet.Operand
	if u.Settle == quantity.Bushel {
		units = worksheet.Over(s.Net, worksheet.Const(u.Bushel))
	} else {
		factor, err := quantity.MassFactor(u.Weight, u.Settle)
		if err != nil {
			panic("trial: " + err.Error())
		}
		units = worksheet.Times(s.Net, worksheet.Const(factor))
	}
	return t.Sheet.Work(id+".delivered", delivered[u.Settle], units, quantity.Unrounded, worksheet.Unsourced)
}
