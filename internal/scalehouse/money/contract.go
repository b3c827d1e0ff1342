package money

import (
	"context"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/scalehouse"
)

// ChangeContract changes a contract as it stands in the book at that moment, so that of two people
// who change it at once neither undoes the other. What was priced and what happened before stays.
func ChangeContract(ctx context.Context, d *scalehouse.Desk, number string, change func(elevator.ContractTerms) (elevator.ContractTerms, error)) (next elevator.ContractTerms, err error) {
	err = d.Batch(ctx, func(w *scalehouse.Batch) error {
		all, err := scalehouse.RecordsIn[elevator.ContractTerms](w)
		if err != nil {
			return err
		}
		for _, c := range all {
			if c.Number != number {
				continue
			}
			if next, err = change(c); err != nil {
				return err
			}
			return scalehouse.SetContract(ctx, w, next)
		}
		return message.NotFound.Errorf("there is no contract %s here", number)
	})
	return next, err
}
