package postgres

import (
	"encoding/json"
	"maps"
	"slices"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/quantity"
)

// pending is a write that is prepared and not yet sent to append.
type pending struct {
	facts    []journal.Fact
	deskAt   string // the desk's own clock, where it differs from the server's
	series   map[string]int64
	editions map[string]edition // by hash
	loads    map[string]book.LoadRow
	records  map[recordKey]book.Record
	stock    overlay[book.StockKey, book.StockRow]
	owned    overlay[book.StockKey, book.StockRow]
	bins     overlay[bin.Place, bin.Row]
	drafts   map[draftKey]book.Draft // without texts where it goes
	undone   []string                // all drafts of these ids go, before any is saved
}

type recordKey struct{ kind, id string }

type draftKey struct{ place, id string }

func newPending() pending {
	stockAt := func(r book.StockRow) (book.StockKey, string) {
		return book.StockKey{Commodity: r.Commodity, Bin: r.Bin, Unit: r.Weight.Unit()}, r.Day
	}
	return pending{
		series: map[string]int64{}, editions: map[string]edition{}, loads: map[string]book.LoadRow{}, records: map[recordKey]book.Record{},
		stock: newOverlay(stockAt), owned: newOverlay(stockAt),
		bins:   newOverlay(func(r bin.Row) (bin.Place, string) { return r.Place, r.Day.String() }),
		drafts: map[draftKey]book.Draft{},
	}
}

// isEmpty reports whether there is nothing to do.
func (p pending) isEmpty() bool {
	return len(p.facts)+len(p.series)+len(p.editions)+len(p.loads)+len(p.records)+len(p.drafts)+len(p.undone)+
		len(p.stock.changed)+len(p.owned.changed)+len(p.bins.changed) == 0
}

// A record is a row of a table, by column.
type record = map[string]any

// act is everything as append takes it: rows by table, and by "_was" the keys of rows to be replaced
// or taken away.
func (p pending) act() (string, error) {
	rows := map[string][]record{}
	put := func(table string, r record) { rows[table] = append(rows[table], r) }
	for _, f := range p.facts {
		put("facts", record{"seq": f.Seq, "at": f.At, "who": f.Who, "desk": f.Desk, "kind": f.Kind, "subject": f.Subject,
			"body": string(f.Body), "prev": f.Prev, "hash": f.Hash, "desk_at": p.deskAt})
	}
	for _, name := range slices.Sorted(maps.Keys(p.series)) {
		put("series", record{"name": name, "last": p.series[name]})
	}
	for _, e := range p.editions {
		put("editions", record{"sha256": e.sha, "id": e.id, "text": e.text})
	}
	for _, r := range p.loads {
		row, err := loadRecord(r)
		if err != nil {
			return "", err
		}
		put("loads", row)
		for i, owner := range r.Owners {
			put("owners", record{"load": r.ID, "place": i + 1, "grower": owner})
		}
	}
	for _, r := range p.records {
		put("standing", record{"kind": r.Kind, "id": r.ID, "seq": r.Seq, "body": string(r.Body)})
	}
	p.grain(put)
	for _, id := range p.undone {
		put("drafts_of", record{"id": id})
	}
	for key, d := range p.drafts {
		put("drafts_was", record{"place": key.place, "id": key.id})
		if d.Texts != "" {
			put("drafts", record{"place": d.Place, "id": d.ID, "at": d.At, "who": d.Who, "texts": d.Texts})
		}
	}
	text, err := json.Marshal(rows)
	return string(text), err
}

// grain puts the rows of stock, lines and bins.
func (p pending) grain(put func(string, record)) {
	for _, t := range []struct {
		balances
		overlay[book.StockKey, book.StockRow]
	}{{stock, p.stock}, {owned, p.owned}} {
		for key, days := range t.changed {
			for day, r := range days {
				at := record{"commodity": key.Commodity, t.place: key.Bin, "unit": key.Unit.String(), "day": day}
				put(t.table+"_was", at)
				if r != nil {
					row := maps.Clone(at)
					row["inward"], row["outward"], row["back"], row["balance"] = stored(r.In), stored(r.Out), stored(r.Back), stored(r.Weight)
					put(t.table, row)
				}
			}
		}
	}
	for place, days := range p.bins.changed {
		for day, r := range days {
			at := record{"bin": place.Bin, "commodity": place.Commodity, "unit": place.Unit.String(), "day": day}
			put("bin_days_was", at)
			if r != nil {
				row := maps.Clone(at)
				row["body"] = book.EncodeBinRow(*r)
				put("bin_days", row)
			}
		}
	}
}

func stored(a quantity.Amount) string {
	text, _ := a.MarshalText() // it has no way to fail
	return string(text)
}
