package sqlite

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/book"
	"tenthpoint/internal/quantity"
)

func lb(n int64) quantity.Amount { return quantity.Int(n, quantity.Lb) }

// issued is a load with a ticket that brought so many pounds into a bin.
func issued(ticket int64, day, bin string, pounds int64) book.LoadRow {
	return book.LoadRow{
		ID: fmt.Sprintf("L%d", ticket), Phase: "issued", Direction: "in", Commodity: "corn", Bin: bin, Ticket: ticket, IssuedDay: day,
		Figures: map[string]quantity.Amount{"net": lb(pounds + 500), "settled": lb(pounds)},
	}
}

func out(r book.LoadRow) book.LoadRow {
	r.Direction = "out"
	r.Figures = map[string]quantity.Amount{"net": r.Figures["settled"]}
	return r
}

func ended(r book.LoadRow, day string) book.LoadRow {
	r.EndedDay = day
	return r
}

func putLoads(t testing.TB, b *Book, rows ...book.LoadRow) {
	t.Helper()
	write(t, b, func(tx *Tx) error {
		for _, r := range rows {
			if err := tx.PutLoad(r); err != nil {
				return err
			}
		}
		return nil
	})
}

func stockLines(t testing.TB, b *Book) []string {
	t.Helper()
	rows, err := b.StockDays(ctx, "", "")
	if err != nil {
		t.Fatal(err)
	}
	var lines []string
	for _, r := range rows {
		lines = append(lines, fmt.Sprintf("%s %s %s: +%s -%s back %s = %s", r.Commodity, r.Bin, r.Day, r.In.Figure(), r.Out.Figure(), r.Back.Figure(), r.Weight.Figure()))
	}
	return lines
}

func TestStockFollowsTickets(t *testing.T) {
	b := newBook(t)
	first, second := issued(1, "2026-10-01", "A", 1000), issued(2, "2026-10-01", "B", 200)
	carried := out(issued(3, "2026-10-03", "A", 300))
	steps := []struct {
		name string
		put  book.LoadRow
		want []string
	}{
		{"a ticket", first, []string{"corn A 2026-10-01: +1,000 -0 back 0 = 1,000"}},
		{"printed: the row is written again", first, []string{"corn A 2026-10-01: +1,000 -0 back 0 = 1,000"}},
		{"another bin", second, []string{"corn A 2026-10-01: +1,000 -0 back 0 = 1,000", "corn B 2026-10-01: +200 -0 back 0 = 200"}},
		{"void the same day", ended(second, "2026-10-01"), []string{"corn A 2026-10-01: +1,000 -0 back 0 = 1,000"}},
		{"outbound", carried, []string{"corn A 2026-10-01: +1,000 -0 back 0 = 1,000", "corn A 2026-10-03: +0 -300 back 0 = 700"}},
		{"void a day between", ended(first, "2026-10-02"), []string{
			"corn A 2026-10-01: +1,000 -0 back 0 = 1,000", "corn A 2026-10-02: +0 -0 back 1,000 = 0", "corn A 2026-10-03: +0 -300 back 0 = -300"}},
		{"void of what went out", ended(carried, "2026-10-04"), []string{
			"corn A 2026-10-01: +1,000 -0 back 0 = 1,000", "corn A 2026-10-02: +0 -0 back 1,000 = 0",
			"corn A 2026-10-03: +0 -300 back 0 = -300", "corn A 2026-10-04: +0 -0 back -300 = 0"}},
		{"on the yard", book.LoadRow{ID: "L9", Phase: "on the yard", Direction: "in", Commodity: "corn", Bin: "A"}, []string{
			"corn A 2026-10-01: +1,000 -0 back 0 = 1,000", "corn A 2026-10-02: +0 -0 back 1,000 = 0",
			"corn A 2026-10-03: +0 -300 back 0 = -300", "corn A 2026-10-04: +0 -0 back -300 = 0"}},
	}
	for _, step := range steps {
		putLoads(t, b, step.put)
		if got := stockLines(t, b); !slices.Equal(got, step.want) {
			t.Errorf("%s: got\n%q\nwant\n%q", step.name, got, step.want)
		}
	}
}

func TestStockBeforeADay(t *testing.T) {
	b := newBook(t)
	putLoads(t, b, issued(1, "2026-10-01", "A", 1000), issued(2, "2026-10-02", "A", 10), issued(3, "2026-10-01", "B", 5), ended(issued(4, "2026-10-01", "C", 7), "2026-10-02"))
	for day, want := range map[string]string{
		"2026-10-01": "[]", "2026-10-02": "[A 1,000 lb B 5 lb C 7 lb]", "2026-10-03": "[A 1,010 lb B 5 lb]",
	} {
		rows, err := b.StockBefore(ctx, day)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, r := range rows {
			got = append(got, r.Bin+" "+r.Weight.String())
		}
		if fmt.Sprint(got) != want {
			t.Errorf("before %s: %v, want %s", day, got, want)
		}
	}
}

// For tickets issued and ended in any order of days, the stored position equals the recalculated
// one.
func TestStockAgreesWithItsLoads(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, err := OpenScratch()
		if err != nil {
			t.Fatal(err)
		}
		defer b.Close()
		day := func(label string) string { return fmt.Sprintf("2026-10-%02d", rapid.IntRange(1, 6).Draw(t, label)) }
		rows := map[int64]book.LoadRow{}
		for range rapid.IntRange(1, 20).Draw(t, "acts") {
			n := int64(rapid.IntRange(1, 8).Draw(t, "ticket"))
			r, known := rows[n]
			switch {
			case !known:
				r = issued(n, day("issued"), rapid.SampledFrom([]string{"A", "B"}).Draw(t, "bin"), int64(rapid.IntRange(1, 900).Draw(t, "lb")))
				if rapid.Bool().Draw(t, "out") {
					r = out(r)
				}
			case r.EndedDay == "":
				r = ended(r, day("ended"))
			}
			rows[n] = r
			if err := b.inWrite(ctx, func(tx *Tx) error { return tx.PutLoad(r) }); err != nil {
				t.Fatal(err)
			}
		}
		problems, err := b.VerifyStock(ctx)
		if err != nil || len(problems) > 0 {
			t.Fatal(problems, err)
		}
	})
}

func TestVerifyStockFindsTampering(t *testing.T) {
	for name, statement := range map[string]string{
		"is written down as 900 lb; its tickets come to 1,000 lb": "UPDATE stock SET balance = '900 lb' WHERE bin = 'A'",
		"is missing from the book":                                "DELETE FROM stock WHERE bin = 'A'",
		"but no ticket moved anything there":                      "INSERT INTO stock SELECT commodity, 'Z', unit, day, inward, outward, back, balance FROM stock WHERE bin = 'A'",
	} {
		b := newBook(t)
		putLoads(t, b, issued(1, "2026-10-01", "A", 1000))
		force(t, b.write.conn, statement)
		problems, err := b.VerifyStock(ctx)
		if err != nil || len(problems) != 1 || !strings.Contains(problems[0].String(), name) {
			t.Errorf("%s: found %q %v", statement, problems, err)
		}
	}
}

// A book from before the position was kept has it after it is brought up to
// date, and so has the weigher's name.
func TestOldBookGetsItsPosition(t *testing.T) {
	b := newBook(t)
	putLoads(t, b, issued(1, "2026-10-01", "A", 1000), ended(issued(2, "2026-10-01", "A", 10), "2026-10-02"), out(issued(3, "2026-10-02", "A", 400)))
	want := stockLines(t, b)
	for _, index := range []string{"facts_kind", "facts_code", "loads_kept", "loads_in_place", "loads_sample"} {
		force(t, b.write.conn, "DROP INDEX "+index)
	}
	force(t, b.write.conn, "CREATE INDEX facts_kind ON facts (kind)")
	force(t, b.write.conn, "CREATE INDEX facts_at ON facts (at)")
	force(t, b.write.conn, "DROP INDEX loads_issued")
	force(t, b.write.conn, "CREATE INDEX loads_issued_day ON loads (issued_day)")
	force(t, b.write.conn, "CREATE INDEX loads_keep_until ON loads (keep_until)")
	force(t, b.write.conn, "DROP TABLE drafts")
	for _, table := range []string{"stock", "bin_days", "owned"} {
		force(t, b.write.conn, "DROP TABLE "+table)
	}
	for _, column := range []string{"weigher", "reissues", "reissued_by", "reissued_day"} {
		force(t, b.write.conn, "ALTER TABLE loads DROP COLUMN "+column)
	}
	force(t, b.write.conn, "DELETE FROM migrations WHERE number >= 3")
	again, err := Open(b.Path(), book.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer again.Close()
	if got := stockLines(t, again); !slices.Equal(got, want) || len(got) != 2 {
		t.Errorf("got %q, want %q", got, want)
	}
	if problems, err := again.VerifyStock(ctx); err != nil || len(problems) > 0 {
		t.Errorf("bins and owners: %q, %v", problems, err)
	}
}
