package booktest

import (
	"maps"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/opening"
	"tenthpoint/internal/paysheet"
	line "tenthpoint/internal/position"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/receipt"
	"tenthpoint/internal/title"
)

// sheet is a settlement sheet of some pounds of one ticket.
func sheet(day string, under title.Under, pounds int64) paysheet.Sheet {
	weight := quantity.Int(pounds, quantity.Lb)
	bushels := quantity.Int(1, quantity.Bushel)
	return paysheet.Sheet{
		Number: 1, Day: quantity.MustDate(day), Grower: "101", Commodity: "corn", By: "A. Manager",
		Lines: []paysheet.Line{{Ticket: 1, Whole: bushels, From: quantity.Zero(quantity.Bushel), Quantity: bushels, Under: under, Weight: &weight}},
	}
}

func settle(b Store, id string, was, is journal.Kinded) error {
	return b.Write(ctx, func(tx book.Tx) error {
		if err := putRecord(tx, id, is); err != nil {
			return err
		}
		return tx.MoveOwners(was, is)
	})
}

// ownersFollow: grain that is settled is bought, a part of it where a part is, and is its owner's
// again when the sheet is void.
func ownersFollow[B BinStore](t *testing.T, e Engine[B]) {
	b := e.New(t)
	stored := ticket(1, "2026-10-01", "A", 1000)
	stored.Disposition = string(title.OpenStorage)
	put(t, b, stored)
	owned := func(day string, want map[string]string) {
		t.Helper()
		lines, err := b.LinesBefore(ctx, day)
		must(t, err)
		sums := map[string]string{}
		for _, l := range lines {
			if l.Weight.Sign() != 0 {
				sums[l.Bin] = l.Weight.String()
			}
		}
		if !maps.Equal(sums, want) {
			t.Errorf("before %s: %v; want %v", day, sums, want)
		}
	}
	made := sheet("2026-10-05", title.OpenStorage, 400)
	must(t, settle(b, made.ID(), nil, made))
	owned("2026-10-05", map[string]string{"stored": "1,000 lb", "quality": "500 lb"})
	owned("2026-10-06", map[string]string{"stored": "600 lb", "sold": "400 lb", "quality": "500 lb"})
	sound(t, b)
	void := made
	void.Voided = &paysheet.Voided{Day: quantity.MustDate("2026-10-07"), By: "A. Manager", Reason: "price"}
	must(t, settle(b, void.ID(), made, void))
	owned("2026-10-07", map[string]string{"stored": "600 lb", "sold": "400 lb", "quality": "500 lb"})
	owned("2026-10-08", map[string]string{"stored": "1,000 lb", "quality": "500 lb"})
	sound(t, b)

	issued := receipt.Receipt{Number: 1, Day: quantity.MustDate("2026-10-08"), By: "A. Manager", Grower: "101", Commodity: "corn", Negotiable: true,
		Lines: []receipt.Line{{Ticket: 1, Quantity: quantity.Int(1, quantity.Bushel), Weight: quantity.Int(300, quantity.Lb), Held: line.Storage}}}
	must(t, settle(b, issued.ID(), nil, issued))
	owned("2026-10-09", map[string]string{"stored": "700 lb", "negotiable": "300 lb", "quality": "500 lb"})
	surrendered, err := issued.End(receipt.Ended{How: receipt.Surrendered, Day: quantity.MustDate("2026-10-10"), By: "A. Manager"})
	must(t, err)
	must(t, settle(b, issued.ID(), issued, surrendered))
	owned("2026-10-10", map[string]string{"stored": "700 lb", "negotiable": "300 lb", "quality": "500 lb"})
	owned("2026-10-11", map[string]string{"stored": "1,000 lb", "quality": "500 lb"})
	sound(t, b)

	opened := opening.Opening{Number: 1, Day: quantity.MustDate("2026-10-12"), By: "A. Manager",
		Lots:  []opening.Lot{{Number: opening.First, Grower: "101", Commodity: "corn", Weight: quantity.Int(200, quantity.Lb), Terms: title.Terms{Under: title.GrainBank}}},
		Owned: []opening.Owned{{Line: line.Sold, Commodity: "corn", Weight: quantity.Int(50, quantity.Lb)}}}
	must(t, settle(b, opened.ID(), nil, opened))
	owned("2026-10-13", map[string]string{"stored": "1,000 lb", "quality": "500 lb", "bank": "200 lb", "sold": "50 lb"})
	sound(t, b)
	back := opened
	back.Ended = &opening.Ended{Day: quantity.MustDate("2026-10-14"), By: "A. Manager"}
	must(t, settle(b, opened.ID(), opened, back))
	owned("2026-10-14", map[string]string{"stored": "1,000 lb", "quality": "500 lb", "bank": "200 lb", "sold": "50 lb"})
	owned("2026-10-15", map[string]string{"stored": "1,000 lb", "quality": "500 lb"})
	sound(t, b)
}
