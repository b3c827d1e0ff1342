package office_test

import (
	"database/sql"
	"fmt"
	"strings"
	"testing"

	"tenthpoint/internal/book/sqlite/sqlitetest"
	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse/housetest"
)

// hugeBook is a desk on a book of n loads, loadsADay a day, with their position.
// The rows are copies of one real load, made by SQL; the journal has only that
// one.
func hugeBook(t testing.TB, n, loadsADay int) (*scene, quantity.Date) {
	t.Helper()
	s := housetest.New(t)
	id, _ := s.Ticket()
	first := quantity.MustDate("2020-01-01")
	day := fmt.Sprintf("date('2020-01-01', '+' || (i / %d) || ' days')", loadsADay)
	columns, copied := copiedColumns(s, map[string]string{
		"id": "'L' || i", "ticket": "i", "grower": "'G' || (i % 300)", "bin": "'Bin ' || (i % 12)", "day": day, "issued_day": day,
	})
	db := sqlitetest.Open(t, s.Store.Path())
	_, err := db.Exec(`WITH RECURSIVE n (i) AS (VALUES (2) UNION ALL SELECT i + 1 FROM n WHERE i < ?)
			INSERT INTO loads (`+columns+`) SELECT `+copied+` FROM n, loads WHERE loads.id = ?`, n, id)
	must(t, err)
	_, err = db.Exec(`INSERT INTO stock (commodity, bin, unit, day, inward, outward, back, balance)
			SELECT commodity, bin, 'lb', issued_day, (count(*) * 26872) || ' lb', '0 lb', '0 lb', (sum(count(*)) OVER (PARTITION BY commodity, bin ORDER BY issued_day) * 26872) || ' lb'
			FROM loads WHERE id <> ? GROUP BY commodity, bin, issued_day`, id)
	must(t, err)
	return s, first.AddDays(n / loadsADay / 2)
}

// copiedColumns are the columns of the loads, whichever the last migration has
// left, and what each is copied from: itself, or what is given for it.
func copiedColumns(s *scene, instead map[string]string) (columns, copied string) {
	s.T.Helper()
	rows, err := sqlitetest.Open(s.T, s.Store.Path()).Query("SELECT name FROM pragma_table_info('loads')")
	must(s.T, err)
	defer rows.Close()
	var names, from []string
	for rows.Next() {
		var name string
		must(s.T, rows.Scan(&name))
		names = append(names, name)
		if expr, ok := instead[name]; ok {
			from = append(from, expr)
		} else {
			from = append(from, "loads."+name)
		}
	}
	must(s.T, rows.Err())
	return strings.Join(names, ", "), strings.Join(from, ", ")
}

// The benchmark's book is made and gives its day's sheet, so that a new column
// of the lists cannot break the benchmark unseen.
func TestBenchmarkBookGivesItsSheet(t *testing.T) {
	s, day := hugeBook(t, 600, 50)
	sheet, err := office.DaySheet(ctx, s.Desk, day)
	must(t, err)
	if sheet.Numbers.Issued != 50 || len(sheet.Moves) != 12 || len(daysheet.Compose(sheet, s.Profile()).Blocks) == 0 {
		t.Errorf("the day has %d tickets and %d moves", sheet.Numbers.Issued, len(sheet.Moves))
	}
}

// BenchmarkDaySheet measures one day in the middle of a large book: the sheet read and added up,
// then its paper composed; compared with the bare SQL query for the day's rows.
func BenchmarkDaySheet(b *testing.B) {
	sizes := []int{10_000, 1_000_000}
	if testing.Short() {
		sizes = sizes[:1]
	}
	for _, n := range sizes {
		s, day := hugeBook(b, n, 500)
		b.Run(fmt.Sprintf("%d loads/bare SQL", n), func(b *testing.B) {
			db := sqlitetest.Open(b, s.Store.Path())
			for b.Loop() {
				bareDay(b, db, day)
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

func bareDay(b *testing.B, db *sql.DB, day quantity.Date) {
	rows, err := db.Query("SELECT id, ticket, commodity, bin, figures FROM loads WHERE issued_day = ? ORDER BY ticket", day.String())
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
