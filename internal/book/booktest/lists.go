package booktest

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/digest"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
)

// ListStore keeps everything that the program reads.
type ListStore interface {
	PositionStore
	Loads(context.Context, book.LoadFilter) ([]book.LoadRow, error)
	Search(context.Context, book.Search) ([]book.LoadRow, error)
	CountFound(context.Context, book.Search) (int64, error)
	OwnersFor(ctx context.Context, grower string) (map[string][]string, error)
	LastTicketBefore(ctx context.Context, day string) (int64, error)
	Shelf(context.Context, book.ShelfFilter) ([]book.ShelfRow, error)
	SamplesKept(ctx context.Context, from, to string) ([]book.KeptSamples, error)
	Records(ctx context.Context, kind string) ([]book.Record, error)
	Edition(ctx context.Context, sha string) (id, text string, err error)
	EditionHashes(context.Context) (map[string][]string, error)
	SaveDraft(book.Draft) error
	Drafts(context.Context) ([]book.Draft, error)
}

// Lists is the part of the suite for read models: rows of loads and their filters, records of the
// master data, editions, drafts.
func Lists[B ListStore](t *testing.T, e Engine[B]) {
	t.Run("loads", func(t *testing.T) { loads(t, e) })
	t.Run("loads of the same write", func(t *testing.T) { ownLoads(t, e) })
	t.Run("search", func(t *testing.T) { search(t, e) })
	t.Run("samples", func(t *testing.T) { samples(t, e) })
	t.Run("records", func(t *testing.T) { records(t, e) })
	t.Run("editions", func(t *testing.T) { editions(t, e) })
	t.Run("drafts", func(t *testing.T) { drafts(t, e) })
}

// yard is six loads: three tickets, one of them void, one refused, two waiting.
func yard() []book.LoadRow {
	first, second, third := ticket(1, "2026-10-01", "A", 1000), ticket(2, "2026-10-02", "B", 200), ticket(3, "2026-10-02", "A", 300)
	second.Grower, second.GrowerName, second.Owners = "102", "Birch", []string{"102", "101"}
	second.Disposition = "sold"
	third.Phase, third.EndedDay, third.Commodity = string(load.Void), "2026-10-03", "soybeans"
	refused := book.LoadRow{ID: "L4", Phase: string(load.TurnedAway), Direction: "in", Commodity: "corn", Grower: "101", GrowerName: "Ash", EndedDay: "2026-10-02", EndedAt: "2026-10-02T13:00:00Z"}
	waiting := book.LoadRow{ID: "L5", Phase: string(load.OnYard), Direction: "in", Commodity: "corn", Grower: "102", GrowerName: "Birch", Truck: "9", Corrects: 2, Sample: "S7"}
	ready := book.LoadRow{ID: "L6", Phase: string(load.Ready), Direction: "in", Commodity: "corn", Grower: "101", GrowerName: "Ash", Reissues: 3}
	return []book.LoadRow{first, second, third, refused, waiting, ready}
}

func ids(rows []book.LoadRow) (out []string) {
	for _, r := range rows {
		out = append(out, r.ID)
	}
	return out
}

// loadFilters are filters with what they choose of the yard.
var loadFilters = []struct {
	filter book.LoadFilter
	want   string
}{
	{book.LoadFilter{}, "L4 L5 L6 L1 L2 L3"},
	{book.LoadFilter{ID: "L2"}, "L2"},
	{book.LoadFilter{Ticket: 3}, "L3"},
	{book.LoadFilter{FromTicket: 2, Newest: true}, "L3 L2"},
	{book.LoadFilter{FromTicket: 1, ToTicket: 2}, "L1 L2"},
	{book.LoadFilter{Phases: []string{string(load.OnYard), string(load.Ready)}}, "L5 L6"},
	{book.LoadFilter{OnDay: "2026-10-02"}, "L4 L2 L3"},
	{book.LoadFilter{Undecided: true}, "L1"},
	{book.LoadFilter{FromDay: "2026-10-02", ToDay: "2026-10-02"}, "L2 L3"},
	{book.LoadFilter{EndedFrom: "2026-10-03", EndedTo: "2026-10-03"}, "L3"},
	{book.LoadFilter{Grower: "101", FromTicket: 1}, "L1 L2 L3"}, // L2 as one who shares
	{book.LoadFilter{Truck: "9"}, "L5"},
	{book.LoadFilter{Commodity: "soybeans"}, "L3"},
	{book.LoadFilter{Corrects: 2}, "L5"},
	{book.LoadFilter{Reissues: 3}, "L6"},
	{book.LoadFilter{Sample: "S7"}, "L5"},
	{book.LoadFilter{FromTicket: 1, Limit: 2}, "L1 L2"},
	{book.LoadFilter{FromTicket: 1, Text: "bir"}, "L2"},
	{book.LoadFilter{FromTicket: 1, Text: "soy"}, "L3"},
	{book.LoadFilter{FromTicket: 1, Text: "3"}, "L3"},
	{book.LoadFilter{Text: "%"}, ""},
	{book.LoadFilter{Text: "_"}, ""},
	{book.LoadFilter{Text: "!"}, ""},
}

func loads[B ListStore](t *testing.T, e Engine[B]) {
	b := e.New(t)
	put(t, b, yard()...)
	for _, c := range loadFilters {
		rows, err := b.Loads(ctx, c.filter)
		must(t, err)
		if got := strings.Join(ids(rows), " "); got != c.want {
			t.Errorf("%+v: %s, want %s", c.filter, got, c.want)
		}
		must(t, b.Write(ctx, func(tx book.Tx) error {
			inside, err := tx.Loads(c.filter)
			if got := strings.Join(ids(inside), " "); got != c.want {
				t.Errorf("%+v: inside %s, want %s", c.filter, got, c.want)
			}
			return err
		}))
	}
	one, err := b.Loads(ctx, book.LoadFilter{ID: "L2"})
	must(t, err)
	is, was := one[0], yard()[1]
	if !is.Figures["settled"].Equal(was.Figures["settled"]) || is.GrowerName != was.GrowerName || is.IssuedAt != was.IssuedAt || is.Engine.Number() != was.Engine.Number() {
		t.Errorf("%+v came back as %+v", was, is)
	}
	owners, err := b.OwnersFor(ctx, "101")
	if err != nil || fmt.Sprint(owners) != "map[L2:[102 101]]" {
		t.Errorf("shares of 101: %v, %v", owners, err)
	}
	all, err := b.Loads(ctx, book.LoadFilter{WithOwners: true, Grower: "101"})
	must(t, err)
	for _, r := range all {
		if want := owners[r.ID]; !slices.Equal(r.Owners, want) {
			t.Errorf("%s is read with the owners %v, want %v", r.ID, r.Owners, want)
		}
	}
	if last, err := b.LastTicketBefore(ctx, "2026-10-02"); last != 1 || err != nil {
		t.Errorf("the last ticket before the second is %d, %v", last, err)
	}
	must(t, b.Write(ctx, func(tx book.Tx) error {
		day, err := tx.LastIssuedDay()
		if day != "2026-10-02" {
			t.Errorf("the last day issued on is %s", day)
		}
		return err
	}))
}

// ownLoads asks a write for loads it has just written, or written anew.
func ownLoads[B ListStore](t *testing.T, e Engine[B]) {
	b := e.New(t)
	before := yard()
	for i := range before {
		before[i].Truck, before[i].GrowerName, before[i].Kept, before[i].KeepUntil = "1", "Elm", "Shelf A", "2026-10-09"
	}
	put(t, b, before[1:4]...)
	must(t, b.Write(ctx, func(tx book.Tx) error {
		for _, r := range yard() {
			r.Kept, r.KeepUntil = "Shelf B", "2026-10-10"
			if err := tx.PutLoad(r); err != nil {
				return err
			}
		}
		for _, c := range loadFilters {
			rows, err := tx.Loads(c.filter)
			if got := strings.Join(ids(rows), " "); got != c.want || err != nil {
				t.Errorf("%+v: %s, want %s; %v", c.filter, got, c.want, err)
			}
		}
		kept, err := tx.SamplesKept("2026-10-01", "2026-10-31")
		// The sample of the refused load, which is in no ticket's place, is still there.
		if err != nil || len(kept) != 1 || kept[0] != (book.KeptSamples{Until: "2026-10-10", Count: 6}) {
			t.Errorf("kept: %v, %v", kept, err)
		}
		if last, err := tx.LastTicketBefore("2026-10-02"); last != 1 || err != nil {
			t.Errorf("the last ticket before the second is %d, %v", last, err)
		}
		if day, err := tx.LastIssuedDay(); day != "2026-10-02" || err != nil {
			t.Errorf("the last day issued on is %s, %v", day, err)
		}
		return nil
	}))
}

func search[B ListStore](t *testing.T, e Engine[B]) {
	b := e.New(t)
	rows := yard()
	rows[1].Figures["moisture"], rows[1].Figures["drying"] = quantity.Of("15.5", quantity.Percent), quantity.Of("0", quantity.Dollar)
	rows[2].Figures["moisture"], rows[2].Figures["drying"] = quantity.Of("18", quantity.Percent), quantity.Of("19.9", quantity.Dollar)
	rows[0].OpenedAt, rows[1].OpenedAt, rows[2].OpenedAt = "2026-10-01T14:00:00Z", "2026-10-01T14:59:59Z", "2026-10-01T14:30:00Z"
	rows[1].Corrects = 99 // no truck came for it
	put(t, b, rows...)
	for _, c := range []struct {
		search book.Search
		want   string
	}{
		{book.Search{Limit: 10}, "L3 L2 L1"},
		{book.Search{Limit: 1}, "L3"},
		{book.Search{Limit: 10, Before: 3}, "L2 L1"},
		{book.Search{Limit: 10, Terms: []book.Term{{Text: "bir"}}}, "L2"},
		{book.Search{Limit: 10, Terms: []book.Term{{Text: "soy", Commodities: []string{"soybeans"}}}}, "L3"},
		{book.Search{Limit: 10, Terms: []book.Term{{Text: "%"}}}, ""},
		{book.Search{Limit: 10, Grower: "101"}, "L3 L2 L1"},
		{book.Search{Limit: 10, Refused: true}, "L4"},
		{book.Search{Limit: 10, MoistFrom: "15.5", MoistBelow: "18"}, "L2"},
		{book.Search{Limit: 10, MoistFrom: "15.5"}, "L3 L2"},
		{book.Search{Limit: 10, MoistBelow: "15.51"}, "L2"},
		{book.Search{Limit: 10, With: "drying"}, "L3"},
		{book.Search{Limit: 10, CameFrom: "2026-10-01T14:00:00Z", CameBefore: "2026-10-01T15:00:00Z"}, "L3 L1"},
		{book.Search{Limit: 10, Hour: "14"}, "L3 L2 L1"},
	} {
		rows, err := b.Search(ctx, c.search)
		must(t, err)
		if got := strings.Join(ids(rows), " "); got != c.want {
			t.Errorf("%+v: %s, want %s", c.search, got, c.want)
		}
	}
	if n, err := b.CountFound(ctx, book.Search{}); n != 3 || err != nil {
		t.Errorf("%d found in all, %v", n, err)
	}
}

func samples[B ListStore](t *testing.T, e Engine[B]) {
	b := e.New(t)
	rows := yard()[:3]
	for i := range rows {
		rows[i].Sample, rows[i].Kept, rows[i].KeepUntil = fmt.Sprint("S", i), "Shelf A", fmt.Sprintf("2026-10-0%d", 5+i/2)
	}
	put(t, b, rows...)
	kept, err := b.SamplesKept(ctx, "2026-10-05", "2026-10-06")
	if err != nil || len(kept) != 2 || kept[0] != (book.KeptSamples{Until: "2026-10-05", Count: 2}) {
		t.Errorf("kept: %v, %v", kept, err)
	}
	if due, err := b.Shelf(ctx, book.ShelfFilter{Until: "2026-10-05"}); err != nil || len(due) != 2 {
		t.Errorf("due: %v, %v", due, err)
	}
	must(t, b.Write(ctx, func(tx book.Tx) error {
		return tx.PutRecord(book.Record{Kind: "discarded", ID: rows[0].ID, Seq: 1, Body: []byte("{}")})
	}))
	if left, err := b.Shelf(ctx, book.ShelfFilter{Gone: "discarded"}); err != nil || len(left) != 2 || left[0].Load == rows[0].ID || left[1].Load == rows[0].ID {
		t.Errorf("left: %v, %v", left, err)
	}
}

func records[B ListStore](t *testing.T, e Engine[B]) {
	b := e.New(t)
	must(t, b.Write(ctx, func(tx book.Tx) error {
		for i, body := range []string{`{"name":"Ash"}`, `{"name":"Birch"}`, `{"name":"Ash and Sons"}`} {
			if err := tx.PutRecord(book.Record{Kind: "grower", ID: []string{"1", "2", "1"}[i], Seq: int64(i + 1), Body: []byte(body)}); err != nil {
				return err
			}
		}
		known, err := tx.HasRecord("grower", "2")
		unknown, _ := tx.HasRecord("grower", "3")
		last, _ := tx.LastRecord("grower")
		if !known || unknown || last != "2" {
			t.Errorf("inside: %v %v %q", known, unknown, last)
		}
		return err
	}))
	rows, err := b.Records(ctx, "grower")
	if err != nil || len(rows) != 2 || string(rows[0].Body) != `{"name":"Ash and Sons"}` || rows[0].Seq != 3 {
		t.Errorf("%v, %v", rows, err)
	}
}

func editions[B ListStore](t *testing.T, e Engine[B]) {
	const text, sha = "rates = \"15.0\"\r\n", "d8cb94bd5cbd0a4ea4f5ea0d9a4a0bf0f0cf3ab4cc3c4ee5d5b3a0a0d5b5f7c1"
	b := e.New(t)
	if err := b.Write(ctx, func(tx book.Tx) error { return tx.KeepEdition("corn", sha, text) }); err == nil {
		t.Error("an edition was kept under a hash that is not its text's")
	}
	if _, _, err := b.Edition(ctx, sha); err == nil {
		t.Error("there is an edition that was refused")
	}
	own := digest.Of(text)
	for range 2 { // the second time it is there
		must(t, b.Write(ctx, func(tx book.Tx) error { return tx.KeepEdition("corn", own, text) }))
	}
	if id, kept, err := b.Edition(ctx, own); id != "corn" || kept != text || err != nil {
		t.Errorf("%s: %q, %v", id, kept, err)
	}
	if all, err := b.EditionHashes(ctx); err != nil || fmt.Sprint(all) != fmt.Sprintf("map[corn:[%s]]", own) {
		t.Errorf("%v, %v", all, err)
	}
	for _, statement := range []string{"UPDATE editions SET text = 'other'", "DELETE FROM editions"} {
		if err := e.Raw(t, b, statement); err == nil {
			t.Errorf("%s: was allowed", statement)
		}
	}
}

func drafts[B ListStore](t *testing.T, e Engine[B]) {
	b := e.New(t)
	draft := book.Draft{Place: "load", ID: "L1", At: "2026-10-01T12:00:00Z", Who: "A. Clerk", Texts: `{"truck":"7"}`}
	must(t, b.SaveDraft(draft))
	draft.Texts = `{"truck":"71"}`
	must(t, b.SaveDraft(draft))
	other := book.Draft{Place: "bench", ID: "L1", Texts: "{}"}
	must(t, b.Write(ctx, func(tx book.Tx) error { return tx.SaveDraft(other) }))
	if all, err := b.Drafts(ctx); err != nil || len(all) != 2 || all[0] != other && all[1] != other || all[0] != draft && all[1] != draft {
		t.Errorf("%v, %v", all, err)
	}
	must(t, b.Write(ctx, func(tx book.Tx) error { return tx.DropDrafts("L1") }))
	if all, err := b.Drafts(ctx); err != nil || len(all) != 0 {
		t.Errorf("dropped: %v, %v", all, err)
	}
}
