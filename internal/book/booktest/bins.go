package booktest

import (
	"context"
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/book"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
)

// BinStore keeps what lies in the bins, and whose it is, beside the position.
type BinStore interface {
	PositionStore
	BinsBefore(ctx context.Context, day string) ([]bin.Row, error)
	BinBefore(ctx context.Context, name, day string) ([]bin.Row, error)
	BinDays(ctx context.Context, name, from, to string) ([]bin.Row, error)
	Movements(ctx context.Context, from, to string) ([]bin.Movement, error)
	LinesBefore(ctx context.Context, day string) ([]book.StockRow, error)
}

// Bins is the part of the suite about what lies in the bins: rows follow the tickets and the
// movements in the same write, and can be worked out anew.
func Bins[B BinStore](t *testing.T, e Engine[B]) {
	t.Run("follow tickets and movements", func(t *testing.T) { binsFollow(t, e) })
	t.Run("a late ticket runs through later days", func(t *testing.T) { lateTicket(t, e) })
	t.Run("any order of acts", func(t *testing.T) { anyOrder(t, e) })
	t.Run("owners follow settlement sheets", func(t *testing.T) { ownersFollow(t, e) })
	t.Run("an altered row is found", func(t *testing.T) { alteredBins(t, e) })
}

// movement is a transfer of so many pounds.
func movement(number int64, day, from, to string, pounds int64) bin.Movement {
	weight := quantity.Int(pounds, quantity.Lb)
	return bin.Movement{
		Number: number, What: bin.Transfer, Day: quantity.MustDate(day), Commodity: "corn", By: "A. Clerk",
		From: []bin.Weighed{{Bin: from, Weight: weight}}, Into: []bin.Weighed{{Bin: to, Weight: weight}},
	}
}

func move(b Store, m bin.Movement) error {
	return b.Write(ctx, func(tx book.Tx) error { return moveIn(tx, m) })
}

func moveIn(tx book.Tx, m bin.Movement) error {
	if err := putRecord(tx, fmt.Sprintf("%s/%08d", m.Day, m.Number), m); err != nil {
		return err
	}
	return tx.MoveGrain(m)
}

// tested is a ticket with a moisture.
func tested(r book.LoadRow, moisture string) book.LoadRow {
	r.Figures["moisture"] = quantity.Of(moisture, quantity.Percent)
	return r
}

func inBins(t testing.TB, b BinStore, day string) []string {
	t.Helper()
	rows, err := b.BinsBefore(ctx, day)
	must(t, err)
	var out []string
	for _, r := range rows {
		text := fmt.Sprintf("%s: %s", r.Bin, r.Close.Balance())
		if m, known := r.Close.Grain().Mean(grain.Moisture); known {
			text += fmt.Sprintf(" at %s", m)
		}
		out = append(out, text)
	}
	return out
}

func binsFollow[B BinStore](t *testing.T, e Engine[B]) {
	b := e.New(t)
	// 1,500 lb net at 15 % by way of pit P on to A, 1,500 lb at 18 % straight into B.
	first, second := tested(ticket(1, "2026-10-01", "P", 1000), "15"), tested(ticket(2, "2026-10-01", "B", 1000), "18")
	first.Onward = "A"
	put(t, b, first, second)
	same(t, "tickets", inBins(t, b, "2026-10-02"), []string{"A: 1,500 lb at 15 %", "B: 1,500 lb at 18 %"})
	must(t, move(b, movement(1, "2026-10-02", "B", "A", 1500)))
	same(t, "a movement", inBins(t, b, "2026-10-03"), []string{"A: 3,000 lb at 16.5 %", "B: 0 lb"})
	same(t, "the evening before", inBins(t, b, "2026-10-02"), []string{"A: 1,500 lb at 15 %", "B: 1,500 lb at 18 %"})
	second.EndedDay = "2026-10-03"
	put(t, b, second)
	same(t, "void on a later day", inBins(t, b, "2026-10-04"), []string{"A: 3,000 lb at 16.5 %", "B: -1,500 lb"})
	moves, err := b.Movements(ctx, "2026-10-02", "2026-10-02")
	if err != nil || len(moves) != 1 || moves[0].Number != 1 {
		t.Errorf("the movements of the day: %+v, %v", moves, err)
	}
	days, err := b.BinDays(ctx, "B", "", "")
	if err != nil || len(days) != 3 || !days[1].MovedOut.Equal(quantity.Int(1500, quantity.Lb)) {
		t.Errorf("the days of B: %+v, %v", days, err)
	}
	lines, err := b.LinesBefore(ctx, "2026-10-04")
	must(t, err)
	sums := map[string]string{}
	for _, l := range lines {
		sums[l.Bin] = l.Weight.String()
	}
	if len(sums) != 2 || sums["undecided"] != "1,000 lb" || sums["quality"] != "500 lb" {
		t.Errorf("whose it is: %v", sums)
	}
	sound(t, b)
}

func lateTicket[B BinStore](t *testing.T, e Engine[B]) {
	b := e.New(t)
	put(t, b, tested(ticket(1, "2026-10-02", "A", 1000), "15"))
	must(t, move(b, movement(1, "2026-10-05", "A", "B", 500)))
	put(t, b, tested(ticket(2, "2026-10-01", "A", 1000), "17"))
	same(t, "afterwards", inBins(t, b, ""), nil)
	same(t, "on the last day", inBins(t, b, "2026-10-06"), []string{"A: 2,500 lb at 16.2 %", "B: 500 lb at 15 %"})
	sound(t, b)
}

// anyOrder holds the bins against those worked out anew, for tickets and movements in any order of
// days, several of them in one write. What a write reads at its end is what the book holds after it.
func anyOrder[B BinStore](t *testing.T, e Engine[B]) {
	rapid.Check(t, func(r *rapid.T) {
		b := e.New(t)
		defer b.Close()
		rows := map[int64]book.LoadRow{}
		for n := range rapid.IntRange(1, 5).Draw(r, "writes") {
			day := drawnDay(r, "read")
			var stock []book.StockRow
			var bins []bin.Row
			var moves []bin.Movement
			err := b.Write(ctx, func(tx book.Tx) (err error) {
				for m := range rapid.IntRange(1, 5).Draw(r, "acts") {
					if err := anyAct(r, tx, rows, int64(10*n+m+1)); err != nil {
						return err
					}
				}
				if stock, err = tx.StockBefore(day); err != nil {
					return err
				}
				if bins, err = tx.BinsBefore(day); err != nil {
					return err
				}
				if moves, err = tx.MovementsOn(day); err != nil {
					return err
				}
				return oneByOne(bins, func(name string) ([]bin.Row, error) { return tx.BinBefore(name, day) })
			})
			if err != nil {
				r.Fatal(err)
			}
			afterStock, err := b.StockBefore(ctx, day)
			if err != nil || !slices.EqualFunc(stock, afterStock, func(a, b book.StockRow) bool { return a.SamePlace(b) && a.Weight.Equal(b.Weight) }) {
				r.Fatalf("the position within the write was %v, after it is %v; %v", stock, afterStock, err)
			}
			afterBins, err := b.BinsBefore(ctx, day)
			if err != nil || !slices.EqualFunc(bins, afterBins, equalBins) {
				r.Fatalf("the bins within the write were %v, after it are %v; %v", bins, afterBins, err)
			}
			afterMoves, err := b.Movements(ctx, day, day)
			if err != nil || !slices.EqualFunc(moves, afterMoves, func(a, b bin.Movement) bool { return a.Number == b.Number }) {
				r.Fatalf("the movements within the write were %v, after it are %v; %v", moves, afterMoves, err)
			}
			if err := oneByOne(afterBins, func(name string) ([]bin.Row, error) { return b.BinBefore(ctx, name, day) }); err != nil {
				r.Fatal(err)
			}
		}
		problems, err := b.VerifyStock(ctx)
		if err != nil || len(problems) > 0 {
			r.Fatal(problems, err)
		}
	})
}

func equalBins(a, b bin.Row) bool {
	return a.Place == b.Place && a.Day == b.Day && book.EncodeBinRow(a) == book.EncodeBinRow(b)
}

// oneByOne asks for each bin alone, and wants what all of them together are.
func oneByOne(all []bin.Row, of func(name string) ([]bin.Row, error)) error {
	for _, name := range []string{"A", "B", "C"} {
		want := slices.DeleteFunc(slices.Clone(all), func(r bin.Row) bool { return r.Bin != name })
		if is, err := of(name); err != nil || !slices.EqualFunc(is, want, equalBins) {
			return fmt.Errorf("bin %s alone is %v, among all %v; %w", name, is, want, err)
		}
	}
	return nil
}

func drawnDay(r *rapid.T, label string) string {
	return fmt.Sprintf("2026-10-%02d", rapid.IntRange(1, 5).Draw(r, label))
}

// anyAct moves grain, issues a ticket or ends one.
func anyAct(r *rapid.T, tx book.Tx, rows map[int64]book.LoadRow, n int64) error {
	place := func(label string) string { return rapid.SampledFrom([]string{"A", "B", "C"}).Draw(r, label) }
	pounds := int64(rapid.IntRange(1, 900).Draw(r, "lb"))
	if rapid.IntRange(0, 2).Draw(r, "act") == 0 {
		return moveIn(tx, movement(n, drawnDay(r, "moved"), place("from"), place("to"), pounds))
	}
	number := int64(rapid.IntRange(1, 6).Draw(r, "ticket"))
	row, known := rows[number]
	switch {
	case !known:
		row = tested(ticket(number, drawnDay(r, "issued"), place("bin"), pounds), fmt.Sprint(rapid.IntRange(11, 24).Draw(r, "moisture")))
		if rapid.Bool().Draw(r, "out") {
			row.Direction = "out"
		}
	case row.EndedDay == "":
		row.EndedDay = drawnDay(r, "ended")
	}
	rows[number] = row
	return tx.PutLoad(row)
}

func alteredBins[B BinStore](t *testing.T, e Engine[B]) {
	for _, statement := range []string{
		"UPDATE bin_days SET body = replace(body, '1500', '1499')",
		"DELETE FROM bin_days",
		"UPDATE owned SET balance = '1 lb' WHERE line = 'undecided'",
		"INSERT INTO bin_days SELECT 'Z', commodity, unit, day, body FROM bin_days",
	} {
		b := e.New(t)
		put(t, b, ticket(1, "2026-10-01", "A", 1000))
		must(t, e.Raw(t, b, statement))
		problems, err := b.VerifyStock(ctx)
		if err != nil || len(problems) != 1 {
			t.Errorf("%s: %v, %v", statement, problems, err)
		}
	}
}
