package opening

import (
	"testing"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/position"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/title"
)

func lb(n int64) quantity.Amount { return quantity.Int(n, quantity.Lb) }
func bu(n int64) quantity.Amount { return quantity.Int(n, quantity.Bushel) }

var stored = title.Terms{Under: title.OpenStorage}

// entries is a balanced list: what the house owns is the rest.
func entries() []Entry {
	since := quantity.MustDate("2026-09-14")
	return []Entry{
		{Lying: &Lying{Bin: "B1", Commodity: "corn", Weight: lb(60_000)}},
		{Lying: &Lying{Bin: "B2", Commodity: "corn", Weight: lb(30_000)}},
		{Lot: &Lot{Grower: "101", Name: "Ash", Commodity: "corn", Quantity: bu(500), Weight: lb(28_000), Terms: stored, Since: since}},
		{Lot: &Lot{Grower: "102", Name: "Elm", Commodity: "corn", Quantity: bu(100), Weight: lb(5_600), Terms: stored, Since: since, Receipt: &OnReceipt{Number: 812, Day: since}}},
		{Lot: &Lot{Grower: "101", Name: "Ash", Commodity: "corn", Quantity: bu(200), Weight: lb(11_200), Terms: title.Terms{Under: title.CashSale}, Since: since}},
		{Owned: &Owned{Line: position.Water, Commodity: "corn", Weight: lb(600)}},
		{Owned: &Owned{Line: position.Sold, Commodity: "corn"}, Rest: true},
	}
}

func made(t *testing.T, from []Entry) Opening {
	t.Helper()
	o, err := Of(from)
	if err != nil {
		t.Fatal(err)
	}
	o.Number, o.Day, o.By, o.Reason = 1, quantity.MustDate("2026-10-01"), "M. Orton", "from the books before"
	return o
}

func wants(t *testing.T, err error, want errortest.Want) {
	t.Helper()
	if !want.Met(err) {
		t.Errorf("it is %v, want %v", err, want)
	}
}

// A list balances by what the house owns of the rest, and everything is in its group.
func TestBalance(t *testing.T) {
	o := made(t, entries())
	if err := o.Check(); err != nil {
		t.Fatal(err)
	}
	got := o.Balances()
	want := Balance{"corn", lb(90_000), lb(33_600), lb(55_800), lb(600)}
	if len(got) != 1 || !got[0].Lying.Equal(want.Lying) || !got[0].Owed.Equal(want.Owed) || !got[0].Company.Equal(want.Company) || !got[0].Between.Equal(want.Between) {
		t.Errorf("balances are %+v, want %+v", got, want)
	}
	if rest := o.Owned[len(o.Owned)-1]; !rest.Weight.Equal(lb(44_600)) {
		t.Errorf("the rest is %s", rest.Weight)
	}
}

// What does not balance says by how much not; a rest below zero is depositors' grain that is missing.
func TestUnbalanced(t *testing.T) {
	all := entries()
	o := made(t, all[:len(all)-1])
	wants(t, o.Check(), errortest.Refused("44,600 lb"))
	_, err := Of(all[1:])
	wants(t, err, errortest.Refused("15,400 lb"))
}

// A lot is a load that is settled and rested on like a ticket, with the number of its series.
func TestLotIsALoad(t *testing.T) {
	o := made(t, entries())
	o.Lots[0].Number = First
	l := LoadNumbered([]Opening{o}, First)
	if l == nil || l.Phase != load.Ticketed || l.Details.Grower.ID != "101" || !l.Balance.Quantity.Equal(bu(500)) || !l.Balance.Settled.Equal(lb(28_000)) || l.IssuedDay != o.Day {
		t.Fatalf("the lot is %+v", l)
	}
	o.Ended = &Ended{Day: o.Day, Reason: "wrong"}
	if l = o.Load(o.Lots[0]); l.Phase != load.Void {
		t.Errorf("after the opening was taken back it is %s", l.Phase)
	}
	if LoadNumbered([]Opening{o}, First+7) != nil || !IsLot(First) || IsLot(First-1) {
		t.Error("numbers of lots and of tickets are not told apart")
	}
}

// Lots on one receipt are its lines; a receipt of two depositors is refused.
func TestReceipts(t *testing.T) {
	o := made(t, entries())
	o.Lots[0].Receipt = &OnReceipt{Number: 812, Day: o.Lots[0].Since}
	wants(t, o.Check(), errortest.Invalid("812"))
	o.Lots[0].Grower = o.Lots[1].Grower
	if err := o.Check(); err != nil {
		t.Fatal(err)
	}
	out := o.Receipts()
	if len(out) != 1 || len(out[0].Lines) != 2 || !out[0].Quantity().Equal(bu(600)) || out[0].Day != o.Day || out[0].OldDay != o.Lots[0].Since {
		t.Errorf("receipts are %+v", out)
	}
	if err := out[0].Check(); err != nil {
		t.Error(err)
	}
}

// Quantities and weights follow from each other by the unit that was written.
func TestWeighed(t *testing.T) {
	corn, none := quantity.Int(56, quantity.LbPerBushel), quantity.Zero(quantity.LbPerBushel)
	for _, c := range []struct {
		typed, bushel, q, weight quantity.Amount
	}{
		{quantity.Of("612.34", quantity.Bushel), corn, quantity.Of("612.34", quantity.Bushel), quantity.Of("34291.04", quantity.Lb)},
		{lb(34_291), corn, quantity.Of("612.34", quantity.Bushel), lb(34_291)},
		{lb(5_000), none, quantity.Int(50, quantity.Cwt), lb(5_000)},
		{quantity.Int(50, quantity.Cwt), corn, quantity.Int(50, quantity.Cwt), lb(5_000)},
		{quantity.Of("17.25", quantity.Tonne), corn, quantity.Of("17.25", quantity.Tonne), quantity.Int(17_250, quantity.Kg)},
		{quantity.Int(17_250, quantity.Kg), corn, quantity.Of("17.25", quantity.Tonne), quantity.Int(17_250, quantity.Kg)},
	} {
		q, weight, err := Weighed(c.typed, c.bushel)
		if err != nil || !q.Equal(c.q) || !weight.Equal(c.weight) {
			t.Errorf("%s is %s and %s (%v), want %s and %s", c.typed, q, weight, err, c.q, c.weight)
		}
	}
	for _, wrong := range []quantity.Amount{quantity.Int(5, quantity.Percent), bu(10)} {
		if _, _, err := Weighed(wrong, none); err == nil {
			t.Errorf("%s is taken for grain without a bushel", wrong)
		}
	}
}
