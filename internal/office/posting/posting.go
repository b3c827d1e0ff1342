// Package posting gathers what a house shows to everybody who holds one of its slips: its posted
// rates, the keys it signs with, and the tickets in its book up to a head that it signed. The page of
// `tenth checker` is made of it. Of growers it holds nothing.
package posting

import (
	"cmp"
	"context"
	"maps"
	"slices"

	"tenthpoint/internal/book"
	"tenthpoint/internal/checker"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/keyring"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/signing"
)

// MostTickets is the most tickets a page lists, the newest ones.
const MostTickets = 5000

// House is the content of the page of a house.
func House(ctx context.Context, d office.Desk) (checker.House, error) {
	p := d.Profile()
	h := checker.House{Business: p.Business, Demo: p.Demo, Rules: p.Rules}
	for _, e := range d.Rates().All() {
		h.Editions = append(h.Editions, checker.File{Name: e.ID + ".toml", Text: string(e.Text)})
	}
	var err error
	if h.Kept, err = kept(ctx, d); err != nil {
		return h, err
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

// MostKept is the most editions a page holds beside the posted ones, the last in force first: the page
// is to stay small enough for a phone.
const MostKept = 60

// kept are the editions that tickets were settled under and that are not among the rates in use.
func kept(ctx context.Context, d office.Desk) ([]checker.File, error) {
	posted := map[string]bool{}
	for _, e := range d.Rates().All() {
		posted[e.Hash] = true
	}
	all, err := d.Reader().EditionHashes(ctx)
	if err != nil {
		return nil, err
	}
	var old []*rates.Edition
	for _, hash := range slices.Concat(slices.Collect(maps.Values(all))...) {
		if e, err := office.KeptEdition(ctx, d.Reader(), hash); err == nil && !posted[hash] { // else it is law or a tariff
			old = append(old, e)
		}
	}
	slices.SortFunc(old, func(a, b *rates.Edition) int {
		return cmp.Or(b.From.Cmp(a.From), cmp.Compare(a.Hash, b.Hash))
	})
	var out []checker.File
	for _, e := range old[:min(len(old), MostKept)] {
		out = append(out, checker.File{Name: e.ID + ".toml", Text: string(e.Text)})
	}
	return out, nil
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
