package audit

import (
	"context"
	"maps"
	"slices"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/office"
)

// VerifySince checks what was entered after a head that was noted outside the book:
// the chain from there, every load that something happened to, every day closed since.
// What came before is vouched for by the hash of the head; lists, numbers and the file
// as a whole are left to [Verify].
func VerifySince(ctx context.Context, d office.Desk, b Book, head journal.Head) (Soundness, error) {
	v := newWalk(ctx, d, b, nil)
	if err := vouchedBefore(v, head); err != nil {
		return v.out, err
	}
	problems, count, err := journal.CheckSince(head, v.noting(b.Facts(ctx, book.FactFilter{FromSeq: head.Seq}), head.Seq+1))
	v.out.Facts = max(count-1, 0) // the head's own is no news
	v.found(problems...)
	if err != nil {
		return v.out, err
	}
	for _, id := range slices.Sorted(maps.Keys(v.seen)) {
		l, problems := v.load(id)
		v.found(problems...)
		v.count(id, l)
		if err := ctx.Err(); err != nil {
			return v.out, err
		}
	}
	if err := v.closedDays(); err != nil {
		return v.out, err
	}
	return v.out, vouched(v)
}
