package desk

import (
	"context"

	"tenthpoint/internal/store"
)

// Search is what to look for among the tickets, and Term one word of it.
type (
	Search = store.Search
	Term   = store.Term
)

// Found is one load as a list shows it.
type Found = store.LoadRow

// FindTickets lists tickets, the newest first, and tells how many there are in all.
// It reads nothing but the book, so it may run beside other acts.
func FindTickets(ctx context.Context, d *Desk, s Search) (page []Found, all int64, err error) {
	if page, err = d.book.Search(ctx, s); err != nil {
		return nil, 0, err
	}
	if s.Before == 0 && len(page) < s.Limit {
		return page, int64(len(page)), nil
	}
	all, err = d.book.CountFound(ctx, s)
	return page, all, err
}
