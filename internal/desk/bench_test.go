package desk_test

import (
	"fmt"
	"strings"
	"testing"

	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/desk"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/store"
)

// hugeBook is a desk on a book of n loads, loadsADay a day, with their position.
// The rows are copies of one real load, made by SQL; the journal has only that
// one.
func hugeBook(b *testing.B, n, loadsADay int) (*scene, quantity.Date) {
	b.Helper()
	s := newScene(b)
	id, _ := s.ticket()
	first := quantity.MustDate("2020-01-01")
	columns, values := copiedColumns(b, s.book, map[string]string{
		"id": "'L' || i", "grower": "'G' || (i % 300)", "bin": "'Bin ' || (i % 12)", "ticket": "i",
		"day":        fmt.Sprintf("date('2020-01-01', '+' || (i / %d) || ' days')", loadsADay),
		"issued_day": fmt.Sprintf("date('2020-01-01', '+' || (i / %d) || ' days')", loadsADay),
	})
	must(b, s.book.Write(ctx, func(tx *store.Tx) error {
		_, err := tx.Exec(`INSERT INTO loads (`+columns+`)
			WITH RECURSIVE n (i) AS (VALUES (2) UNION ALL SELECT i + 1 FROM n WHERE i < ?)
			SELECT `+values+` FROM n, loads WHERE loads.id = ?`, n, id)
		if err != nil {
			return err
		}
		_, err = tx.Exec(`INSERT INTO stock
			SELECT commodity, bin, 'lb', issued_day, (count(*) * 26872) || ' lb', '0 lb', '0 lb', (sum(count(*)) OVER (PARTITION BY commodity, bin ORDER BY issued_day) * 26872) || ' lb'
			FROM loads WHERE id <> ? GROUP BY commodity, bin, issued_day`, id)
		return err
	}))
	return s, first.AddDays(n / loadsADay / 2)
}

// copiedColumns are the columns of the loads and what a copy of a row has in
// each: an expression over the number i where there is one, else the same.
func copiedColumns(b *testing.B, book *store.Book, made map[string]string) (columns, values string) {
	b.Helper()
	rows, err := book.Read().Query("SELECT name FROM pragma_table_info('loads')")
	must(b, err)
	defer rows.Close()
	var names, copies []string
	for rows.Next() {
		var name string
		must(b, rows.Scan(&name))
		value, is := made[name]
		if !is {
			value = "loads." + name
		}
		names, copies = append(names, name), append(copies, value)
		delete(made, name)
	}
	must(b, rows.Err())
	if len(made) > 0 {
		b.Fatalf("the loads have no columns %v", made)
	}
	return strings.Join(names, ", "), strings.Join(copies, ", ")
}

// BenchmarkDaySheet is one day out of the middle of a large book: the sheet read
// and added up, then its paper composed. Beside it stands the bare SQL query for
// the day's rows, with nothing done to them.
func BenchmarkDaySheet(b *testing.B) {
	sizes := []int{10_000, 1_000_000}
	if testing.Short() {
		sizes = sizes[:1]
	}
	for _, n := range sizes {
		s, day := hugeBook(b, n, 500)
		b.Run(fmt.Sprintf("%d loads/bare SQL", n), func(b *testing.B) {
			for b.Loop() {
				bareDay(b, s.Desk, day)
			}
		})
		b.Run(fmt.Sprintf("%d loads/sheet", n), func(b *testing.B) {
			for b.Loop() {
				sheet, err := s.DaySheet(ctx, day)
				must(b, err)
				if sheet.Numbers.Issued != 500 || len(sheet.Moves) != 12 {
					b.Fatal(sheet.Numbers, len(sheet.Moves))
				}
			}
		})
		b.Run(fmt.Sprintf("%d loads/sheet and paper", n), func(b *testing.B) {
			for b.Loop() {
				sheet, err := s.DaySheet(ctx, day)
				must(b, err)
				if len(daysheet.Compose(sheet, s.Profile()).Blocks) == 0 {
					b.Fatal("no paper")
				}
			}
		})
	}
}

func bareDay(b *testing.B, d *desk.Desk, day quantity.Date) {
	rows, err := d.Book().Read().Query("SELECT id, ticket, commodity, bin, figures FROM loads WHERE issued_day = ? ORDER BY ticket", day.String())
	must(b, err)
	defer rows.Close()
	n := 0
	for rows.Next() {
		var id, commodity, bin, figures string
		var ticket int64
		must(b, rows.Scan(&id, &ticket, &commodity, &bin, &figures))
		n++
	}
	if n != 500 {
		b.Fatal(n)
	}
}
