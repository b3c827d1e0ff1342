package receipts_test

import (
	"context"
	"errors"
	"testing"
	"time"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office/receipts"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/receipt"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	acts "tenthpoint/internal/scalehouse/receipts"
	"tenthpoint/internal/title"
)

var ctx = context.Background()

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// ticket issues a ticket of G1 under terms.
func ticket(s *housetest.Scene, terms title.Terms) int64 {
	id := s.Whole()
	d := s.Load(id).Details
	d.Terms = terms
	must(s.T, scalehouse.Amend(ctx, s.Desk, id, d))
	number, err := scalehouse.Issue(ctx, s.Desk, id)
	must(s.T, err)
	s.Time = s.Time.Add(20 * time.Minute)
	return number
}

func scene(t testing.TB) *housetest.Scene {
	s := housetest.New(t).As(housetest.Manager)
	must(t, scalehouse.SetGrower(ctx, s.Desk, elevator.Grower{ID: "G1", Name: "Ada Field"}))
	return s
}

func order(grower string, tickets ...int64) receipts.Order {
	o := receipts.Order{Grower: grower}
	for _, n := range tickets {
		o.Tickets = append(o.Tickets, receipts.Chosen{Number: n})
	}
	return o
}

// A receipt is issued, lost and replaced, its number in a row with a blank; surrendered, its grain is
// free again.
func TestALifeOfReceipts(t *testing.T) {
	s := scene(t)
	stored := ticket(s, title.Terms{Under: title.OpenStorage})
	part := quantity.Int(200, quantity.Bushel)
	first := order("G1", stored)
	first.Tickets[0].Quantity = &part
	one, err := acts.Issue(ctx, s.Desk, first)
	must(t, err)
	rest, err := acts.Issue(ctx, s.Desk, order("G1", stored))
	must(t, err)
	spoiled, err := acts.Blank(ctx, s.Desk, "spoiled")
	must(t, err)
	again, err := acts.Replace(ctx, s.Desk, one.Number, "lost in the mail")
	must(t, err)
	if rest.Number != 2 || spoiled.Number != 3 || again.Number != 4 || again.Replaces != 1 || again.OldDay != one.Day || !again.Quantity().Equal(part) {
		t.Errorf("%+v, %+v, %+v", rest, spoiled, again)
	}
	settled := s.Load("L1").Settled.Figures
	if sum := one.Weight().Add(rest.Weight()); !sum.Equal(settled["settled"]) {
		t.Errorf("receipts of %s, settled %s", sum, settled["settled"])
	}
	if _, err := acts.Issue(ctx, s.Desk, order("G1", stored)); !errors.Is(err, message.Refused) {
		t.Errorf("issued twice: %v", err)
	}
	_, err = acts.Surrender(ctx, s.Desk, again.Number, "")
	must(t, err)
	if free, err := acts.Issue(ctx, s.Desk, order("G1", stored)); err != nil || !free.Quantity().Equal(part) {
		t.Errorf("free after: %+v, %v", free, err)
	}
	s.Verify()
}

// What cannot be is refused by its kind, and nothing of it written.
func TestARefusedReceiptWritesNothing(t *testing.T) {
	s := scene(t)
	stored, sold, void := ticket(s, title.Terms{Under: title.OpenStorage}), ticket(s, title.Terms{Under: title.CashSale}), ticket(s, title.Terms{Under: title.OpenStorage})
	must(t, scalehouse.Void(ctx, s.Desk, void, "a trial"))
	one, err := acts.Issue(ctx, s.Desk, order("G1", stored))
	must(t, err)
	spoiled, err := acts.Blank(ctx, s.Desk, "spoiled")
	must(t, err)
	for name, c := range map[string]struct {
		act  func() error
		kind error
	}{
		"sold grain":        {func() error { _, err := acts.Issue(ctx, s.Desk, order("G1", sold)); return err }, message.Refused},
		"a void ticket":     {func() error { _, err := acts.Issue(ctx, s.Desk, order("G1", void)); return err }, message.Refused},
		"another's grain":   {func() error { _, err := acts.Issue(ctx, s.Desk, order("G2", stored)); return err }, message.Refused},
		"no such ticket":    {func() error { _, err := acts.Issue(ctx, s.Desk, order("G1", 99)); return err }, message.NotFound},
		"nothing":           {func() error { _, err := acts.Issue(ctx, s.Desk, order("G1")); return err }, message.Invalid},
		"no such receipt":   {func() error { _, err := acts.Surrender(ctx, s.Desk, 99, ""); return err }, message.NotFound},
		"a blank":           {func() error { _, err := acts.Surrender(ctx, s.Desk, spoiled.Number, ""); return err }, message.Refused},
		"without a reason":  {func() error { _, err := acts.Cancel(ctx, s.Desk, one.Number, " "); return err }, message.Incomplete},
		"a blank for none":  {func() error { _, err := acts.Blank(ctx, s.Desk, ""); return err }, message.Incomplete},
		"its ticket voided": {func() error { return scalehouse.Void(ctx, s.Desk, stored, "a trial") }, message.Refused},
		"a clerk": {func() error {
			_, err := acts.Surrender(ctx, s.As(housetest.Clerk).Desk, one.Number, "")
			s.As(housetest.Manager)
			return err
		}, message.Refused},
	} {
		before := s.Contents()
		if err := c.act(); !errors.Is(err, c.kind) {
			t.Errorf("%s: %v", name, err)
		}
		if s.Contents() != before {
			t.Errorf("%s: something was written", name)
		}
	}
}

// A receipt follows the correction of its ticket: cancelled, with another of what the new ticket
// brings in its place. A negotiable one may be in anybody's hands.
func TestAReceiptFollowsItsTicket(t *testing.T) {
	s := scene(t)
	stored := ticket(s, title.Terms{Under: title.OpenStorage})
	o := order("G1", stored)
	o.Negotiable = true
	one, err := acts.Issue(ctx, s.Desk, o)
	must(t, err)
	if err := scalehouse.VoidWithChain(ctx, s.Desk, stored, "a trial"); !errors.Is(err, message.Refused) {
		t.Errorf("a negotiable receipt is out: %v", err)
	}
	_, err = acts.Surrender(ctx, s.Desk, one.Number, "")
	must(t, err)
	_, err = acts.Issue(ctx, s.Desk, order("G1", stored))
	must(t, err)
	id, err := scalehouse.CorrectWithChain(ctx, s.Desk, stored, "tare read wrong")
	must(t, err)
	must(t, scalehouse.Weigh(ctx, s.Desk, id, housetest.ScaleWeight(load.Tare, 30_000)))
	next, err := scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
	all, err := receipts.All(ctx, s.Desk)
	must(t, err)
	if len(all) != 3 || all[1].Ended == nil || all[1].Ended.How != receipt.Cancelled {
		t.Fatalf("%+v", all)
	}
	if is := all[2]; is.Replaces != 2 || is.Lines[0].Ticket != next || !is.Weight().Equal(s.Load(id).Settled.Figures["settled"]) || !is.Weight().Less(all[1].Weight()) {
		t.Errorf("in its place: %+v", is)
	}
	s.Verify()
}
