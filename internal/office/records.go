package office

import (
	"context"

	"tenthpoint/internal/book"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

// RecordsOf reads all records of one kind as they now are.
func RecordsOf[F journal.Kinded](ctx context.Context, b Book) ([]F, error) {
	var zero F
	rows, err := b.Records(ctx, zero.Kind())
	if err != nil {
		return nil, err
	}
	return ReadRecords[F](rows)
}

// ReadRecords reads records of one kind out of their rows.
func ReadRecords[F journal.Kinded](rows []book.Record) ([]F, error) {
	out := make([]F, 0, len(rows))
	for _, row := range rows {
		fact, err := journal.ReadBody[F](row.Body)
		if err != nil {
			return nil, message.Errorf("%s: %w", row.ID, err)
		}
		out = append(out, fact)
	}
	return out, nil
}

// Growers are all growers by code.
func Growers(ctx context.Context, d Desk) ([]elevator.Grower, error) {
	return RecordsOf[elevator.Grower](ctx, d.Reader())
}

// Trucks are all trucks by number.
func Trucks(ctx context.Context, d Desk) ([]elevator.Truck, error) {
	return RecordsOf[elevator.Truck](ctx, d.Reader())
}

// Bins are all pits and bins.
func Bins(ctx context.Context, d Desk) ([]elevator.Bin, error) {
	return RecordsOf[elevator.Bin](ctx, d.Reader())
}

// Contracts are all contracts.
func Contracts(ctx context.Context, d Desk) ([]elevator.ContractTerms, error) {
	return RecordsOf[elevator.ContractTerms](ctx, d.Reader())
}

// recordsIn reads all records of one kind.
func recordsIn[F journal.Kinded](l Lists) ([]F, error) {
	var zero F
	rows, err := l.Records(zero.Kind())
	if err != nil {
		return nil, err
	}
	return ReadRecords[F](rows)
}
