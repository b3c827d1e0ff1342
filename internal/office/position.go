package office

import (
	"cmp"
	"context"
	"slices"

	"tenthpoint/internal/book"
	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// PositionOn returns the stock at the end of a day, by commodity and bin, without empty ones.
func PositionOn(ctx context.Context, d Desk, day quantity.Date) (daysheet.Position, error) {
	return positionBefore(ReadNow(ctx, d), day.AddDays(1))
}

// PositionPaper is the position in the evening of the last day and how it came
// about from the first day on.
func PositionPaper(ctx context.Context, d Desk, from, to quantity.Date) (report.Document, error) {
	if from.IsZero() || to.IsZero() || to.Before(from) {
		return report.Document{}, message.Invalid.Errorf("the period runs from %q to %q; give its first and its last day, in that order", from, to)
	}
	evening, err := PositionOn(ctx, d, to)
	if err != nil {
		return report.Document{}, err
	}
	rows, err := d.Reader().StockDays(ctx, from.String(), to.String())
	if err != nil {
		return report.Document{}, err
	}
	days := make([]daysheet.DayMove, 0, len(rows))
	for _, r := range rows {
		m, err := dayMove(r)
		if err != nil {
			return report.Document{}, err
		}
		days = append(days, m)
	}
	slices.SortStableFunc(days, func(a, b daysheet.DayMove) int {
		return cmp.Or(cmp.Compare(a.Name, b.Name), cmp.Compare(a.Bin, b.Bin), a.Day.Cmp(b.Day))
	})
	return daysheet.ComposePosition(d.Profile(), daysheet.Period{From: from, To: to}, tonight(evening), days, false), nil
}

// dayMove is a row of the position as the papers read it.
func dayMove(r book.StockRow) (daysheet.DayMove, error) {
	day, err := ListedDay(r.Day)
	before := r.Weight.Sub(r.In).Add(r.Out).Add(r.Back)
	return daysheet.DayMove{Day: day, Move: daysheet.Move{
		Commodity: r.Commodity, Name: grain.NameOf(r.Commodity), Bin: r.Bin, Before: before, In: r.In, Out: r.Out, Back: r.Back, After: r.Weight,
	}}, err
}

// tonight converts a position to rows without moves, by name and bin.
func tonight(p daysheet.Position) []daysheet.Move {
	var out []daysheet.Move
	for _, s := range p {
		still := quantity.Zero(s.Weight.Unit())
		out = append(out, daysheet.Move{Commodity: s.Commodity, Name: s.Name, Bin: s.Bin, Before: s.Weight, In: still, Out: still, Back: still, After: s.Weight})
	}
	slices.SortFunc(out, func(a, b daysheet.Move) int { return cmp.Or(cmp.Compare(a.Name, b.Name), cmp.Compare(a.Bin, b.Bin)) })
	return out
}
