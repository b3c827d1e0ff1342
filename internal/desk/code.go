package desk

import (
	"context"
	"fmt"
	"strings"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/store"
)

// A code is enough of a hash that two tickets of one book do not share it.
const (
	codeLength = 12
	leastCode  = 8
)

// Code is the short code on a ticket: the first 12 characters of the hash of
// the fact that issued it. [TicketByCode] finds the ticket by it.
func Code(ctx context.Context, d *Desk, l *load.Load) (string, error) {
	facts, err := d.book.FactsOf(ctx, subject(l.ID))
	if err != nil {
		return "", err
	}
	return codeIn(facts), nil
}

func codeIn(facts []journal.Fact) string {
	for _, f := range facts {
		if f.Kind == (load.Issued{}).Kind() {
			return f.Hash[:min(codeLength, len(f.Hash))]
		}
	}
	return ""
}

// TicketByCode finds the ticket that carries a short code, by the fact that issued
// it.
func TicketByCode(ctx context.Context, d *Desk, code string) (*load.Load, error) {
	code = strings.ToLower(strings.TrimSpace(code))
	if len(code) < leastCode {
		return nil, fmt.Errorf("the code %q is too short to find a ticket by. Type all %d letters and digits from the foot of the slip", code, codeLength)
	}
	for f, err := range d.book.Facts(ctx, store.Filter{Kind: load.Issued{}.Kind()}) {
		if err != nil {
			return nil, err
		}
		if id, ok := loadOf(f.Subject); ok && strings.HasPrefix(f.Hash, code) {
			return Load(ctx, d, id)
		}
	}
	return nil, fmt.Errorf("no ticket in this book carries the code %q. Check the letters; the code is %d letters and digits from the foot of the slip", code, codeLength)
}
