package binlog_test

import (
	"errors"
	"flag"
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/book/sqlite/sqlitetest"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office/binlog"
	"tenthpoint/internal/office/receipts"
	"tenthpoint/internal/opening"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/position"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/scalehouse/money"
	"tenthpoint/internal/scalehouse/openings"
	acts "tenthpoint/internal/scalehouse/receipts"
	"tenthpoint/internal/title"
	"tenthpoint/schedules"
)

// Ten thousand days take minutes; `go run ./cmd/task position` asks for them.
var positionDays = flag.Int("days", 60, "days of which the position is held against the journal")

// evening is a position in whole pounds: what lies in the house, and what of it is depositors'.
type evening struct{ house, owed int64 }

// The position of every day balances, and is what one SQL query over the journal comes to that knows
// neither bins nor lines: weights of tickets and movements on one side, what depositors are owed by
// their papers on the other.
func TestPositionIsWhatTheJournalSays(t *testing.T) {
	h := newRandomHouse(t)
	got := map[string]evening{}
	for range *positionDays {
		h.day()
		today := h.s.Today()
		got[today.String()] = h.evening(today)
		h.s.Time = h.s.Time.Add(24 * time.Hour)
		h.s.Answered()
	}
	want := h.bySQL(t)
	moved := 0
	for day, of := range want {
		if got[day] != of {
			t.Errorf("%s: the position has %+v, the journal %+v", day, got[day], of)
		}
		moved++
	}
	if moved < *positionDays/2 || h.done < *positionDays {
		t.Errorf("only %d days with %d acts were looked at", moved, h.done)
	}
	t.Logf("%d days, %d acts, %d refused", *positionDays, h.done, h.refused)
}

// randomHouse is a house whose every day is drawn.
type randomHouse struct {
	s             *housetest.Scene
	draw          *rand.Rand
	tickets       []int64 // that may be voided, settled or put on receipts
	receipts      []int64
	movements     []int64
	done, refused int
}

var bins = []string{"B1", "B2", "B3"}

// newRandomHouse is a house opened with balances.
func newRandomHouse(t *testing.T) *randomHouse {
	h := &randomHouse{s: housetest.New(t).As(housetest.Manager), draw: rand.New(rand.NewPCG(1, 281))}
	for _, name := range bins {
		must(t, scalehouse.SetBin(ctx, h.s.Desk, elevator.Bin{ID: name, Name: name}))
	}
	must(t, scalehouse.SetGrower(ctx, h.s.Desk, elevator.Grower{ID: "G1", Name: "Ada Field"}))
	day, lb := h.s.Today(), housetest.Lb
	_, err := openings.Enter(ctx, h.s.Desk, opening.Opening{
		Day: day, Reason: "from the books before",
		Lying: []opening.Lying{{Bin: "B1", Commodity: "corn", Weight: lb(300_000), Moisture: housetest.Amount("15.1 %")}},
		Lots: []opening.Lot{
			{Grower: "G1", Name: "Ada Field", Commodity: "corn", Quantity: *housetest.Amount("1000 bu"), Weight: lb(56_000), Terms: title.Terms{Under: title.OpenStorage}, Since: day},
			{Grower: "G1", Name: "Ada Field", Commodity: "corn", Quantity: *housetest.Amount("500 bu"), Weight: lb(28_000), Terms: title.Terms{Under: title.CashSale}, Since: day},
		},
		Owned: []opening.Owned{{Line: position.Sold, Commodity: "corn", Weight: lb(216_000)}},
	})
	must(t, err)
	h.tickets = []int64{opening.First, opening.First + 1}
	return h
}

// day does one to four acts.
func (h *randomHouse) day() {
	all := []func() error{h.comes, h.comes, h.comes, h.leaves, h.moves, h.dries, h.counts, h.undoes, h.ends, h.settles, h.issues, h.surrenders}
	for range 1 + h.draw.IntN(4) {
		err := all[h.draw.IntN(len(all))]()
		switch {
		case err == nil:
			h.done++
		case errors.Is(err, message.Refused) || errors.Is(err, message.WrongPhase):
			h.refused++
		default:
			h.s.T.Fatal(err)
		}
	}
}

func (h *randomHouse) bin() string { return bins[h.draw.IntN(len(bins))] }

// pounds is a weight a scale shows, from so much to so much.
func (h *randomHouse) pounds(from, to int) int64 { return int64(from + 20*h.draw.IntN((to-from)/20)) }

func (h *randomHouse) comes() error {
	d := housetest.Details()
	d.Bin = h.bin()
	d.Terms = []title.Terms{{}, {Under: title.OpenStorage}, {Under: title.OpenStorage}, {Under: title.GrainBank}, {Under: title.CashSale}, {Under: title.DelayedPrice, No: "D-1"}}[h.draw.IntN(6)]
	id, err := scalehouse.OpenLoad(ctx, h.s.Desk, d)
	if err != nil {
		return err
	}
	h.s.Weigh(id, load.Gross, h.pounds(44_000, 80_000))
	h.s.Sample(id, fmt.Sprintf("%d.%d", 12+h.draw.IntN(9), h.draw.IntN(10)))
	h.s.Weigh(id, load.Tare, h.pounds(22_000, 26_000))
	number, err := scalehouse.Issue(ctx, h.s.Desk, id)
	h.tickets = append(h.tickets, number)
	return err
}

func (h *randomHouse) leaves() error {
	h.s.Leave(h.bin(), h.pounds(20_000, 60_000))
	return nil
}

func (h *randomHouse) move(m bin.Movement) error {
	m.Commodity = "corn"
	m, err := scalehouse.MoveGrain(ctx, h.s.Desk, m)
	if err == nil {
		h.movements = append(h.movements, m.Number)
	}
	return err
}

func (h *randomHouse) moves() error {
	from, into, weight := h.draw.IntN(3), 1+h.draw.IntN(2), housetest.Lb(h.pounds(1_000, 50_000))
	return h.move(bin.Movement{What: bin.Transfer, From: ofBin(bins[from], weight), Into: ofBin(bins[(from+into)%3], weight)})
}

func (h *randomHouse) dries() error {
	in := h.pounds(20_000, 60_000)
	return h.move(bin.Movement{
		What: bin.Dry, From: ofBin(h.bin(), housetest.Lb(in)), Into: ofBin(h.bin(), housetest.Lb(in*95/100)),
		Drying: &bin.Run{MoistureIn: *housetest.Amount("18 %"), MoistureOut: *housetest.Amount("14.5 %")},
	})
}

func (h *randomHouse) counts() error {
	return h.move(bin.Movement{What: bin.WeighOver, Reason: "weighed out", Count: &bin.Count{Bin: h.bin(), Counted: housetest.Lb(h.pounds(0, 400_000)), Posted: true}})
}

// one draws one of some numbers and forgets it; refused where there is none.
func (h *randomHouse) one(of *[]int64) (int64, error) {
	if len(*of) == 0 {
		return 0, message.Refused.Errorf("there is none")
	}
	at := len(*of) - 1 - h.draw.IntN(min(len(*of), 30))
	number := (*of)[at]
	*of = append((*of)[:at], (*of)[at+1:]...)
	return number, nil
}

func (h *randomHouse) undoes() error {
	number, err := h.one(&h.movements)
	if err != nil {
		return err
	}
	_, err = scalehouse.UndoMovement(ctx, h.s.Desk, number, "never moved")
	return err
}

func (h *randomHouse) ends() error {
	number, err := h.one(&h.tickets)
	if err != nil || opening.IsLot(number) {
		return err
	}
	return scalehouse.Void(ctx, h.s.Desk, number, "wrong grower")
}

func (h *randomHouse) settles() error {
	number, err := h.one(&h.tickets)
	if err != nil {
		return err
	}
	set, err := schedules.Tariffs()
	must(h.s.T, err)
	tariff, _ := set.ByID("corn-main-tariff-2026")
	s, _, err := money.Settle(ctx, h.s.Desk, paysheet.Order{
		Grower: "G1", Day: h.s.Today(), Tariff: tariff, Source: "price of the sheet", Price: housetest.Amount("4.05 $/bu"), Sale: true, Tickets: []paysheet.Chosen{{Number: number}},
	})
	if err == nil && h.draw.IntN(4) == 0 {
		err = money.VoidSheet(ctx, h.s.Desk, s.Number, "another price")
	}
	return err
}

func (h *randomHouse) issues() error {
	number, err := h.one(&h.tickets)
	if err != nil {
		return err
	}
	r, err := acts.Issue(ctx, h.s.Desk, receipts.Order{Grower: "G1", Negotiable: h.draw.IntN(2) == 0, Tickets: []receipts.Chosen{{Number: number}}})
	if err == nil {
		h.receipts = append(h.receipts, r.Number)
	}
	return err
}

func (h *randomHouse) surrenders() error {
	number, err := h.one(&h.receipts)
	if err != nil {
		return err
	}
	_, err = acts.Surrender(ctx, h.s.Desk, number, "handed in")
	return err
}

// evening is the position of a day, which balances.
func (h *randomHouse) evening(day quantity.Date) (e evening) {
	all, err := binlog.Position(ctx, h.s.Desk, day)
	must(h.s.T, err)
	for _, r := range all {
		if !r.Off().IsZero() {
			h.s.T.Errorf("%s: %s of %s is %s off", day, r.Total.InHouse, r.Commodity, r.Off())
		}
		e.house += inPounds(h.s.T, r.Total.InHouse)
		e.owed += inPounds(h.s.T, r.Of(position.Owed))
	}
	return e
}

func inPounds(t testing.TB, a quantity.Amount) int64 {
	if r := a.Rat(); r.IsInt() && a.Unit() == quantity.Lb {
		return r.Num().Int64()
	}
	t.Errorf("%s are no whole pounds", a)
	return 0
}

// changes is every change of a day out of the facts: what came into the house, and what depositors are
// owed.
const changes = `
WITH told AS (SELECT subject, max(seq) AS seq FROM facts WHERE kind IN ('load.opened', 'load.amended') GROUP BY subject),
worked AS (SELECT subject, max(seq) AS seq FROM facts WHERE kind = 'load.settled' GROUP BY subject),
ended AS (SELECT subject, json_extract(body, '$.day') AS day FROM facts WHERE kind IN ('ticket.voided', 'ticket.superseded')),
tickets AS (
	SELECT json_extract(i.body, '$.day') AS day, coalesce(e.day, '') AS ended,
		CASE json_extract(d.body, '$.details.direction') WHEN 'in' THEN 1 ELSE -1 END * CAST(json_extract(s.body, '$.figures.net') AS INTEGER) AS net,
		CASE WHEN coalesce(json_extract(d.body, '$.details.disposition'), '') IN ('', 'stored', 'bank') AND json_extract(d.body, '$.details.direction') = 'in'
			THEN CAST(json_extract(s.body, '$.figures.settled') AS INTEGER) ELSE 0 END AS owed
	FROM facts i JOIN told t ON t.subject = i.subject JOIN facts d ON d.seq = t.seq
		JOIN worked w ON w.subject = i.subject JOIN facts s ON s.seq = w.seq LEFT JOIN ended e ON e.subject = i.subject
	WHERE i.kind = 'ticket.issued'),
movements AS (SELECT min(seq) AS seq FROM facts WHERE kind = 'bin.movement' GROUP BY subject),
sheets AS (SELECT max(seq) AS seq FROM facts WHERE kind = 'money.sheet' GROUP BY subject),
sold AS (
	SELECT json_extract(f.body, '$.day') AS day, coalesce(json_extract(f.body, '$.voided.day'), '') AS voided, CAST(json_extract(l.value, '$.weight') AS INTEGER) AS weight
	FROM sheets s JOIN facts f ON f.seq = s.seq, json_each(f.body, '$.lines') l
	WHERE coalesce(json_extract(l.value, '$.under'), '') IN ('', 'stored', 'bank')),
changes AS (
	SELECT day, net AS house, owed FROM tickets
	UNION ALL SELECT ended, -net, -owed FROM tickets WHERE ended <> ''
	UNION ALL SELECT json_extract(f.body, '$.day'), CAST(json_extract(i.value, '$.weight') AS INTEGER), 0 FROM movements m JOIN facts f ON f.seq = m.seq, json_each(f.body, '$.into') i
	UNION ALL SELECT json_extract(f.body, '$.day'), -CAST(json_extract(o.value, '$.weight') AS INTEGER), 0 FROM movements m JOIN facts f ON f.seq = m.seq, json_each(f.body, '$.from') o
	UNION ALL SELECT day, 0, -weight FROM sold
	UNION ALL SELECT voided, 0, weight FROM sold WHERE voided <> ''
	UNION ALL SELECT json_extract(f.body, '$.day'), 0, CAST(json_extract(l.value, '$.weight') AS INTEGER) FROM facts f, json_each(f.body, '$.lots') l
		WHERE f.kind = 'house.opening' AND json_extract(l.value, '$.disposition') = 'stored')
SELECT day, sum(sum(house)) OVER (ORDER BY day), sum(sum(owed)) OVER (ORDER BY day) FROM changes GROUP BY day`

// bySQL is the position of every day on which anything happened.
func (h *randomHouse) bySQL(t *testing.T) map[string]evening {
	rows, err := sqlitetest.Open(t, h.s.Store.Path()).Query(changes)
	must(t, err)
	defer rows.Close()
	out := map[string]evening{}
	for rows.Next() {
		var day string
		var e evening
		must(t, rows.Scan(&day, &e.house, &e.owed))
		out[day] = e
	}
	must(t, rows.Err())
	return out
}
