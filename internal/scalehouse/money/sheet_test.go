package money_test

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"tenthpoint/internal/book/sqlite/sqlitetest"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/levy"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	papers "tenthpoint/internal/office/money"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/scalehouse/money"
	"tenthpoint/internal/title"
	"tenthpoint/schedules"
)

var ctx = context.Background()

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func price(text string) *quantity.Amount {
	a := quantity.Of(text, quantity.DollarsPerBu)
	return &a
}

// order settles tickets of a grower at a price, on the day of the scene.
func order(s *housetest.Scene, grower, at string, tickets ...int64) papers.Order {
	set, err := schedules.Tariffs()
	must(s.T, err)
	tariff, _ := set.ByID("corn-main-tariff-2026")
	o := papers.Order{Grower: grower, Day: s.Today(), Tariff: tariff, Source: "price of the sheet"}
	if at != "" {
		o.Price = price(at)
	}
	for _, n := range tickets {
		o.Tickets = append(o.Tickets, papers.Chosen{Number: n})
	}
	return o
}

// ticket issues a ticket of G1, or of G1 and G2 two to one, with terms.
func ticket(s *housetest.Scene, shared bool, terms title.Terms) int64 {
	id := s.Whole()
	d := s.Load(id).Details
	d.Terms = terms
	if shared {
		d.Shares = []load.Owner{
			{Party: d.Grower, Parts: housetest.Plain(2), Of: housetest.Plain(3)},
			{Party: load.Party{ID: "G2", Name: "Bo Acre"}, Parts: housetest.Plain(1), Of: housetest.Plain(3)},
		}
	}
	must(s.T, scalehouse.Amend(ctx, s.Desk, id, d))
	number, err := scalehouse.Issue(ctx, s.Desk, id)
	must(s.T, err)
	s.Time = s.Time.Add(20 * time.Minute)
	return number
}

func scene(t testing.TB) *housetest.Scene {
	s := housetest.New(t).As(housetest.Manager)
	for _, g := range []elevator.Grower{{ID: "G1", Name: "Ada Field"}, {ID: "G2", Name: "Bo Acre"}} {
		must(t, scalehouse.SetGrower(ctx, s.Desk, g))
	}
	return s
}

// What cannot be settled is refused in a sentence of its kind, and nothing of it is written.
func TestARefusedSheetWritesNothing(t *testing.T) {
	s := scene(t)
	open, stored, void, corrected := ticket(s, false, title.Terms{}), ticket(s, false, title.Terms{Under: title.OpenStorage}), ticket(s, false, title.Terms{}), ticket(s, false, title.Terms{})
	must(t, scalehouse.Void(ctx, s.Desk, void, "a trial"))
	_, err := scalehouse.Correct(ctx, s.Desk, corrected, "a trial")
	must(t, err)
	for _, c := range []elevator.ContractTerms{
		{Number: "THEIRS", Grower: "G2", Commodity: "corn"}, {Number: "BEANS", Grower: "G1", Commodity: "soybeans"}, {Number: "SMALL", Grower: "G1", Commodity: "corn"},
	} {
		c.Quantity, c.Price, c.Until = quantity.Int(10, quantity.Bushel), *price("4.20"), quantity.MustDate("2026-12-31")
		must(t, scalehouse.SetContract(ctx, s.Desk, c))
	}
	levies, err := schedules.Levies()
	must(t, err)
	on := func(contract string) papers.Order {
		o := order(s, "G1", "", open)
		o.Contract = contract
		return o
	}
	with := func(change func(*papers.Order), o papers.Order) papers.Order { change(&o); return o }
	tooMuch := quantity.Int(9000, quantity.Bushel)
	none := quantity.Zero(quantity.Bushel)
	for name, c := range map[string]struct {
		order papers.Order
		kind  error
	}{
		"a price on open storage":      {order(s, "G1", "4.05", stored), message.Refused},
		"no price":                     {order(s, "G1", "", open), message.Refused},
		"a void ticket":                {order(s, "G1", "4.05", void), message.Refused},
		"a ticket under correction":    {order(s, "G1", "4.05", corrected), message.Refused},
		"a ticket of another":          {order(s, "G2", "4.05", open), message.Refused},
		"no such ticket":               {order(s, "G1", "4.05", 99), message.NotFound},
		"one ticket twice on a sheet":  {order(s, "G1", "4.05", open, open), message.Refused},
		"more than was delivered":      {with(func(o *papers.Order) { o.Tickets[0].Quantity = &tooMuch }, order(s, "G1", "4.05", open)), message.Refused},
		"nothing of it":                {with(func(o *papers.Order) { o.Tickets[0].Quantity = &none }, order(s, "G1", "4.05", open)), message.Invalid},
		"another's contract":           {on("THEIRS"), message.Refused},
		"a contract of another grain":  {on("BEANS"), message.Refused},
		"no such contract":             {on("GONE"), message.NotFound},
		"more than the contract takes": {on("SMALL"), message.Refused},
		"a day before the ticket":      {with(func(o *papers.Order) { o.Day = o.Day.AddDays(-1) }, order(s, "G1", "4.05", open)), message.Refused},
		"in place of no sheet":         {with(func(o *papers.Order) { o.Corrects = 7 }, order(s, "G1", "4.05", open)), message.NotFound},
		"a levy in another unit":       {with(func(o *papers.Order) { o.Levies = []*levy.Levy{tonnes(t)} }, order(s, "G1", "4.05", open)), message.Invalid},
	} {
		before := s.Contents()
		if _, _, err := money.Settle(ctx, s.Desk, c.order); !errors.Is(err, c.kind) {
			t.Errorf("%s: %v", name, err)
		}
		if s.Contents() != before {
			t.Errorf("%s: something was written", name)
		}
	}
	corn, _ := levies.ByID("indiana-corn")
	good := order(s, "G1", "4.05", open)
	good.Levies = []*levy.Levy{corn}
	if _, _, err := money.Settle(ctx, s.As(housetest.Clerk).Desk, good); !errors.Is(err, message.Refused) {
		t.Errorf("a clerk: %v", err)
	}
	must(t, scalehouse.CloseDay(ctx, s.As(housetest.Manager).Desk, s.Today(), ""))
	if _, _, err := money.Settle(ctx, s.Desk, good); !errors.Is(err, message.Refused) {
		t.Errorf("in a closed day: %v", err)
	}
}

// tonnes is a levy that no sheet in bushels can take.
func tonnes(t testing.TB) *levy.Levy {
	l, err := levy.Read("test.toml", []byte("[levy]\nid = \"t\"\ntitle = \"T\"\njurisdiction = \"Here\"\ncommodity = \"corn\"\nevent = \"sale\"\nbase = \"quantity\"\nrate = \"1 $/t\"\npayer = \"producer\"\nrefundable = false\nfrom = \"2020-01-01\"\nsource = \"none\"\n"))
	must(t, err)
	return l
}

// TestSheetsAtEveryStage issues, settles, voids and tries to undo tickets at random. A ticket that a
// sheet rests on is never voided or corrected, and after each act what was delivered is what SQL finds
// on the sheets and what is left, owner by owner.
func TestSheetsAtEveryStage(t *testing.T) {
	for seed := range uint64(3) {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			s := scene(t)
			db := sqlitetest.Open(t, s.Store.Path())
			r := rand.New(rand.NewPCG(seed, 16))
			var tickets []int64
			sheets := int64(0)
			for range 40 {
				if len(tickets) == 0 || r.IntN(4) == 0 {
					terms := title.Terms{}
					if r.IntN(3) == 0 {
						terms.Under = title.OpenStorage
					}
					tickets = append(tickets, ticket(s, r.IntN(2) == 0, terms))
				}
				number := tickets[r.IntN(len(tickets))]
				switch r.IntN(5) {
				case 0:
					undo(t, s, db, number, r.IntN(2) == 0)
				case 1:
					if sheets > 0 {
						err := money.VoidSheet(ctx, s.Desk, 1+r.Int64N(sheets), "a trial")
						if err != nil && !errors.Is(err, message.Refused) {
							t.Fatal(err)
						}
					}
				default:
					o := order(s, []string{"G1", "G2"}[r.IntN(2)], "4.05", number)
					o.Sale = true
					if r.IntN(2) == 0 {
						q := quantity.Of(fmt.Sprintf("%d.%02d", r.IntN(250), 1+r.IntN(99)), quantity.Bushel)
						o.Tickets[0].Quantity = &q
					}
					if made, _, err := money.Settle(ctx, s.Desk, o); err == nil {
						sheets++
						if made.Number != sheets {
							t.Fatalf("sheet %d after %d", made.Number, sheets-1)
						}
					} else if !errors.Is(err, message.Refused) && !errors.Is(err, message.WrongPhase) {
						t.Fatal(err)
					}
				}
				deliveredIsSettledAndLeft(t, s, db)
			}
			s.Verify()
		})
	}
}

// undo voids or corrects a ticket; while a sheet rests on it, it must not.
func undo(t *testing.T, s *housetest.Scene, db *sql.DB, number int64, void bool) {
	t.Helper()
	resting := 0
	must(t, db.QueryRow(`SELECT count(*) FROM standing, json_each(standing.body, '$.lines') AS line
		WHERE kind = 'money.sheet' AND json_extract(standing.body, '$.voided') IS NULL AND json_extract(line.value, '$.ticket') = ?`, fmt.Sprint(number)).Scan(&resting))
	var err error
	if void {
		err = scalehouse.Void(ctx, s.Desk, number, "a trial")
	} else {
		var id string
		if id, err = scalehouse.Correct(ctx, s.Desk, number, "a trial"); err == nil {
			_, err = scalehouse.Issue(ctx, s.Desk, id)
		}
	}
	if resting > 0 && !errors.Is(err, message.Refused) {
		t.Fatalf("ticket %d, which %d lines of sheets rest on: %v", number, resting, err)
	}
}

// deliveredIsSettledAndLeft compares, owner by owner, what the program says is left with what SQL
// finds delivered and on sheets.
func deliveredIsSettledAndLeft(t *testing.T, s *housetest.Scene, db *sql.DB) {
	t.Helper()
	for _, grower := range []string{"G1", "G2"} {
		left, err := papers.UnsettledOf(ctx, s.Desk, grower)
		if errors.Is(err, message.NotFound) {
			continue // no ticket yet
		}
		must(t, err)
		whole := map[int64]*big.Rat{}
		remains := map[int64]*big.Rat{}
		for _, u := range left {
			whole[u.Ticket], remains[u.Ticket] = u.Whole.Rat(), u.Left.Rat()
		}
		rows, err := db.Query(`SELECT json_extract(line.value, '$.ticket'), json_extract(line.value, '$.quantity'), json_extract(line.value, '$.whole')
			FROM standing, json_each(standing.body, '$.lines') AS line
			WHERE kind = 'money.sheet' AND json_extract(standing.body, '$.voided') IS NULL AND json_extract(standing.body, '$.grower') = ?`, grower)
		must(t, err)
		settled := map[int64]*big.Rat{}
		for rows.Next() {
			var number int64
			var q, all string
			must(t, rows.Scan(&number, &q, &all))
			if settled[number] == nil {
				settled[number] = new(big.Rat)
			}
			settled[number].Add(settled[number], bushels(t, q))
			whole[number] = bushels(t, all)
		}
		must(t, rows.Err())
		must(t, rows.Close())
		for number, all := range whole {
			sum := new(big.Rat)
			for _, part := range []*big.Rat{settled[number], remains[number]} {
				if part != nil {
					sum.Add(sum, part)
				}
			}
			if sum.Cmp(all) != 0 {
				t.Fatalf("ticket %d, %s: delivered %s, settled and left %s", number, grower, all.FloatString(2), sum.FloatString(2))
			}
		}
	}
}

// bushels is a quantity as a fact has it: "412.5 bu".
func bushels(t *testing.T, text string) *big.Rat {
	t.Helper()
	r, ok := new(big.Rat).SetString(strings.TrimSuffix(text, " bu"))
	if !ok {
		t.Fatalf("%q is no quantity", text)
	}
	return r
}

// Of two people who change one contract, neither undoes the other.
func TestContractsAreChangedAsTheyStand(t *testing.T) {
	s := scene(t)
	must(t, scalehouse.SetContract(ctx, s.Desk, elevator.ContractTerms{Number: "C", Grower: "G1", Commodity: "corn", Quantity: quantity.Int(10, quantity.Bushel), Price: *price("4.20"), Until: quantity.MustDate("2026-12-31")}))
	for _, note := range []string{"one", "two"} {
		_, err := money.ChangeContract(ctx, s.Desk, "C", func(c elevator.ContractTerms) (elevator.ContractTerms, error) {
			c.Changes = append(c.Changes, elevator.ContractChange{What: elevator.Signed, Day: s.Today(), By: s.Signature(), Note: note})
			return c, nil
		})
		must(t, err)
	}
	c, err := office.ContractNumbered(ctx, s.Desk, "C")
	if err != nil || len(c.Changes) != 2 {
		t.Errorf("%+v, %v", c.Changes, err)
	}
	if _, err := money.ChangeContract(ctx, s.Desk, "GONE", nil); !errors.Is(err, message.NotFound) {
		t.Errorf("no such contract: %v", err)
	}
}
