// Package restoring has the acts on a book that was restored from a copy. What was entered after the
// copy is lost, but its papers are out in the world: their numbers are passed over, and each ticket is
// entered again from its slip or declared lost. The ideas are in package numbering.
package restoring

import (
	"context"
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/scalehouse"
)

// PassOver moves series on past the last numbers seen on paper, by series, so that none of them is
// given out again. It is a manager's act. A number that the book has given out already is refused.
func PassOver(ctx context.Context, d *scalehouse.Desk, last map[string]int64, reason string) (out []numbering.Passed, err error) {
	if err := d.MayManage("Passing numbers over"); err != nil {
		return nil, err
	}
	if len(last) == 0 {
		return nil, message.Incomplete.Errorf("no number is given. Give the highest one on any paper: of a ticket, of a sample's label, of a settlement sheet, of a payment")
	}
	err = d.Batch(ctx, func(w *scalehouse.Batch) error {
		out = nil
		for _, series := range numbering.OnPaper {
			if number, given := last[series]; given {
				p, err := PassIn(ctx, w, numbering.Passed{Series: series, Last: number, Reason: reason})
				if err != nil {
					return err
				}
				out = append(out, p)
			}
		}
		return nil
	})
	return out, err
}

// PassIn gives out all numbers up to the last one to nothing, inside a batch.
func PassIn(ctx context.Context, w *scalehouse.Batch, p numbering.Passed) (numbering.Passed, error) {
	var err error
	if p.First, err = scalehouse.NextIn(w, p.Series); err != nil {
		return p, err
	}
	if err := p.Check(); err != nil {
		return p, err
	}
	for n := p.First; n < p.Last; n++ {
		if _, err := scalehouse.NextIn(w, p.Series); err != nil {
			return p, err
		}
	}
	return p, scalehouse.SetRecord(ctx, w, p.ID(), p)
}

// DeclareLost declares that the papers of tickets passed over are not to be had. It is a manager's
// act.
func DeclareLost(ctx context.Context, d *scalehouse.Desk, numbers []int64, reason string) error {
	if err := d.MayManage("Declaring a ticket lost"); err != nil {
		return err
	}
	return d.Batch(ctx, func(w *scalehouse.Batch) error {
		missing, _, err := scalehouse.AbsentIn(w)
		if err != nil {
			return err
		}
		for _, number := range numbers {
			if !slices.Contains(missing, number) {
				return notMissing(number, missing)
			}
			lost := numbering.Lost{Number: number, Reason: reason}
			if err := scalehouse.SetRecord(ctx, w, lost.ID(), lost); err != nil {
				return err
			}
		}
		return nil
	})
}

func notMissing(number int64, missing []int64) error {
	if len(missing) == 0 {
		return message.Refused.Errorf("ticket %d is not missing: no number that was passed over is", number)
	}
	return message.Refused.Errorf("ticket %d is not missing; missing are %s. Look at the number on the slip again", number, numbering.Ranges(missing))
}
