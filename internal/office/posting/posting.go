// Package posting gathers what a house shows to everybody who holds one of its slips: its posted
// rates, the keys it signs with, and the tickets in its book up to a head that it signed. The page of
// `tenth checker` is made of it. Of growers it holds nothing.
package posting

import (
	"context"

	"tenthpoint/internal/book"
	"tenthpoint/internal/checker"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/keyring"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/signing"
)

// MostTickets is how many tickets a page lists at most, the newest ones.
const MostTickets = 5000

// House is what the page of a house holds.
func House(ctx context.Context, d office.Desk) (checker.House, error) {
	p := d.Profile()
	h := checker.House{Business: p.Business, Demo: p.Demo, Rules: p.Rules}
	for _, e := range d.Rates().All() {
		h.Editions = append(h.Editions, checker.File{Name: e.ID + ".toml", Text: string(e.Text)})
	}
	keys, err := keyring.Read(ctx, d.Reader())
	if err != nil || keys.IsEmpty() {
		return h, err
	}
	for _, key := range keys.Houses() {
		h.Keys = append(h.Keys, key.Key)
	}
	h.Computers = keys.Computers()
	head, found, err := lastHead(ctx, d.Reader())
	if err == nil && found {
		h.Heads = append(h.Heads, head)
	}
	return h, err
}

// lastHead is the last head that was signed, with the tickets issued before it.
func lastHead(ctx context.Context, b office.Book) (checker.Head, bool, error) {
	var last *signing.Note
	var day quantity.Date
	for f, err := range b.Facts(ctx, book.FactFilter{Kind: signing.Signed{}.Kind()}) {
		if err != nil {
			return checker.Head{}, false, err
		}
		s, err := journal.ReadBody[signing.Signed](f.Body)
		if err != nil {
			return checker.Head{}, false, err
		}
		last = &signing.Note{Head: journal.Head{Seq: f.Seq - 1, Hash: f.Prev}, By: s.By, Signature: s.Signature}
	}
	if last == nil {
		return checker.Head{}, false, nil
	}
	var tickets []string
	for f, err := range b.Facts(ctx, book.FactFilter{Kind: load.Issued{}.Kind()}) {
		if err != nil {
			return checker.Head{}, false, err
		}
		if f.Seq <= last.Head.Seq {
			issued, err := journal.ReadBody[load.Issued](f.Body)
			if err != nil {
				return checker.Head{}, false, err
			}
			tickets, day = append(tickets, office.CodeOf(f)), issued.Day
		}
	}
	return checker.Head{Day: day, Note: last.String(), Tickets: tickets[max(0, len(tickets)-MostTickets):]}, true, nil
}
