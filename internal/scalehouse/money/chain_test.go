package money_test

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"math/big"
	"math/rand/v2"
	"testing"
	"time"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/book/sqlite/sqlitetest"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/ledger"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	house "tenthpoint/internal/office"
	"tenthpoint/internal/office/binlog"
	office "tenthpoint/internal/office/money"
	"tenthpoint/internal/office/receipts"
	"tenthpoint/internal/office/rests"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/receipt"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/scalehouse/money"
	acts "tenthpoint/internal/scalehouse/receipts"
	"tenthpoint/internal/title"
	"tenthpoint/schedules"
)

// TestCorrectionsAtEveryStage issues, settles, pays, corrects and voids at random, with everything
// that rests on a ticket following it. After each act, by SQL over the journal's records: what was
// delivered is what is settled and left; what is payable less what was paid is what the ledger owes
// growers; the lines of who owns the grain come to what lies in the house.
func TestCorrectionsAtEveryStage(t *testing.T) {
	var followed, refused, takenBack int
	for seed := range uint64(4) {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			h := newChained(t, seed)
			for range 55 {
				h.act()
				deliveredIsSettledAndLeft(t, h.Scene, h.db)
				h.moneyReconciles()
				h.grainReconciles()
				h.receiptsReconcile()
			}
			h.Verify()
			followed, refused, takenBack = followed+h.followed, refused+h.refused, takenBack+h.takenBack
		})
	}
	if followed < 10 || refused < 10 || takenBack < 2 {
		t.Errorf("%d tickets ended with what rested on them, %d refused alone, %d sheets took money back", followed, refused, takenBack)
	}
}

// chained is a scene in which everything happens.
type chained struct {
	*housetest.Scene
	t   *testing.T
	db  *sql.DB
	r   *rand.Rand
	all ledger.Accounts

	tickets                      []int64
	sheets, payments             int64
	followed, refused, takenBack int
}

func newChained(t *testing.T, seed uint64) *chained {
	s := scene(t)
	for _, id := range []string{"A", "B"} {
		must(t, scalehouse.SetBin(ctx, s.Desk, elevator.Bin{ID: id, Name: id}))
	}
	must(t, scalehouse.SetContract(ctx, s.Desk, elevator.ContractTerms{Number: "C", Grower: "G1", Commodity: "corn", Quantity: quantity.Int(1500, quantity.Bushel), Price: *price("4.20"), Until: quantity.MustDate("2026-12-31")}))
	text, err := schedules.Files.ReadFile("accounts/example.toml")
	must(t, err)
	accounts, err := ledger.ReadAccounts("example.toml", text)
	must(t, err)
	return &chained{Scene: s, t: t, db: sqlitetest.Open(t, s.Store.Path()), r: rand.New(rand.NewPCG(seed, 165)), all: accounts}
}

// act does one thing.
func (h *chained) act() {
	if len(h.tickets) == 0 || h.r.IntN(4) == 0 {
		terms := []title.Terms{{}, {Under: title.OpenStorage}, {Under: title.Contract, No: "C"}}[h.r.IntN(3)]
		h.tickets = append(h.tickets, ticket(h.Scene, h.r.IntN(2) == 0, terms))
	}
	number := h.tickets[h.r.IntN(len(h.tickets))]
	switch h.r.IntN(10) {
	case 0:
		h.void(number)
	case 1, 2:
		h.correct(number)
	case 3:
		h.pay()
	case 4:
		h.moveOn()
	case 5:
		h.receipt(number)
	case 6:
		h.surrender()
	default:
		h.settle(number)
	}
	if h.r.IntN(6) == 0 {
		h.Time = h.Time.Add(24 * time.Hour)
	}
}

func (h *chained) settle(number int64) {
	o := order(h.Scene, []string{"G1", "G2"}[h.r.IntN(2)], "4.05", number)
	o.Sale = true
	if terms := h.Load(h.id(number)).Details.Terms; terms.Under == title.Contract && o.Grower == "G1" {
		o.Price = nil
	}
	if h.r.IntN(2) == 0 {
		q := quantity.Of(fmt.Sprintf("%d.%02d", h.r.IntN(250), 1+h.r.IntN(99)), quantity.Bushel)
		o.Tickets[0].Quantity = &q
	}
	drafted, refused := draftedNow(h.Scene, o)
	made, _, err := money.Settle(ctx, h.Desk, o)
	if fmt.Sprint(err) != fmt.Sprint(refused) {
		h.t.Fatalf("settled: %v; drafted before: %v", err, refused)
	}
	if err != nil {
		h.refusal(err)
		return
	}
	if made.Working != drafted.Working || len(made.Advances) != len(drafted.Advances) {
		h.t.Fatalf("settled: %+v; drafted before: %+v", made, drafted)
	}
	h.sheets = made.Number
	for _, a := range made.Advances {
		if a.Sheet > 0 {
			h.takenBack++
		}
	}
}

// draftedNow is a sheet as a window shows it before it is issued.
func draftedNow(s *housetest.Scene, o paysheet.Order) (paysheet.Sheet, error) {
	around, err := office.AroundNow(ctx, s.Desk, o.Tickets)
	if err != nil {
		return paysheet.Sheet{}, err
	}
	drafted, _, err := office.Draft(ctx, s.Desk, o, around)
	return drafted, err
}

func (h *chained) pay() {
	if h.sheets == 0 {
		return
	}
	p := paysheet.Payment{Sheet: 1 + h.r.Int64N(h.sheets), Day: h.Today(), How: paysheet.Cash, Amount: quantity.Of(fmt.Sprintf("%d.%02d", 50+h.r.IntN(900), h.r.IntN(100)), quantity.Dollar)}
	if _, err := money.Pay(ctx, h.Desk, p); err != nil {
		h.refusal(err)
	}
}

// receipt issues a warehouse receipt for a part of a ticket or all of it that is free.
func (h *chained) receipt(number int64) {
	o := receipts.Order{Grower: []string{"G1", "G2"}[h.r.IntN(2)], Negotiable: h.r.IntN(4) == 0, Tickets: []receipts.Chosen{{Number: number}}}
	if h.r.IntN(2) == 0 {
		q := quantity.Of(fmt.Sprintf("%d.%02d", h.r.IntN(200), 1+h.r.IntN(99)), quantity.Bushel)
		o.Tickets[0].Quantity = &q
	}
	if _, err := acts.Issue(ctx, h.Desk, o); err != nil {
		h.refusal(err)
	}
}

func (h *chained) surrender() {
	all, err := receipts.All(ctx, h.Desk)
	must(h.t, err)
	if len(all) == 0 {
		return
	}
	if _, err := acts.Surrender(ctx, h.Desk, all[h.r.IntN(len(all))].Number, ""); err != nil {
		h.refusal(err)
	}
}

// givenUp surrenders the negotiable receipts of a ticket, which no chain can take out of hands.
func (h *chained) givenUp(number int64) {
	all, err := receipts.All(ctx, h.Desk)
	must(h.t, err)
	for _, r := range receipt.On(all, number, "") {
		if r.Negotiable {
			_, err := acts.Surrender(ctx, h.Desk, r.Number, "handed in")
			must(h.t, err)
		}
	}
}

// receiptsReconcile compares receipts in force, by class, with the lines of the position, in SQL; none
// rests on a ticket that does not count.
func (h *chained) receiptsReconcile() {
	h.t.Helper()
	for class, negotiable := range map[string]int{"negotiable": 1, "non-negotiable": 0} {
		var owed, line int64
		must(h.t, h.db.QueryRow(`SELECT coalesce(sum(CAST(replace(json_extract(l.value, '$.weight'), ' lb', '') AS INTEGER)), 0) FROM standing, json_each(body, '$.lines') l
			WHERE kind = 'house.receipt' AND json_extract(body, '$.ended') IS NULL AND coalesce(json_extract(body, '$.negotiable'), 0) = ?`, negotiable).Scan(&owed))
		lines, err := h.Store.LinesBefore(ctx, h.Today().AddDays(1).String())
		must(h.t, err)
		for _, l := range lines {
			if l.Bin == class {
				line += l.Weight.Rat().Num().Int64()
			}
		}
		if owed != line {
			h.t.Fatalf("%s receipts are of %d lb, and the position has %d", class, owed, line)
		}
	}
	var stray int
	must(h.t, h.db.QueryRow(`SELECT count(*) FROM standing, json_each(body, '$.lines') l JOIN loads ON loads.ticket = json_extract(l.value, '$.ticket')
		WHERE kind = 'house.receipt' AND json_extract(body, '$.ended') IS NULL AND loads.phase <> 'issued'`).Scan(&stray))
	if stray > 0 {
		h.t.Fatalf("%d lines of receipts rest on tickets that do not count", stray)
	}
}

// moveOn takes all grain of the pit to a bin, so that it is missed where its ticket ends.
func (h *chained) moveOn() {
	bins, err := binlog.Bins(ctx, h.Desk, h.Today())
	must(h.t, err)
	for _, b := range bins {
		for _, held := range b.Grain {
			if b.ID == "A" && held.Lies().Sign() > 0 {
				_, err := scalehouse.MoveGrain(ctx, h.Desk, bin.Movement{What: bin.Transfer, Commodity: "corn",
					From: []bin.Weighed{{Bin: "A", Weight: held.Lies()}}, Into: []bin.Weighed{{Bin: "B", Weight: held.Lies()}}})
				must(h.t, err)
			}
		}
	}
}

func (h *chained) id(number int64) string {
	var id string
	must(h.t, h.db.QueryRow(`SELECT id FROM loads WHERE ticket = ?`, number).Scan(&id))
	return id
}

// void tries to void a ticket alone, and where that is refused with what rests on it.
func (h *chained) void(number int64) {
	err := scalehouse.Void(ctx, h.Desk, number, "a trial")
	h.refusedWhereItRests(number, err)
	if errors.Is(err, message.Refused) {
		h.givenUp(number)
		must(h.t, scalehouse.VoidWithChain(ctx, h.Desk, number, "a trial"))
		h.followed++
	}
	h.lastSheet()
}

// correct weighs a ticket's load again, gives it to another or puts it under other terms.
func (h *chained) correct(number int64) {
	err := h.corrected(scalehouse.Correct, number)
	h.refusedWhereItRests(number, err)
	if errors.Is(err, message.Refused) {
		h.givenUp(number)
		must(h.t, h.corrected(scalehouse.CorrectWithChain, number))
		h.followed++
	}
	h.lastSheet()
}

func (h *chained) corrected(open func(context.Context, scalehouse.Actor, int64, string) (string, error), number int64) error {
	seed := h.r.Uint64()
	return h.Batch(ctx, func(w *scalehouse.Batch) error {
		r := rand.New(rand.NewPCG(seed, 1))
		id, err := open(ctx, w, number, "weighed wrong")
		if err != nil {
			return err
		}
		switch r.IntN(3) {
		case 0:
			d := h.Load(h.id(number)).Details
			d.Shares, d.Bin = nil, "A"
			if err := scalehouse.Amend(ctx, w, id, d); err != nil {
				return err
			}
		default:
			if err := scalehouse.Weigh(ctx, w, id, housetest.ScaleWeight(load.Tare, 20_000+20*r.Int64N(500))); err != nil {
				return err
			}
		}
		next, err := scalehouse.Issue(ctx, w, id)
		if err == nil {
			h.tickets = append(h.tickets, next)
		}
		return err
	})
}

// refusedWhereItRests wants a ticket refused alone where something rests on it, and only there.
func (h *chained) refusedWhereItRests(number int64, err error) {
	h.t.Helper()
	resting := 0
	must(h.t, h.db.QueryRow(`SELECT count(*) FROM standing, json_each(standing.body, '$.lines') AS line
		WHERE kind = 'money.sheet' AND json_extract(standing.body, '$.voided') IS NULL AND json_extract(line.value, '$.ticket') = ?`, fmt.Sprint(number)).Scan(&resting))
	switch {
	case errors.Is(err, message.Refused):
		h.refused++
	case err != nil && !errors.Is(err, message.WrongPhase):
		h.t.Fatal(err)
	case err == nil && resting > 0:
		h.t.Fatalf("ticket %d, on %d lines of sheets, was ended alone", number, resting)
	}
}

func (h *chained) lastSheet() {
	must(h.t, h.db.QueryRow(`SELECT coalesce(max(CAST(id AS INTEGER)), 0) FROM standing WHERE kind = 'money.sheet'`).Scan(&h.sheets))
}

func (h *chained) refusal(err error) {
	h.t.Helper()
	if !errors.Is(err, message.Refused) && !errors.Is(err, message.WrongPhase) && !errors.Is(err, message.Invalid) {
		h.t.Fatal(err)
	}
}

// moneyReconciles compares what growers are owed by the sheets and payments, in SQL, with the ledger
// and with what the program says is open and paid too much. Of each sheet, value less charges is
// payable.
func (h *chained) moneyReconciles() {
	h.t.Helper()
	owed := map[string]*big.Rat{"G1": new(big.Rat), "G2": new(big.Rat)}
	sum := func(sign int64, query string) {
		rows, err := h.db.Query(query)
		must(h.t, err)
		defer rows.Close()
		for rows.Next() {
			var grower, money string
			must(h.t, rows.Scan(&grower, &money))
			r, ok := new(big.Rat).SetString(money[:len(money)-len(" $")])
			if !ok {
				h.t.Fatalf("%q is no money", money)
			}
			owed[grower].Add(owed[grower], r.Mul(r, big.NewRat(sign, 1)))
		}
		must(h.t, rows.Err())
	}
	sum(1, `SELECT json_extract(body, '$.grower'), json_extract(body, '$.figures.net') FROM standing WHERE kind = 'money.sheet' AND json_extract(body, '$.voided') IS NULL`)
	sum(-1, `SELECT json_extract(body, '$.grower'), json_extract(body, '$.figures.deducted') FROM standing WHERE kind = 'money.sheet' AND json_extract(body, '$.voided') IS NULL`)
	sum(1, `SELECT json_extract(body, '$.grower'), json_extract(a.value, '$.amount') FROM standing, json_each(body, '$.advances') a
		WHERE kind = 'money.sheet' AND json_extract(body, '$.voided') IS NULL AND json_extract(a.value, '$.sheet') IS NOT NULL`)
	sum(-1, `SELECT json_extract(s.body, '$.grower'), json_extract(p.body, '$.amount') FROM standing p JOIN standing s ON s.kind = 'money.sheet' AND s.id = json_extract(p.body, '$.sheet')
		WHERE p.kind = 'money.payment' AND json_extract(p.body, '$.voided') IS NULL`)
	booked := h.booked()
	said := h.said()
	for grower, is := range owed {
		if is.Cmp(booked[grower]) != 0 || is.Cmp(said[grower]) != 0 {
			h.t.Fatalf("%s is owed %s; the ledger has %s, the lists %s", grower, is.FloatString(2), booked[grower].FloatString(2), said[grower].FloatString(2))
		}
	}
}

// booked is what the ledger owes growers.
func (h *chained) booked() map[string]*big.Rat {
	out := map[string]*big.Rat{"G1": new(big.Rat), "G2": new(big.Rat)}
	all, err := office.Transactions(ctx, h.Desk, h.all, quantity.Date{}, quantity.Date{})
	must(h.t, err)
	for _, t := range all {
		for _, p := range t.Postings {
			if p.Account == "liabilities:growers" {
				out[t.Grower].Sub(out[t.Grower], p.Amount.Rat())
			}
		}
	}
	return out
}

// said is what the lists of open and overpaid sheets come to.
func (h *chained) said() map[string]*big.Rat {
	out := map[string]*big.Rat{"G1": new(big.Rat), "G2": new(big.Rat)}
	sheets, err := office.Sheets(ctx, h.Desk)
	must(h.t, err)
	payments, err := office.Payments(ctx, h.Desk)
	must(h.t, err)
	for _, o := range paysheet.OpenSheets(sheets, payments) {
		out[o.Grower].Add(out[o.Grower], o.Left.Rat())
	}
	for _, o := range paysheet.OverpaidSheets(sheets, payments) {
		out[o.Grower].Sub(out[o.Grower], o.Back.Rat())
	}
	return out
}

// grainReconciles wants the position to balance.
func (h *chained) grainReconciles() {
	h.t.Helper()
	records, err := binlog.Position(ctx, h.Desk, h.Today())
	must(h.t, err)
	for _, r := range records {
		if !r.Off().IsZero() {
			h.t.Fatalf("the position is off by %s: %+v", r.Off(), r.Lines)
		}
		for _, b := range r.Bins {
			if b.InHouse.Sign() < 0 {
				h.t.Fatalf("%s lie in %s", b.InHouse, b.Bin)
			}
		}
	}
}

// A ticket paid for on two sheets is corrected: both are made anew, at their prices and to the day
// their charges ran to, and the payment goes on to the sheet in place of its own.
func TestWhatRestsOnATicketFollows(t *testing.T) {
	s := scene(t)
	number := ticket(s, false, title.Terms{})
	part := quantity.Int(200, quantity.Bushel)
	first := order(s, "G1", "4.05", number)
	first.Tickets[0].Quantity = &part
	one, _, err := money.Settle(ctx, s.Desk, first)
	must(t, err)
	two, _, err := money.Settle(ctx, s.Desk, order(s, "G1", "4.10", number))
	must(t, err)
	_, err = money.Pay(ctx, s.Desk, paysheet.Payment{Sheet: two.Number, Day: s.Today(), How: paysheet.Check, Reference: "40117", Amount: two.Figures["payable"]})
	must(t, err)
	s.Time = s.Time.Add(72 * time.Hour)
	s.Answered()
	err = scalehouse.Void(ctx, s.Desk, number, "a trial")
	if !errors.Is(err, message.Refused) {
		t.Fatalf("voided alone: %v", err)
	}
	resting, err := rests.On(house.ReadNow(ctx, s.Desk), s.Load("L1"))
	must(t, err)
	named := ""
	for _, r := range resting {
		named += fmt.Sprintf("%s %s ", r.Kind, r.Number)
	}
	if named != "sheet 1 sheet 2 payment 1 " {
		t.Errorf("named: %s", named)
	}
	before := s.Contents()
	if err := scalehouse.VoidWithChain(ctx, s.As(housetest.Clerk).Desk, number, "a trial"); !errors.Is(err, message.Refused) || s.Contents() != before {
		t.Errorf("a clerk: %v", err)
	}
	id, err := scalehouse.CorrectWithChain(ctx, s.As(housetest.Manager).Desk, number, "tare read wrong")
	must(t, err)
	must(t, scalehouse.Weigh(ctx, s.Desk, id, housetest.ScaleWeight(load.Tare, 25_700)))
	if _, err := scalehouse.Issue(ctx, s.As(housetest.Clerk).Desk, id); !errors.Is(err, message.Refused) {
		t.Errorf("a clerk issues: %v", err)
	}
	next, err := scalehouse.Issue(ctx, s.As(housetest.Manager).Desk, id)
	must(t, err)
	made, err := rests.Followed(house.ReadNow(ctx, s.Desk), number)
	must(t, err)
	if len(made) != 2 || made[0].Is == nil || made[1].Is == nil {
		t.Fatalf("followed: %+v", made)
	}
	if q := made[0].Quantity(); !q.IsZero() || made[0].Is.Corrects != one.Number || made[0].Is.RunsTo != one.Day || made[0].Is.Lines[0].Ticket != next {
		t.Errorf("the first part changed by %s: %+v", q, made[0].Is)
	}
	// 1,400 lb less net of 28,000 at 18 % moisture: the rest shrinks by 5 % of all of it.
	is := made[1]
	if is.Quantity().Sign() >= 0 || !is.Left.Equal(is.Payable()) || !is.Paid.Equal(two.Figures["payable"]) {
		t.Errorf("the rest: %s bu, payable %s, paid %s, left %s", is.Quantity(), is.Payable(), is.Paid, is.Left)
	}
	third := ticket(s, false, title.Terms{})
	again, worked, err := money.Settle(ctx, s.Desk, order(s, "G1", "4.00", third))
	must(t, err)
	if len(again.Advances) != 1 || !again.Advances[0].Amount.Equal(is.Payable().Neg()) || !worked.Interest.Value().IsZero() {
		t.Errorf("taken back on the next sheet: %+v, interest %s", again.Advances, worked.Interest.Value())
	}
	s.Verify()
}
