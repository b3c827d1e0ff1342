package binlog_test

import (
	"context"
	"fmt"
	"testing"
	"time"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/bin/shape"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/book/sqlite/sqlitetest"
	"tenthpoint/internal/demo"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/office/binlog"
	"tenthpoint/internal/position"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/schedules"
)

var (
	ctx  = context.Background()
	must = housetest.Must
)

func ofBin(name string, weight quantity.Amount) []bin.Weighed {
	return []bin.Weighed{{Bin: name, Weight: weight}}
}

// 28,000 lb in a bin 30 ft across at 55 lb/bu stand 0.896 ft high: 44 thousandths of 20 ft.
func TestLevelOfABin(t *testing.T) {
	s := housetest.New(t)
	foot := func(n int64) quantity.Amount { return quantity.Int(n, quantity.Foot) }
	must(t, scalehouse.SetBin(ctx, s.Desk, elevator.Bin{ID: "Pit 1", Name: "Pit 1", Shape: shape.Shape{Form: shape.Round, Diameter: foot(30), Wall: foot(20)}}))
	s.Ticket()
	b, err := binlog.One(ctx, s.Desk, "Pit 1", s.Today())
	must(t, err)
	b.Grain[0].Heap.Layers[0].Grain = b.Grain[0].Heap.Layers[0].With("test-weight", quantity.Of("55", quantity.LbPerBushel))
	if level, known := b.Level(); !known || level != 44 {
		t.Errorf("it stands %d thousandths high, %v", level, known)
	}
	holds, known := b.Holds(quantity.Of("55", quantity.LbPerBushel))
	if !known || !holds.Equal(housetest.Lb(625_030)) {
		t.Errorf("it holds %s, %v", holds, known)
	}
	if b.Short() {
		t.Error("grain is missing from it")
	}
}

// The record of a season's days balances on every day, and says what SQL over the journal says, which
// knows nothing of bins, lines or layers.
func TestPositionReconciles(t *testing.T) {
	book, err := sqlite.OpenScratch()
	must(t, err)
	t.Cleanup(func() { _ = book.Close() })
	editions, err := schedules.Editions()
	must(t, err)
	now := time.Date(2026, 11, 3, 12, 0, 0, 0, time.UTC)
	must(t, demo.Fill(ctx, book, demo.Options{Loads: 400, Seed: 5, Now: now, Rates: editions}, nil))
	d, err := scalehouse.Open(ctx, book, scalehouse.Options{Rates: editions, Place: time.UTC, Clock: func() time.Time { return now }, Who: demo.Manager})
	must(t, err)
	move(t, d)
	db := sqlitetest.Open(t, book.Path())
	for day := d.Today().AddDays(-20); !day.After(d.Today()); day = day.AddDays(1) {
		records, err := binlog.Position(ctx, d, day)
		must(t, err)
		for _, r := range records {
			if !r.Off().IsZero() {
				t.Errorf("%s: %s is off by %s", day, r.Commodity, r.Off())
			}
			if sum := r.Total.Before.Add(r.Total.Received).Add(r.Total.Moved).Sub(r.Total.LoadedOut).Sub(r.Total.Back); !sum.Equal(r.Total.InHouse) {
				t.Errorf("%s: %s comes to %s, and %s lie there", day, r.Commodity, sum, r.Total.InHouse)
			}
			var net, owed int64
			must(t, db.QueryRow(netBySQL, r.Commodity, day.String(), day.String(), r.Commodity, day.String()).Scan(&net))
			if !r.Total.InHouse.Equal(quantity.Int(net, quantity.Lb)) {
				t.Errorf("%s: %s of %s in the house, by SQL %d lb", day, r.Total.InHouse, r.Commodity, net)
			}
			must(t, db.QueryRow(storedBySQL, r.Commodity, day.String(), day.String()).Scan(&owed))
			if got := inStorage(r); !got.Equal(quantity.Int(owed, quantity.Lb)) {
				t.Errorf("%s: %s of %s in open storage, by SQL %d lb", day, got, r.Commodity, owed)
			}
		}
	}
}

// move dries and moves some of the grain of the season.
func move(t *testing.T, d *scalehouse.Desk) {
	t.Helper()
	pct := func(text string) quantity.Amount { return quantity.Of(text, quantity.Percent) }
	for _, m := range []bin.Movement{
		{What: bin.Transfer, Commodity: "corn", From: ofBin("B1", housetest.Lb(8_000)), Into: ofBin("B2", housetest.Lb(8_000))},
		{What: bin.Dry, Commodity: "corn", From: ofBin("B3", housetest.Lb(10_000)), Into: ofBin("B2", housetest.Lb(9_500)), Drying: &bin.Run{MoistureIn: pct("19"), MoistureOut: pct("15")}},
		{What: bin.Clean, Commodity: "soybeans", From: ofBin("B4", housetest.Lb(9_000)), Into: ofBin("B5", housetest.Lb(8_900)), Screenings: housetest.Lb(100)},
		{What: bin.WriteOff, Commodity: "soybeans", From: ofBin("B4", housetest.Lb(300)), Reason: "spoiled"},
	} {
		if _, err := scalehouse.MoveGrain(ctx, d, m); err != nil {
			t.Fatal(err)
		}
	}
}

func inStorage(r position.Record) quantity.Amount {
	for _, l := range r.Lines {
		if l.Line == position.Storage {
			return l.Close
		}
	}
	return quantity.Zero(r.Unit)
}

// tickets are those that stand: issued, and not ended by the day, from the journal alone.
const tickets = `
WITH told AS (
	SELECT subject, max(seq) AS seq FROM facts WHERE kind IN ('load.opened', 'load.amended') GROUP BY subject),
worked AS (
	SELECT subject, max(seq) AS seq FROM facts WHERE kind = 'load.settled' GROUP BY subject),
tickets AS (
	SELECT json_extract(i.body, '$.day') AS day,
		coalesce((SELECT json_extract(e.body, '$.day') FROM facts e WHERE e.subject = i.subject AND e.kind IN ('ticket.voided', 'ticket.superseded')), '9999') AS ended,
		json_extract(d.body, '$.details') AS details, json_extract(s.body, '$.figures') AS figures
	FROM facts i JOIN told t ON t.subject = i.subject JOIN facts d ON d.seq = t.seq
		JOIN worked w ON w.subject = i.subject JOIN facts s ON s.seq = w.seq
	WHERE i.kind = 'ticket.issued')`

// netBySQL is what trucks brought less what they took, and what movements brought less what they
// took: whole pounds.
const netBySQL = tickets + `
SELECT coalesce((SELECT sum(CASE json_extract(details, '$.direction') WHEN 'in' THEN 1 ELSE -1 END * CAST(json_extract(figures, '$.net') AS INTEGER))
	FROM tickets WHERE json_extract(details, '$.commodity') = ? AND day <= ? AND ended > ?), 0)
	+ coalesce((SELECT sum(
		coalesce((SELECT sum(CAST(json_extract(value, '$.weight') AS INTEGER)) FROM json_each(f.body, '$.into')), 0) -
		coalesce((SELECT sum(CAST(json_extract(value, '$.weight') AS INTEGER)) FROM json_each(f.body, '$.from')), 0))
	FROM facts f WHERE f.kind = 'bin.movement' AND json_extract(f.body, '$.commodity') = ? AND json_extract(f.body, '$.day') <= ?), 0)`

// storedBySQL is the settled weight of whole loads in open storage.
const storedBySQL = tickets + `
SELECT coalesce(sum(CAST(json_extract(figures, '$.settled') AS INTEGER)), 0) FROM tickets
WHERE json_extract(details, '$.commodity') = ? AND day <= ? AND ended > ? AND json_extract(details, '$.disposition') = 'stored'`

// A record of a house that shipped more than it owns says that depositors' grain is gone.
func TestCompanyOwnedBelowZero(t *testing.T) {
	s := housetest.New(t)
	s.Ticket()
	s.Leave("Pit 1", 20_000)
	records, err := binlog.Position(ctx, s.Desk, s.Today())
	must(t, err)
	if len(records) != 1 || !records[0].IsShort() || !records[0].Off().IsZero() || !records[0].Of(position.Company).Equal(housetest.Lb(-20_000)) {
		t.Fatalf("%+v", records)
	}
	paper := binlog.PositionPaper(s.Profile(), s.Today(), records).Text(100)
	if again := binlog.PositionPaper(s.Profile(), s.Today(), records).Text(100); paper != again || len(fmt.Sprint(paper)) == 0 {
		t.Error("the paper differs when it is printed again")
	}
}
