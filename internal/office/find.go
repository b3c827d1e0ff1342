package office

import (
	"context"
	"strings"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
)

// Search is what to look for among the tickets, and Term one word of it.
type (
	Search = book.Search
	Term   = book.Term
)

// Found is one load as a list shows it.
type Found = book.LoadRow

// FindTickets lists tickets, the newest first, and tells how many there are in all.
// It reads nothing but the book, so it may run beside other acts.
func FindTickets(ctx context.Context, d Desk, s Search) (page []Found, all int64, err error) {
	if page, err = d.Reader().Search(ctx, s); err != nil {
		return nil, 0, err
	}
	if s.Before == 0 && len(page) < s.Limit {
		return page, int64(len(page)), nil
	}
	all, err = d.Reader().CountFound(ctx, s)
	return page, all, err
}

// A code is enough of a hash that two tickets of one book do not share it.
const (
	codeLength = 12
	leastCode  = 8
)

// Code is the short code on a ticket: the first 12 characters of the hash of
// the fact that issued it. [TicketByCode] finds the ticket by it.
func Code(ctx context.Context, d Desk, l *load.Load) (string, error) {
	facts, err := d.Reader().FactsOf(ctx, LoadSubject(l.ID))
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
func TicketByCode(ctx context.Context, d Desk, code string) (*load.Load, error) {
	code = strings.ToLower(strings.TrimSpace(code))
	if len(code) < leastCode {
		return nil, message.Errorf("the code %q is too short to find a ticket by. Type all %d letters and digits from the foot of the slip", code, codeLength)
	}
	for f, err := range d.Reader().Facts(ctx, book.FactFilter{Kind: load.Issued{}.Kind()}) {
		if err != nil {
			return nil, err
		}
		if id, ok := LoadOfSubject(f.Subject); ok && strings.HasPrefix(f.Hash, code) {
			return Load(ctx, d, id)
		}
	}
	return nil, message.Errorf("no ticket in this book carries the code %q. Check the letters; the code is %d letters and digits from the foot of the slip", code, codeLength)
}

// LastLoad is the newest ticketed load of a grower, or of a truck where no
// grower is given: what the desk offers when the same one comes again. Found
// is false when neither has been here.
func LastLoad(ctx context.Context, d Desk, grower, truck string) (l *load.Load, found bool, err error) {
	filter := book.LoadFilter{Grower: grower, Newest: true, Limit: 1}
	if grower == "" {
		filter.Truck = truck
	}
	if grower == "" && truck == "" {
		return nil, false, nil
	}
	rows, err := d.Reader().Loads(ctx, filter)
	if err != nil || len(rows) == 0 {
		return nil, false, err
	}
	l, err = Load(ctx, d, rows[0].ID)
	return l, err == nil, err
}

// LastTicket is the highest ticket number given so far; found is false while
// no ticket has been issued.
func LastTicket(ctx context.Context, d Desk) (number int64, found bool, err error) {
	rows, err := d.Reader().Loads(ctx, book.LoadFilter{Newest: true, FromTicket: 1, Limit: 1})
	if err != nil || len(rows) == 0 {
		return 0, false, err
	}
	return rows[0].Ticket, true, nil
}
