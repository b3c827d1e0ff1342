package desk

import (
	"context"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/store"
)

// lists are what a sheet is read from: the book as it stands, or as a write has
// left it so far. A day is closed with the very sheet it had in that moment.
type lists interface {
	Loads(store.LoadFilter) ([]store.LoadRow, error)
	StockBefore(day string) ([]store.StockRow, error)
	LastTicketBefore(day string) (int64, error)
	SamplesKept(from, to string) ([]store.KeptSamples, error)
	StandingOf(kind string) ([]store.Standing, error)
	FactsOf(subject string) ([]journal.Fact, error)
}

var _ lists = (*store.Tx)(nil)

// standingBook is the book as it stands.
type standingBook struct {
	ctx  context.Context
	book *store.Book
}

func (b standingBook) Loads(f store.LoadFilter) ([]store.LoadRow, error) {
	return b.book.Loads(b.ctx, f)
}

func (b standingBook) StockBefore(day string) ([]store.StockRow, error) {
	return b.book.StockBefore(b.ctx, day)
}

func (b standingBook) LastTicketBefore(day string) (int64, error) {
	return b.book.LastTicketBefore(b.ctx, day)
}

func (b standingBook) SamplesKept(from, to string) ([]store.KeptSamples, error) {
	return b.book.SamplesKept(b.ctx, from, to)
}

func (b standingBook) StandingOf(kind string) ([]store.Standing, error) {
	return b.book.StandingOf(b.ctx, kind)
}

func (b standingBook) FactsOf(subject string) ([]journal.Fact, error) {
	return b.book.FactsOf(b.ctx, subject)
}

// readNow reads from the book as it stands.
func readNow(ctx context.Context, d *Desk) lists { return standingBook{ctx, d.book} }

// standingIn reads all standing things of one kind.
func standingIn[F journal.Kinded](l lists) ([]F, error) {
	var zero F
	rows, err := l.StandingOf(zero.Kind())
	if err != nil {
		return nil, err
	}
	return readStanding[F](rows)
}
