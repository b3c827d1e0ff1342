package audit

import (
	"context"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
)

// HoldsHead returns the problem of a book that lacks a head noted earlier, or nothing. A head
// covers all facts up to its own, so a noted head alone proves them.
func HoldsHead(ctx context.Context, b office.Journal, noted journal.Head) error {
	for f, err := range b.Facts(ctx, book.FactFilter{FromSeq: noted.Seq, ToSeq: noted.Seq}) {
		if err != nil {
			return err
		}
		if noted.Holds(f) {
			return nil
		}
		return message.Storage.Errorf("fact %d is not the one that was noted: its hash begins with %.12s, the one noted with %.12s. Facts up to it were written again after the head was noted, or the head is of another book", noted.Seq, f.Hash, noted.Hash)
	}
	last, _, err := b.Head(ctx)
	if err != nil {
		return err
	}
	return message.Storage.Errorf("the book ends with fact %d and no longer holds fact %d, which was noted as its head. An older copy lies in its place, its end was cut off, or its last writes were lost with the file beside it (-wal)", last.Seq, noted.Seq)
}
