package office

import (
	"context"
	"fmt"

	"tenthpoint/internal/house"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/store"
)

// Standing reads all standing things of one kind as they now are.
func Standing[F journal.Kinded](ctx context.Context, book *store.Book) ([]F, error) {
	var zero F
	rows, err := book.StandingOf(ctx, zero.Kind())
	if err != nil {
		return nil, err
	}
	return ReadRecords[F](rows)
}

// ReadRecords reads records of one kind out of their rows.
func ReadRecords[F journal.Kinded](rows []store.Standing) ([]F, error) {
	out := make([]F, 0, len(rows))
	for _, row := range rows {
		fact, err := journal.ReadBody[F](row.Body)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", row.ID, err)
		}
		out = append(out, fact)
	}
	return out, nil
}

// Growers are all growers by code.
func Growers(ctx context.Context, d Desk) ([]house.Grower, error) {
	return Standing[house.Grower](ctx, d.Book())
}

// Trucks are all trucks by number.
func Trucks(ctx context.Context, d Desk) ([]house.Truck, error) {
	return Standing[house.Truck](ctx, d.Book())
}

// Bins are all pits and bins.
func Bins(ctx context.Context, d Desk) ([]house.Bin, error) {
	return Standing[house.Bin](ctx, d.Book())
}

// Contracts are all contracts.
func Contracts(ctx context.Context, d Desk) ([]house.ContractTerms, error) {
	return Standing[house.ContractTerms](ctx, d.Book())
}

// Lists are what a sheet is read from: the book as it stands, or as a write has
// left it so far. A day is closed with the very sheet it had in that moment.
type Lists interface {
	Loads(store.LoadFilter) ([]store.LoadRow, error)
	StockBefore(day string) ([]store.StockRow, error)
	LastTicketBefore(day string) (int64, error)
	SamplesKept(from, to string) ([]store.KeptSamples, error)
	StandingOf(kind string) ([]store.Standing, error)
	FactsOf(subject string) ([]journal.Fact, error)
}

var _ Lists = (*store.Tx)(nil)

// bookNow is the book as it stands.
type bookNow struct {
	ctx  context.Context
	book *store.Book
}

func (b bookNow) Loads(f store.LoadFilter) ([]store.LoadRow, error) {
	return b.book.Loads(b.ctx, f)
}

func (b bookNow) StockBefore(day string) ([]store.StockRow, error) {
	return b.book.StockBefore(b.ctx, day)
}

func (b bookNow) LastTicketBefore(day string) (int64, error) {
	return b.book.LastTicketBefore(b.ctx, day)
}

func (b bookNow) SamplesKept(from, to string) ([]store.KeptSamples, error) {
	return b.book.SamplesKept(b.ctx, from, to)
}

func (b bookNow) StandingOf(kind string) ([]store.Standing, error) {
	return b.book.StandingOf(b.ctx, kind)
}

func (b bookNow) FactsOf(subject string) ([]journal.Fact, error) {
	return b.book.FactsOf(b.ctx, subject)
}

// readNow reads from the book as it stands.
func readNow(ctx context.Context, d Desk) Lists { return bookNow{ctx, d.Book()} }

// recordsIn reads all standing things of one kind.
func recordsIn[F journal.Kinded](l Lists) ([]F, error) {
	var zero F
	rows, err := l.StandingOf(zero.Kind())
	if err != nil {
		return nil, err
	}
	return ReadRecords[F](rows)
}
