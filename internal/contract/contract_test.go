package contract_test

import (
	"cmp"
	"errors"
	"math/big"
	"slices"
	"sort"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/contract"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

func bu(text string) quantity.Amount        { return quantity.Of(text, quantity.Bushel) }
func perBu(t string) quantity.Amount        { return quantity.Of(t, quantity.DollarsPerBu) }
func day(text string) quantity.Date         { return quantity.MustDate(text) }
func of(a quantity.Amount) *quantity.Amount { return &a }

func forward(number, grower, bushels string) elevator.ContractTerms {
	return elevator.ContractTerms{Number: number, Grower: grower, Commodity: "corn", Quantity: bu(bushels), Price: perBu("4.12"), From: day("2026-09-01"), Until: day("2026-12-31")}
}

// Every form fixes what it says and nothing else.
func TestForms(t *testing.T) {
	base := forward("C", "1", "5000")
	for _, c := range []struct {
		form           elevator.ContractForm
		price          bool
		basis, futures bool
	}{
		{elevator.Forward, true, false, false}, {elevator.Cash, true, false, false}, {elevator.MinimumPrice, true, false, false}, {elevator.DeferredPayment, true, false, false},
		{elevator.Basis, false, true, false}, {elevator.HedgeToArrive, false, false, true}, {elevator.DelayedPrice, false, false, false}, {elevator.GrainBank, false, false, false},
	} {
		for mask := range 8 {
			one := base
			one.Form, one.Price = c.form, quantity.Amount{}
			price, basis, futures := mask&1 > 0, mask&2 > 0, mask&4 > 0
			if price {
				one.Price = perBu("4.12")
			}
			if basis {
				one.Basis = of(perBu("-0.30"))
			}
			if futures {
				one.Futures = of(perBu("4.50"))
			}
			right := price == c.price && basis == c.basis && futures == c.futures
			if err := one.Check(); (err == nil) != right {
				t.Errorf("%q with price %v, basis %v, futures %v: %v", c.form, price, basis, futures, err)
			}
		}
	}
}

// A basis kept at -0.10 while the market goes to -0.25 is worth 0.15; 5,000 bushels 750.00 (published).
func TestPricedInParts(t *testing.T) {
	c := forward("B", "1", "5000")
	c.Form, c.Price, c.Basis = elevator.Basis, quantity.Amount{}, of(perBu("-0.10"))
	order := contract.Pricing{Quantity: bu("2000"), Money: perBu("4.00"), Day: day("2026-10-05"), By: "Mae Orton"}
	next, err := contract.Price(c, order)
	if err != nil || !next.Parts[0].Price.Equal(perBu("3.90")) || !contract.Unpriced(next).Equal(bu("3000")) || !contract.Priced(next).Equal(bu("2000")) {
		t.Errorf("%+v, %v", next.Parts, err)
	}
	if len(c.Parts) != 0 {
		t.Error("the contract as it was has changed")
	}
	gain := next.Parts[0].Price.Sub(perBu("4.00").Add(perBu("-0.25"))).Mul(bu("5000"))
	if !gain.Equal(quantity.Of("750", quantity.Dollar)) {
		t.Errorf("the basis kept is worth %s", gain)
	}
	order.Quantity = bu("3000.01")
	if _, err := contract.Price(next, order); !errors.Is(err, message.Refused) {
		t.Errorf("more than is open: %v", err)
	}
	hedged := forward("H", "1", "5000")
	hedged.Form, hedged.Price, hedged.Futures = elevator.HedgeToArrive, quantity.Amount{}, of(perBu("4.50"))
	if next, err := contract.Price(hedged, contract.Pricing{Quantity: bu("5000"), Money: perBu("-0.35"), Day: day("2026-10-05")}); err != nil || !next.Parts[0].Price.Equal(perBu("4.15")) {
		t.Errorf("hedge to arrive: %+v, %v", next.Parts, err)
	}
	floor := forward("M", "1", "5000")
	floor.Form = elevator.MinimumPrice
	if _, err := contract.Price(floor, contract.Pricing{Quantity: bu("100"), Money: perBu("4.11"), Day: day("2026-10-05")}); !errors.Is(err, message.Refused) {
		t.Errorf("below the floor: %v", err)
	}
	if _, err := contract.Price(forward("C", "1", "5000"), order); !errors.Is(err, message.Refused) {
		t.Errorf("a part of a forward contract: %v", err)
	}
}

// A contract is signed once, extended forward, rolled with its spread, and ends once; after that
// nothing changes.
func TestChanges(t *testing.T) {
	c := forward("B", "1", "5000")
	c.Form, c.Price, c.Basis, c.Month = elevator.Basis, quantity.Amount{}, of(perBu("-0.30")), "2026-12"
	today, by := day("2026-10-20"), "Mae Orton"
	c, err := contract.Sign(c, today, by)
	if err != nil || !c.IsSigned() {
		t.Fatal(err)
	}
	if _, err := contract.Sign(c, today, by); !errors.Is(err, message.Refused) {
		t.Errorf("signed twice: %v", err)
	}
	if _, err := contract.Extend(c, c.Until, today, by, ""); !errors.Is(err, message.Refused) {
		t.Errorf("extended to the same day: %v", err)
	}
	c, err = contract.Roll(c, "2027-03", perBu("0.04"), day("2027-02-28"), today, by)
	if err != nil || !c.Basis.Equal(perBu("-0.26")) || c.Month != "2027-03" || c.Changes[1].Month != "2026-12" || c.Changes[1].Until != day("2026-12-31") {
		t.Errorf("rolled: %+v, %v", c, err)
	}
	if _, err := contract.Cancel(c, bu("0.01"), today, by, "rain"); !errors.Is(err, message.Refused) {
		t.Errorf("cancelled with grain on it: %v", err)
	}
	c, err = contract.Cancel(c, bu("0"), today, by, "rain")
	if end, closed := c.Closed(); err != nil || !closed || end.What != elevator.Cancelled {
		t.Errorf("cancelled: %v, %v", end, err)
	}
	for name, change := range map[string]func() error{
		"extend": func() error { _, err := contract.Extend(c, day("2028-01-01"), today, by, ""); return err },
		"roll":   func() error { _, err := contract.Roll(c, "2027-05", perBu("0"), c.Until, today, by); return err },
		"price": func() error {
			_, err := contract.Price(c, contract.Pricing{Quantity: bu("1"), Money: perBu("4"), Day: today})
			return err
		},
		"buy": func() error { _, err := contract.BuyOut(c, quantity.Zero(quantity.Dollar), today, by, ""); return err },
	} {
		if err := change(); !errors.Is(err, message.Refused) {
			t.Errorf("%s after the end: %v", name, err)
		}
	}
}

// 3,000 bushels that never came, at 0.20 under the market, cost 600 (published).
func TestBuyOut(t *testing.T) {
	c := contract.Filled{ContractTerms: forward("C", "1", "5000"), Delivered: bu("2000"), Left: bu("3000")}
	_, owed, err := contract.BuyOutWorking(c, perBu("4.32"))
	if err != nil || !owed.Value().Equal(quantity.Of("600", quantity.Dollar)) {
		t.Errorf("%v, %v", owed, err)
	}
	c.Price = quantity.Amount{}
	if _, _, err := contract.BuyOutWorking(c, perBu("4.32")); !errors.Is(err, message.Refused) {
		t.Errorf("without a price: %v", err)
	}
}

// A load that brings more than its contract takes is split, a landlord's part stays off the tenant's
// contract, and what nobody has room for is spot.
func TestFill(t *testing.T) {
	tenant, next, landlord := forward("C-1", "102", "1000"), forward("C-2", "102", "500"), forward("L-1", "901", "300")
	next.Until = day("2027-01-31")
	tolerant := forward("T", "103", "1000")
	tolerant.Tolerance = of(quantity.Of("2", quantity.Percent))
	other := forward("S", "102", "9000")
	other.Commodity = "soybeans"
	part := func(ticket int64, owner, bushels, named string) contract.Part {
		return contract.Part{Ticket: ticket, Owner: owner, Commodity: "corn", Day: day("2026-10-10"), Quantity: bu(bushels), Contract: named}
	}
	got := contract.Fill([]elevator.ContractTerms{next, landlord, tolerant, tenant, other}, []contract.Part{
		part(2, "102", "900", "C-1"), part(1, "102", "400", "C-1"), part(1, "901", "200", "C-1"), part(3, "102", "300", "C-1"), part(3, "901", "150", "C-1"),
		part(4, "103", "1030", "T"), part(5, "102", "77", ""), part(6, "102", "10", "gone"),
	}, contract.ByEnd)
	want := map[string]string{"C-1": "1000", "C-2": "500", "L-1": "300", "T": "1020", "S": "0"}
	for _, c := range got.Contracts {
		if !c.Delivered.Equal(bu(want[c.Number])) {
			t.Errorf("%s has %s", c.Number, c.Delivered)
		}
		// C-2 takes 500 of the 600 too much for C-1, the tenant's; T takes 20 within its tolerance.
		if over := map[string]string{"C-1": "100", "T": "30"}[c.Number]; !c.Over().Equal(bu(cmp.Or(over, "0"))) {
			t.Errorf("%s: %s too much", c.Number, c.Over())
		}
	}
	spot := bu("0")
	for _, a := range got.Spot {
		spot = spot.Add(a.Quantity)
		if a.Why.IsZero() {
			t.Errorf("ticket %d is spot, and nobody says why", a.Ticket)
		}
	}
	if !spot.Equal(bu("170")) { // 102: 1,610 named, 1,500 of room; 901: 350 for 300; 103: 10 over
		t.Errorf("spot: %s", spot)
	}
}

// What is short is what is missing beyond the tolerance.
func TestShort(t *testing.T) {
	c := forward("T", "103", "1000")
	c.Tolerance = of(quantity.Of("2", quantity.Percent))
	f := contract.Fill([]elevator.ContractTerms{c}, []contract.Part{{Ticket: 1, Owner: "103", Commodity: "corn", Day: day("2026-10-10"), Quantity: bu("970"), Contract: "T"}}, contract.ByEnd)
	if one := f.Contracts[0]; !one.Left.Equal(bu("30")) || !one.Short.Equal(bu("10")) {
		t.Errorf("left %s, short %s", one.Left, one.Short)
	}
}

// TestFillAgainstAnOracle fills random contracts by a plain loop over hundredths, written apart from the
// package, and compares every contract; shuffled facts give the same.
func TestFillAgainstAnOracle(t *testing.T) {
	growers := []string{"1", "2", "3"}
	rapid.Check(t, func(t *rapid.T) {
		var contracts []elevator.ContractTerms
		for i := range rapid.IntRange(1, 8).Draw(t, "contracts") {
			c := forward("C"+strconv.Itoa(i), rapid.SampledFrom(growers).Draw(t, "grower"), strconv.Itoa(rapid.IntRange(1, 3000).Draw(t, "bushels")))
			c.Until = day("2026-12-01").AddDays(rapid.IntRange(-90, 60).Draw(t, "until"))
			if rapid.Bool().Draw(t, "tolerant") {
				c.Tolerance = of(quantity.Int(int64(rapid.IntRange(0, 10).Draw(t, "tolerance")), quantity.Percent))
			}
			contracts = append(contracts, c)
		}
		var parts []contract.Part
		for i := range rapid.IntRange(0, 30).Draw(t, "tickets") {
			parts = append(parts, contract.Part{
				Ticket: int64(i + 1), Owner: rapid.SampledFrom(growers).Draw(t, "owner"), Commodity: "corn", Day: day("2026-09-15").AddDays(rapid.IntRange(0, 90).Draw(t, "day")),
				Quantity: bu(strconv.Itoa(rapid.IntRange(1, 1000).Draw(t, "whole")) + "." + strconv.Itoa(rapid.IntRange(10, 99).Draw(t, "hundredths"))),
				Contract: "C" + strconv.Itoa(rapid.IntRange(0, 9).Draw(t, "named")),
			})
		}
		want, spot := oracle(contracts, parts)
		for range 2 {
			got := contract.Fill(contracts, parts, contract.ByEnd)
			for _, c := range got.Contracts {
				if c.Delivered.Rat().Cmp(want[c.Number]) != 0 {
					t.Fatalf("%s has %s, the oracle %s", c.Number, c.Delivered, want[c.Number].FloatString(4))
				}
			}
			sum := new(big.Rat)
			for _, a := range got.Spot {
				sum.Add(sum, a.Quantity.Rat())
			}
			if sum.Cmp(spot) != 0 {
				t.Fatalf("spot %s, the oracle %s", sum.FloatString(4), spot.FloatString(4))
			}
			contracts, parts = rapid.Permutation(contracts).Draw(t, "contracts"), rapid.Permutation(parts).Draw(t, "parts")
		}
	})
}

func oracle(contracts []elevator.ContractTerms, parts []contract.Part) (map[string]*big.Rat, *big.Rat) {
	sorted := slices.Clone(contracts)
	sort.Slice(sorted, func(i, j int) bool {
		a, b := sorted[i], sorted[j]
		if a.Until != b.Until {
			return a.Until.Before(b.Until)
		}
		return a.Number < b.Number
	})
	room, got := map[string]*big.Rat{}, map[string]*big.Rat{}
	for _, c := range sorted {
		most := c.Quantity.Rat()
		if c.Tolerance != nil {
			most.Add(most, new(big.Rat).Mul(most, new(big.Rat).Quo(c.Tolerance.Rat(), big.NewRat(100, 1))))
		}
		room[c.Number], got[c.Number] = most, new(big.Rat)
	}
	spot := new(big.Rat)
	for _, p := range parts {
		left := p.Quantity.Rat()
		try := func(c elevator.ContractTerms) {
			take := new(big.Rat).Set(left)
			if take.Cmp(room[c.Number]) > 0 {
				take.Set(room[c.Number])
			}
			left.Sub(left, take)
			room[c.Number].Sub(room[c.Number], take)
			got[c.Number].Add(got[c.Number], take)
		}
		for _, c := range sorted {
			if c.Number == p.Contract && c.Grower == p.Owner {
				try(c)
			}
		}
		for _, c := range sorted {
			if c.Number != p.Contract && c.Grower == p.Owner && !p.Day.Before(c.From) && !p.Day.After(c.Until) {
				try(c)
			}
		}
		spot.Add(spot, left)
	}
	return got, spot
}
