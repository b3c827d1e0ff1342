package money

import (
	"context"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry/contracting"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
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

// Act does an act on a contract, by what is delivered on it at that moment.
func Act(ctx context.Context, d *scalehouse.Desk, number string, change contracting.Change) (elevator.ContractTerms, error) {
	return ChangeContract(ctx, d, number, func(c elevator.ContractTerms) (elevator.ContractTerms, error) {
		filled, err := office.ContractFill(ctx, d, c)
		if err != nil {
			return c, err
		}
		return change(filled, d.Who().Name)
	})
}
