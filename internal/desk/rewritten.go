package desk

import (
	"context"
	"slices"
)

// RewrittenEditions are the ids of editions in use whose text is another than the one
// tickets were settled under: the file was changed and its id was not. Those
// tickets keep the text they were settled under; what is settled from now on
// follows the new one, so that two tickets under one id may differ. The error is
// that of the book.
func RewrittenEditions(ctx context.Context, d *Desk) (map[string]bool, error) {
	kept, err := d.book.EditionHashes(ctx)
	if err != nil {
		return nil, err
	}
	out := map[string]bool{}
	for _, e := range d.Rates().All() {
		if hashes := kept[e.ID]; len(hashes) > 0 && !slices.Contains(hashes, e.Hash) {
			out[e.ID] = true
		}
	}
	return out, nil
}
