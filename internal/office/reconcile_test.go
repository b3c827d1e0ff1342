package office_test

import (
	"flag"
	"fmt"
	"math/big"
	"testing"
	"time"

	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/book/sqlite/sqlitetest"
	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/demo"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/schedules"
)

// The season of 10,000 invented loads is added up twice: by the program's own
// sheets, and by one SQL query each that knows nothing of them. The queries read
// the journal alone, not the lists the sheets read, and add figures as whole
// numbers: text is parted at the point and unit, "119.33 $" counts as 11933.

// ticketsBySQL is one row for each ticket out of the facts: its last details,
// its last settlement, when it was issued and when it ended.
const ticketsBySQL = `
WITH issued AS (
	SELECT subject, seq, json_extract(body, '$.day') AS day, json_extract(body, '$.number') AS number FROM facts WHERE kind = 'ticket.issued'),
ended AS (
	SELECT subject, json_extract(body, '$.day') AS day FROM facts WHERE kind IN ('ticket.voided', 'ticket.superseded')),
told AS (
	SELECT subject, max(seq) AS seq FROM facts WHERE kind IN ('load.opened', 'load.amended') GROUP BY subject),
worked AS (
	SELECT subject, max(seq) AS seq FROM facts WHERE kind = 'load.settled' GROUP BY subject),
tickets AS (
	SELECT i.subject, i.day, coalesce(e.day, '') AS ended, json_extract(d.body, '$.details') AS details, json_extract(s.body, '$.figures') AS figures
	FROM issued i JOIN told t ON t.subject = i.subject JOIN facts d ON d.seq = t.seq
		JOIN worked w ON w.subject = i.subject JOIN facts s ON s.seq = w.seq LEFT JOIN ended e ON e.subject = i.subject)`

// wholeUnits is a figure of a JSON object in units of its last place: to two
// places 119.33 is 11933, to none 52300 is 52300. A missing figure is zero.
func wholeUnits(object, path string, places int) string {
	number := fmt.Sprintf(`rtrim(coalesce(json_extract(%s, '$."%s"'), '0'), ' $abcdefghijklmnopqrstuvwxyz')`, object, path)
	size := fmt.Sprintf(`ltrim(%s, '-')`, number)
	before := fmt.Sprintf(`CAST(CASE instr(%[1]s, '.') WHEN 0 THEN %[1]s ELSE substr(%[1]s, 1, instr(%[1]s, '.') - 1) END AS INTEGER)`, size)
	after := fmt.Sprintf(`CAST(substr(CASE instr(%[1]s, '.') WHEN 0 THEN '' ELSE substr(%[1]s, instr(%[1]s, '.') + 1) END || '000000', 1, %[2]d) AS INTEGER)`, size, places)
	power := "1" + "000000"[:places]
	return fmt.Sprintf(`(CASE WHEN substr(%s, 1, 1) = '-' THEN -1 ELSE 1 END * (%s * %s + %s))`, number, before, power, after)
}

// shipped are the editions inside the program.
func shipped(t testing.TB) *rates.Set {
	t.Helper()
	set, err := schedules.Editions()
	must(t, err)
	return set
}

// demoSeason is a desk on a book of so many invented loads.
func demoSeason(t testing.TB, loads int) *scalehouse.Desk {
	t.Helper()
	book, err := sqlite.OpenScratch()
	must(t, err)
	t.Cleanup(func() { _ = book.Close() })
	now := time.Date(2026, 11, 3, 12, 0, 0, 0, time.UTC)
	must(t, demo.Fill(ctx, book, demo.Options{Loads: loads, Seed: 11, Now: now, Rates: shipped(t)}, nil))
	d, err := scalehouse.Open(ctx, book, scalehouse.Options{Rates: shipped(t), Place: time.UTC, Clock: func() time.Time { return now }, Who: demo.Manager})
	must(t, err)
	return d
}

// units is an amount in units of its last place.
func units(a quantity.Amount, places int) int64 {
	r := new(big.Rat).Mul(a.Rat(), new(big.Rat).SetInt64([]int64{1, 10, 100, 1000}[places]))
	if !r.IsInt() {
		return -1
	}
	return r.Num().Int64()
}

// A whole season takes a minute; `go run ./cmd/task season` asks for one.
var seasonLoads = flag.Int("season", 2_000, "loads of the season held against the journal")

func TestSeasonReconcilesWithTheJournal(t *testing.T) {
	d := demoSeason(t, *seasonLoads)
	t.Run("day sheets", func(t *testing.T) { daysReconcile(t, d) })
	t.Run("position", func(t *testing.T) { positionReconciles(t, d) })
	t.Run("accounts", func(t *testing.T) { accountsReconcile(t, d) })
	t.Run("papers", func(t *testing.T) { papersReconcile(t, d) })
}

// line is a commodity's inbound day in whole numbers.
type line struct {
	loads                                                      int
	net, water, handling, settled, bushels                     int64
	drying, charges, value, payable                            int64
	backLoads                                                  int
	backNet, backSettled, backBushels, backCharges, backPayble int64
}

func daysReconcile(t *testing.T, d *scalehouse.Desk) {
	query := ticketsBySQL + `
SELECT json_extract(details, '$.commodity'), day, count(*),
	sum(` + wholeUnits("figures", "net", 0) + `), sum(` + wholeUnits("figures", "shrink.water", 0) + `), sum(` + wholeUnits("figures", "handling", 0) + `),
	sum(` + wholeUnits("figures", "settled", 0) + `), sum(` + wholeUnits("figures", "quantity", 2) + `),
	sum(` + wholeUnits("figures", "drying", 2) + `), -sum(` + wholeUnits("figures", "adjustments", 2) + `),
	sum(CASE WHEN json_extract(figures, '$.price') IS NULL THEN 0 ELSE ` + wholeUnits("figures", "value", 2) + ` END),
	sum(CASE WHEN json_extract(figures, '$.price') IS NULL THEN 0 ELSE ` + wholeUnits("figures", "payable", 2) + ` END)
FROM %s WHERE json_extract(details, '$.direction') = 'in' GROUP BY 1, 2`
	want := map[string]line{}
	rows, err := sqlitetest.Open(t, d.Book().Path()).Query(fmt.Sprintf(query, "(SELECT * FROM tickets WHERE ended <> day)"))
	must(t, err)
	defer rows.Close()
	for rows.Next() {
		var commodity, day string
		var l line
		must(t, rows.Scan(&commodity, &day, &l.loads, &l.net, &l.water, &l.handling, &l.settled, &l.bushels, &l.drying, &l.charges, &l.value, &l.payable))
		want[day+" "+commodity] = l
	}
	back, err := sqlitetest.Open(t, d.Book().Path()).Query(fmt.Sprintf(query, "(SELECT subject, ended AS day, details, figures FROM tickets WHERE ended <> day AND ended <> '')"))
	must(t, err)
	defer back.Close()
	for back.Next() {
		var commodity, day string
		var loads int
		var net, water, handling, settled, bushels, drying, charges, value, payable int64
		must(t, back.Scan(&commodity, &day, &loads, &net, &water, &handling, &settled, &bushels, &drying, &charges, &value, &payable))
		l := want[day+" "+commodity]
		l.backLoads, l.backNet, l.backSettled, l.backBushels, l.backCharges, l.backPayble = loads, net, settled, bushels, charges, payable
		want[day+" "+commodity] = l
	}
	compareDays(t, d, want)
}

func compareDays(t *testing.T, d *scalehouse.Desk, want map[string]line) {
	seen, loads, takenBack := 0, 0, 0
	for day := quantity.MustDate("2026-08-01"); !day.After(d.Today()); day = day.AddDays(1) {
		sheet, err := office.DaySheet(ctx, d, day)
		must(t, err)
		if sheet.Closed != nil && sheet.Closed.Differs {
			t.Errorf("%s is not the sheet that was closed", day)
		}
		for _, p := range sheet.Parts {
			if p.Outbound {
				continue
			}
			s, b := p.Sum, p.Back
			got := line{s.Loads, units(s.Net, 0), units(s.Water, 0), units(s.Handling, 0), units(s.Settled, 0), units(s.Quantity, 2),
				units(s.Drying, 2), units(s.Charges, 2), units(s.Value, 2), units(s.Payable, 2),
				b.Loads, units(b.Net, 0), units(b.Settled, 0), units(b.Quantity, 2), units(b.Charges, 2), units(b.Payable, 2)}
			if key := day.String() + " " + p.Commodity; got != want[key] {
				t.Errorf("%s:\nsheet %+v\nSQL   %+v", key, got, want[key])
			}
			seen, loads, takenBack = seen+1, loads+s.Loads, takenBack+b.Loads
		}
	}
	if seen != len(want) || loads < *seasonLoads*9/10 || takenBack < *seasonLoads/500 {
		t.Errorf("%d lines of %d, %d loads, %d taken back", seen, len(want), loads, takenBack)
	}
}

// positionReconciles holds the position of the last evening, and of one in the
// middle of the season, against the sum of all tickets up to it.
func positionReconciles(t *testing.T, d *scalehouse.Desk) {
	query := ticketsBySQL + `,
moves AS (
	SELECT day, details, figures, 1 AS way FROM tickets UNION ALL
	SELECT ended, details, figures, -1 FROM tickets WHERE ended <> '')
SELECT json_extract(details, '$.commodity'), coalesce(json_extract(details, '$.bin'), ''),
	sum(way * CASE json_extract(details, '$.direction') WHEN 'in' THEN ` + wholeUnits("figures", "settled", 0) + ` ELSE -` + wholeUnits("figures", "net", 0) + ` END)
FROM moves WHERE day <= ? GROUP BY 1, 2`
	for _, day := range []quantity.Date{d.Today(), d.Today().AddDays(-20)} {
		want := map[string]int64{}
		rows, err := sqlitetest.Open(t, d.Book().Path()).Query(query, day.String())
		must(t, err)
		defer rows.Close()
		for rows.Next() {
			var commodity, bin string
			var weight int64
			must(t, rows.Scan(&commodity, &bin, &weight))
			want[commodity+" "+bin] = weight
		}
		sheet, err := office.DaySheet(ctx, d, day)
		must(t, err)
		held := 0
		for _, m := range sheet.Moves {
			key := m.Commodity + " " + m.Bin
			if units(m.After, 0) != want[key] {
				t.Errorf("%s, %s: the sheet has %s, SQL %d", day, key, m.After, want[key])
			}
			delete(want, key)
			held++
		}
		for key, weight := range want {
			if weight != 0 {
				t.Errorf("%s: the sheet lacks %s, SQL has %d", day, key, weight)
			}
		}
		if held < 5 {
			t.Errorf("only %d places", held)
		}
	}
}

// accountsReconcile adds every grower's own part up by SQL: the n-th owner's
// lines of a shared load, the whole of the others.
func accountsReconcile(t *testing.T, d *scalehouse.Desk) {
	own := func(id string, places int) string {
		shared := wholeUnits("figures", "share.' || place || '."+id, places)
		return fmt.Sprintf("CASE place WHEN 0 THEN %s ELSE %s END", wholeUnits("figures", id, places), shared)
	}
	query := ticketsBySQL + `,
owned AS (
	SELECT figures, 0 AS place, json_extract(details, '$.grower.id') AS grower, details FROM tickets
	WHERE ended = '' AND json_array_length(coalesce(json_extract(details, '$.shares'), '[]')) = 0
	UNION ALL
	SELECT figures, o.key + 1, json_extract(o.value, '$.id'), details FROM tickets, json_each(json_extract(details, '$.shares')) o WHERE ended = '')
SELECT grower, json_extract(details, '$.commodity'), count(*), sum(` + own("net", 0) + `), sum(` + own("settled", 0) + `), sum(` + own("quantity", 2) + `), -sum(` + own("adjustments", 2) + `)
FROM owned WHERE json_extract(details, '$.direction') = 'in' GROUP BY 1, 2`
	rows, err := sqlitetest.Open(t, d.Book().Path()).Query(query)
	must(t, err)
	defer rows.Close()
	accounts, shared := map[string]daysheet.Account{}, 0
	n := 0
	for rows.Next() {
		var grower, commodity string
		var loads int
		var net, settled, bushels, charges int64
		must(t, rows.Scan(&grower, &commodity, &loads, &net, &settled, &bushels, &charges))
		if _, known := accounts[grower]; !known {
			accounts[grower], err = office.Account(ctx, d, grower, quantity.Date{}, quantity.Date{})
			must(t, err)
		}
		for _, p := range accounts[grower].Parts {
			if p.Commodity != commodity {
				continue
			}
			n++
			s := p.Sum
			if s.Loads != loads || units(s.Net, 0) != net || units(s.Settled, 0) != settled || units(s.Quantity, 2) != bushels || units(s.Charges, 2) != charges {
				t.Errorf("%s, %s: the account has %d loads, %s, %s, %s, %s; SQL %d, %d, %d, %d, %d", grower, commodity, s.Loads, s.Net, s.Settled, s.Quantity, s.Charges, loads, net, settled, bushels, charges)
			}
			for _, k := range p.Tickets {
				if k.GrowerID != grower {
					shared++
				}
			}
		}
	}
	must(t, rows.Err())
	if n < 10 || shared < 50 {
		t.Errorf("%d accounts by commodity, %d loads of landlords", n, shared)
	}
}

// papersReconcile adds the printed lines of every closed day up.
func papersReconcile(t *testing.T, d *scalehouse.Desk) {
	closed, err := office.DaysClosed(ctx, d)
	must(t, err)
	totals := 0
	for _, f := range closed {
		doc, err := office.DayPaper(ctx, d, quantity.MustDate(f.Subject[len("day "):]))
		must(t, err)
		for _, table := range doc.Tables() {
			var cells [][]string
			for _, r := range table.Rows {
				row := make([]string, len(r.Cells))
				for c, cell := range r.Cells {
					row[c] = housetest.PlainCell(cell.String())
				}
				cells = append(cells, row)
			}
			if table.Name.String()[:5] != "grain" { // whose totals begin in the middle of the table
				totals += addUp(t, f.Subject+", "+table.Name.String(), table, cells)
			}
		}
	}
	if totals < 1000 {
		t.Errorf("only %d totals", totals)
	}
}
