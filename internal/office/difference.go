package office

import (
	"context"

	"tenthpoint/internal/explanation"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/report"
	"tenthpoint/internal/settle"
)

// Difference is two tickets side by side.
type Difference struct {
	Old, New *load.Load
	// Comparison holds every line; its Changed are those that differ, in pounds,
	// bushels and money.
	*settle.Comparison
}

// Compare compares two tickets, each recalculated from its facts and the edition kept with it: a
// ticket and the one that took its place, or the first and the last of a chain of them.
func Compare(ctx context.Context, d Desk, oldNumber, newNumber int64) (Difference, error) {
	var out Difference
	var err error
	if out.Old, err = Ticket(ctx, d, oldNumber); err != nil {
		return out, err
	}
	if out.New, err = Ticket(ctx, d, newNumber); err != nil {
		return out, err
	}
	before, err := Resettle(ctx, d, out.Old)
	if err != nil {
		return out, err
	}
	after, err := Resettle(ctx, d, out.New)
	if err != nil {
		return out, err
	}
	out.Comparison = settle.Compare(before, after)
	return out, nil
}

// Table is the lines that differ, ready to be shown.
func (d Difference) Table() report.Table {
	return explanation.Differences(d.Comparison, message.New("Ticket %d", d.Old.Number), message.New("Ticket %d", d.New.Number))
}

// Chain are the tickets that took each other's place, a ticket among them: the
// first one first, then its corrections and those reissued when one was void.
func Chain(ctx context.Context, d Desk, number int64) ([]*load.Load, error) {
	l, err := Ticket(ctx, d, number)
	if err != nil {
		return nil, err
	}
	for l.InPlaceOf() > 0 {
		if l, err = Ticket(ctx, d, l.InPlaceOf()); err != nil {
			return nil, err
		}
	}
	out := []*load.Load{l}
	for l.Successor() > 0 {
		if l, err = Ticket(ctx, d, l.Successor()); err != nil {
			return nil, err
		}
		out = append(out, l)
	}
	return out, nil
}
