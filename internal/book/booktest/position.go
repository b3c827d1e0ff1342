package booktest

import (
	"context"
	"fmt"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// PositionStore keeps the position beside the journal.
type PositionStore interface {
	Store
	StockBefore(ctx context.Context, day string) ([]book.StockRow, error)
	StockDays(ctx context.Context, from, to string) ([]book.StockRow, error)
	VerifyStock(context.Context) ([]message.Text, error)
}

// Position is the part of the suite about one read model: the position follows the rows of loads,
// in the same write, and can be recalculated.
func Position[B PositionStore](t *testing.T, e Engine[B]) {
	t.Run("follows the tickets", func(t *testing.T) { follows(t, e) })
	t.Run("all or nothing", func(t *testing.T) { positionGivenUp(t, e) })
	t.Run("an altered row is found", func(t *testing.T) { alteredPosition(t, e) })
}

func position(t testing.TB, b PositionStore, from, to string) []string {
	t.Helper()
	rows, err := b.StockDays(ctx, from, to)
	must(t, err)
	var out []string
	for _, r := range rows {
		out = append(out, fmt.Sprintf("%s %s: +%s -%s back %s = %s", r.Bin, r.Day, r.In.Figure(), r.Out.Figure(), r.Back.Figure(), r.Weight))
	}
	return out
}

func follows[B PositionStore](t *testing.T, e Engine[B]) {
	b := e.New(t)
	first, second := ticket(1, "2026-10-01", "A", 1000), ticket(2, "2026-10-01", "B", 200)
	carried := ticket(3, "2026-10-03", "A", 300)
	carried.Direction, carried.Figures = "out", map[string]quantity.Amount{"net": quantity.Int(300, quantity.Lb)}
	ended := func(r book.LoadRow, day string) book.LoadRow { r.EndedDay = day; return r }
	for _, step := range []struct {
		name string
		row  book.LoadRow
		want []string
	}{
		{"a ticket", first, []string{"A 2026-10-01: +1,000 -0 back 0 = 1,000 lb"}},
		{"the row written again", first, []string{"A 2026-10-01: +1,000 -0 back 0 = 1,000 lb"}},
		{"another bin", second, []string{"A 2026-10-01: +1,000 -0 back 0 = 1,000 lb", "B 2026-10-01: +200 -0 back 0 = 200 lb"}},
		{"void on its day", ended(second, "2026-10-01"), []string{"A 2026-10-01: +1,000 -0 back 0 = 1,000 lb"}},
		{"grain that leaves", carried, []string{"A 2026-10-01: +1,000 -0 back 0 = 1,000 lb", "A 2026-10-03: +0 -300 back 0 = 700 lb"}},
		{"void on a day between", ended(first, "2026-10-02"), []string{"A 2026-10-01: +1,000 -0 back 0 = 1,000 lb", "A 2026-10-02: +0 -0 back 1,000 = 0 lb", "A 2026-10-03: +0 -300 back 0 = -300 lb"}},
	} {
		put(t, b, step.row)
		same(t, step.name, position(t, b, "", ""), step.want)
	}
	same(t, "some days", position(t, b, "2026-10-02", "2026-10-02"), []string{"A 2026-10-02: +0 -0 back 1,000 = 0 lb"})
	before, err := b.StockBefore(ctx, "2026-10-02")
	if err != nil || len(before) != 1 || before[0].Weight.String() != "1,000 lb" {
		t.Errorf("in the evening of the first: %v, %v", before, err)
	}
	if empty, err := b.StockBefore(ctx, "2026-10-03"); err != nil || len(empty) != 0 {
		t.Errorf("an empty bin is in the position: %v, %v", empty, err)
	}
	sound(t, b)
}

func sound(t testing.TB, b PositionStore) {
	t.Helper()
	problems, err := b.VerifyStock(ctx)
	if err != nil || len(problems) > 0 {
		t.Errorf("the position is not sound: %v, %v", problems, err)
	}
}

func positionGivenUp[B PositionStore](t *testing.T, e Engine[B]) {
	b := e.New(t)
	put(t, b, ticket(1, "2026-10-01", "A", 1000))
	err := b.Write(ctx, func(tx book.Tx) error {
		if err := tx.PutLoad(ticket(2, "2026-10-01", "A", 70)); err != nil {
			return err
		}
		inside, err := tx.StockBefore("2026-10-02")
		if err != nil || len(inside) != 1 || inside[0].Weight.String() != "1,070 lb" {
			t.Errorf("inside: %v, %v", inside, err)
		}
		return context.Canceled
	})
	if err == nil {
		t.Error("the write was kept")
	}
	same(t, "afterwards", position(t, b, "", ""), []string{"A 2026-10-01: +1,000 -0 back 0 = 1,000 lb"})
	sound(t, b)
}

func alteredPosition[B PositionStore](t *testing.T, e Engine[B]) {
	b := e.New(t)
	put(t, b, ticket(1, "2026-10-01", "A", 1000))
	must(t, e.Raw(t, b, "UPDATE stock SET balance = '999 lb'"))
	problems, err := b.VerifyStock(ctx)
	if err != nil || len(problems) != 1 {
		t.Errorf("%v, %v", problems, err)
	}
}
