package scalehouse_test

import (
	"fmt"
	"testing"

	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
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
	must(b, s.book.Write(ctx, func(tx *store.Tx) error {
		_, err := tx.Exec(`INSERT INTO loads
			WITH RECURSIVE n (i) AS (VALUES (2) UNION ALL SELECT i + 1 FROM n WHERE i < ?)
			SELECT 'L' || i, phase, direction, date('2020-01-01', '+' || (i / ?) || ' days'), opened_at, commodity, 'G' || (i % 300), grower_name, truck,
				'Bin ' || (i % 12), disposition, contract, i, issued_at, date('2020-01-01', '+' || (i / ?) || ' days'), ended_at, ended_day, ended_by, corrects,
				reason, who, manual, accepted, flags, sample, kept, keep_until, edition, edition_hash, figures, weigher
			FROM n, loads WHERE loads.id = ?`, n, loadsADay, loadsADay, id)
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

// BenchmarkDaySheet is one day out of the middle of a large book: the sheet read
// and added up, then its paper composed. Beside it stands the bare SQL query for
// the day's rows, with nothing done to them.
func BenchmarkDaySheet(b *testing.B) {
	for _, n := range []int{10_000, 1_000_000} {
		s, day := hugeBook(b, n, 500)
		b.Run(fmt.Sprintf("%d loads/bare SQL", n), func(b *testing.B) {
			for b.Loop() {
				bareDay(b, s.Desk, day)
			}
		})
		b.Run(fmt.Sprintf("%d loads/sheet", n), func(b *testing.B) {
			for b.Loop() {
				sheet, err := office.DaySheet(ctx, s.Desk, day)
				must(b, err)
				if sheet.Numbers.Issued != 500 || len(sheet.Moves) != 12 {
					b.Fatal(sheet.Numbers, len(sheet.Moves))
				}
			}
		})
		b.Run(fmt.Sprintf("%d loads/sheet and paper", n), func(b *testing.B) {
			for b.Loop() {
				sheet, err := office.DaySheet(ctx, s.Desk, day)
				must(b, err)
				if len(daysheet.Compose(sheet, s.Profile()).Blocks) == 0 {
					b.Fatal("no paper")
				}
			}
		})
	}
}

func bareDay(b *testing.B, d *scalehouse.Desk, day quantity.Date) {
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
