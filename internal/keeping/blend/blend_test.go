package blend

import (
	"errors"
	"fmt"
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
)

func lb(n int64) quantity.Amount       { return quantity.Int(n, quantity.Lb) }
func pct(text string) quantity.Amount  { return quantity.Of(text, quantity.Percent) }
func lbbu(text string) quantity.Amount { return quantity.Of(text, quantity.LbPerBushel) }

// Worked by the rule that moisture is the mean by wet weight.
func TestPublishedBlends(t *testing.T) {
	lots := []Lot{{Name: "wet", Weight: lb(10000), Moisture: pct("17"), Whole: true}, {Name: "dry", Weight: lb(50000), Moisture: pct("13")}}
	m, err := Best(lots, Target{Moisture: pct("15.5")})
	if err != nil || !m.Take[0].Equal(lb(10000)) || !m.Take[1].Equal(lb(6000)) || !m.Moisture.Equal(pct("15.5")) {
		t.Errorf("%+v %v", m, err)
	}
	for _, c := range []struct {
		lots []Lot
		want string
	}{
		{[]Lot{{Weight: lb(1000), Moisture: pct("14")}, {Weight: lb(1000), Moisture: pct("12")}}, "13"},
		{[]Lot{{Weight: lb(52300), Moisture: pct("17.2")}, {Weight: lb(41800), Moisture: pct("13.1")}}, "15.3787"},
		{[]Lot{{Weight: lb(56000), Moisture: pct("25")}, {Weight: lb(56000), Moisture: pct("10")}}, "17.5"},
	} {
		m := MixOf(c.lots, []quantity.Amount{c.lots[0].Weight, c.lots[1].Weight})
		if got := quantity.To("0.0001", quantity.HalfUp).Apply(m.Moisture); !got.Equal(pct(c.want)) {
			t.Errorf("%s, want %s", got, c.want)
		}
	}
}

func TestBlendThatCannotBe(t *testing.T) {
	wet, dry := Lot{Name: "A", Weight: lb(1000), Moisture: pct("17")}, Lot{Name: "B", Weight: lb(10), Moisture: pct("14")}
	whole := wet
	whole.Whole = true
	light := Lot{Name: "C", Weight: lb(1000), Moisture: pct("13"), TestWeight: lbbu("50")}
	for name, c := range map[string]struct {
		lots   []Lot
		target Target
		kind   message.Kind
	}{
		"all too wet":    {[]Lot{wet, wet}, Target{Moisture: pct("15")}, message.Refused},
		"not all of it":  {[]Lot{whole, dry}, Target{Moisture: pct("15")}, message.Refused},
		"all too light":  {[]Lot{light, light}, Target{Moisture: pct("15"), TestWeight: lbbu("54")}, message.Refused},
		"one lot":        {[]Lot{wet}, Target{Moisture: pct("15")}, message.Invalid},
		"two units":      {[]Lot{wet, {Weight: quantity.Int(5, quantity.Kg), Moisture: pct("14")}}, Target{Moisture: pct("15")}, message.Invalid},
		"nothing there":  {[]Lot{wet, {Weight: lb(0), Moisture: pct("14")}}, Target{Moisture: pct("15")}, message.Invalid},
		"no test weight": {[]Lot{wet, dry}, Target{Moisture: pct("15"), TestWeight: lbbu("54")}, message.Invalid},
		"no such target": {[]Lot{wet, dry}, Target{Moisture: pct("100")}, message.Invalid},
	} {
		if _, err := Best(c.lots, c.target); !errors.Is(err, c.kind) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// The limit that cannot be met is named, with the lot that comes nearest.
func TestABlendOutOfReachSaysWhy(t *testing.T) {
	wet, light := Lot{Name: "A", Weight: lb(1000), Moisture: pct("15.2"), TestWeight: lbbu("57")}, Lot{Name: "B", Weight: lb(1000), Moisture: pct("13"), TestWeight: lbbu("50")}
	for name, c := range map[string]struct {
		lots   []Lot
		target Target
		says   errortest.Want
	}{
		"too wet":   {[]Lot{wet, {Name: "D", Weight: lb(9), Moisture: pct("17"), TestWeight: lbbu("57")}}, Target{Moisture: pct("15")}, errortest.Refused("A", "15.2 %")},
		"too light": {[]Lot{light, {Name: "C", Weight: lb(9), Moisture: pct("12"), TestWeight: lbbu("51")}}, Target{Moisture: pct("15"), TestWeight: lbbu("54")}, errortest.Refused("C", "51 lb/bu")},
		"each one":  {[]Lot{{Name: "W", Weight: lb(1000), Moisture: pct("17"), TestWeight: lbbu("54")}, light}, Target{Moisture: pct("13"), TestWeight: lbbu("54")}, errortest.Refused("13 %", "54 lb/bu")},
	} {
		if _, err := Best(c.lots, c.target); !c.says.Met(err) {
			t.Errorf("%s: %v, want %s", name, err, c.says)
		}
	}
}

func drawLots(t *rapid.T, least int64) []Lot {
	n := rapid.IntRange(2, 3).Draw(t, "lots")
	lots := make([]Lot, n)
	for i := range lots {
		lots[i] = Lot{
			Name: fmt.Sprint("lot ", i), Weight: lb(rapid.Int64Range(1, 12).Draw(t, "weight") * least),
			Moisture:   quantity.Int(rapid.Int64Range(110, 200).Draw(t, "moisture"), quantity.Percent).Div(quantity.Int(10, quantity.Plain)),
			TestWeight: quantity.Int(rapid.Int64Range(500, 600).Draw(t, "test weight"), quantity.LbPerBushel).Div(quantity.Int(10, quantity.Plain)),
		}
	}
	return lots
}

// The best mix lies in a corner of what may be taken. Trying all corners, in exact
// fractions, finds the same weight as the solver; no mix in whole pounds weighs more, and
// the one Best gives in whole pounds is the heaviest of those.
func TestBestMixAgainstEveryCorner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lots, target := drawLots(t, 1), Target{Moisture: pct("15"), TestWeight: lbbu("54")}
		exact := new(big.Rat)
		for _, r := range solve(programOf(lots, target)) {
			exact.Add(exact, r.Rat())
		}
		if corner := bestCorner(lots, target); exact.Cmp(corner) != 0 {
			t.Fatalf("%v: the solver finds %s lb, the corners %s lb", lots, exact.RatString(), corner.RatString())
		}
		most := lb(0)
		every(lots, nil, func(take []quantity.Amount) {
			if m := MixOf(lots, take); target.Meets(m) {
				most = quantity.Max(most, m.Weight)
			}
		})
		if most.Rat().Cmp(exact) > 0 {
			t.Fatalf("%v: the solver finds %s lb, trying every pound %s", lots, exact.RatString(), most)
		}
		if m, err := Best(lots, target); err == nil && whole(m.Take) && m.Weight.More(most) {
			t.Fatalf("%v: %s in whole pounds, and trying every pound %s", lots, m.Weight, most)
		}
	})
}

func every(lots []Lot, take []quantity.Amount, see func([]quantity.Amount)) {
	if len(take) == len(lots) {
		see(take)
		return
	}
	for w := lb(0); !w.More(lots[len(take)].Weight); w = w.Add(lb(1)) {
		every(lots, append(take[:len(take):len(take)], w), see)
	}
}

// Mass and dry matter in are mass and dry matter out, and a mix found meets its
// target with no more of a lot than there is.
func TestBlendingKeepsMassAndDryMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lots, target := drawLots(t, 1000), Target{Moisture: pct("15"), TestWeight: lbbu("54")}
		m, err := Best(lots, target)
		if err != nil {
			if !errors.Is(err, message.Refused) {
				t.Fatal(err)
			}
			return
		}
		mass, dry := lb(0), quantity.Zero(quantity.Lb.Times(quantity.Percent))
		for i, take := range m.Take {
			if take.More(lots[i].Weight) || take.Sign() < 0 {
				t.Fatalf("%s of %s", take, lots[i].Weight)
			}
			mass = mass.Add(take)
			dry = dry.Add(take.Mul(quantity.Int(100, quantity.Percent).Sub(lots[i].Moisture)))
		}
		if !mass.Equal(m.Weight) || !dry.Equal(m.Weight.Mul(quantity.Int(100, quantity.Percent).Sub(m.Moisture))) {
			t.Fatalf("%s of mass and %s of dry matter went in, %s at %s came out", mass, dry, m.Weight, m.Moisture)
		}
		if !target.Meets(m) {
			t.Fatalf("%s and %s miss the target", m.Moisture, m.TestWeight)
		}
	})
}
