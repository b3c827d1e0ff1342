package sqlite

import (
	"fmt"
	"maps"
	"strings"
	"tenthpoint/internal/book"
	"testing"
)

// shelved is a load with a sample on the shelf.
func shelved(id string, ticket int64, until string) book.LoadRow {
	return book.LoadRow{ID: id, Phase: "issued", Ticket: ticket, Sample: "S" + id, Kept: "A1", KeepUntil: until}
}

func corrects(r book.LoadRow, ticket int64) book.LoadRow {
	r.Corrects = ticket
	return r
}

func corrected(r book.LoadRow) book.LoadRow {
	r.Phase = "corrected"
	return r
}

func reissues(r book.LoadRow, ticket int64) book.LoadRow {
	r.Reissues = ticket
	return r
}

func refused(r book.LoadRow) book.LoadRow {
	r.Phase = "refused"
	return r
}

func void(r book.LoadRow, by int64) book.LoadRow {
	r.Phase, r.ReissuedBy = "void", by
	return r
}

func TestShelf(t *testing.T) {
	b := newBook(t)
	nothing := book.LoadRow{ID: "L5", Phase: "issued", Ticket: 5, Sample: "S5"}
	putLoads(t, b, corrected(shelved("L1", 1, "2026-10-04")), corrects(shelved("L10", 4, "2026-10-04"), 1),
		shelved("L2", 2, "2026-10-05"), shelved("L9", 0, "2026-10-03"), shelved("L3", 3, "2026-10-06"), nothing,
		void(shelved("L20", 20, "2026-10-06"), 22), void(shelved("L21", 21, "2026-10-06"), 0), reissues(shelved("L22", 22, "2026-10-06"), 20),
		refused(reissues(shelved("L23", 0, "2026-10-05"), 21)), refused(shelved("L24", 0, "2026-10-06")))
	for until, want := range map[string]string{
		"": "L2 L3 L10 L21 L22 L9 L24", "2026-10-04": "L10 L9", "2026-10-05": "L2 L10 L9", "2026-10-02": "",
	} {
		rows, err := b.Shelf(ctx, book.ShelfFilter{Until: until})
		if err != nil {
			t.Fatal(err)
		}
		var ids []string
		for _, r := range rows {
			ids = append(ids, r.Load)
		}
		if got := strings.Join(ids, " "); got != want {
			t.Errorf("kept no longer than %q: %s, want %s", until, got, want)
		}
	}
}

func TestOrigins(t *testing.T) {
	b := newBook(t)
	putLoads(t, b, corrected(shelved("L1", 1, "")), corrected(corrects(shelved("L2", 2, ""), 1)), corrects(shelved("L3", 3, ""), 2),
		shelved("L4", 4, ""), corrects(shelved("L5", 0, ""), 4),
		void(shelved("L6", 6, ""), 7), corrected(reissues(shelved("L7", 7, ""), 6)), corrects(shelved("L8", 8, ""), 7))
	got, err := b.Origins(ctx)
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]string{"L2": "L1", "L3": "L1", "L5": "L4", "L7": "L6", "L8": "L6"}
	if !maps.Equal(got, want) {
		t.Errorf("origins %s, want %s", fmt.Sprint(got), fmt.Sprint(want))
	}
}
