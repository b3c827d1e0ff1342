package housetest

import (
	"context"
	"errors"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
)

// overtaken is a book in which every act is run twice, as on a server where another desk has written
// in between: the first time nothing of it is kept.
type overtaken struct{ *sqlite.Book }

var errOvertaken = errors.New("another desk has written")

func (o overtaken) Write(ctx context.Context, act func(book.Tx) error) error {
	err := o.Book.Write(ctx, func(tx book.Tx) error {
		if err := act(tx); err != nil {
			return err
		}
		return errOvertaken
	})
	if !errors.Is(err, errOvertaken) {
		return err
	}
	return o.Book.Write(ctx, act)
}

// NewOvertaken makes an elevator whose every act is overtaken once by another desk and run again.
func NewOvertaken(t testing.TB) *Scene {
	t.Helper()
	kept, err := sqlite.OpenScratch()
	Must(t, err)
	return onDesk(t, kept, overtaken{kept})
}
