package settle_test

import (
	"encoding/json"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/rates/discount"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/settle"
)

// bothWays is a shipped edition as the engine reads it and, for drawing loads
// that fit it, as the oracle does.
type bothWays struct {
	engine *rates.Edition
	oracle *oracleEdition
}

func (b bothWays) String() string { return b.engine.ID }

func shippedEditions(t *testing.T) []bothWays {
	t.Helper()
	var out []bothWays
	for name, text := range editionFiles(t) {
		e, err := rates.Read(name, text)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, bothWays{e, readOracleEdition(t, text)})
	}
	slices.SortFunc(out, func(a, b bothWays) int { return compareText(a.engine.ID, b.engine.ID) })
	return out
}

func compareText(a, b string) int {
	if a < b {
		return -1
	}
	return 1
}

// drawLoad is a load that fits an edition.
func drawLoad(rt *rapid.T, b bothWays) settle.Facts {
	seed := rapid.Uint64().Draw(rt, "load")
	return b.oracle.randomLoad(rand.New(rand.NewPCG(seed, 2))).facts(b.oracle)
}

// checkOften checks a property that a hundred draws say little about.
func checkOften(t *testing.T, prop func(*rapid.T)) {
	t.Helper()
	for n := 0; n < 10 && !t.Failed(); n++ {
		rapid.Check(t, prop)
	}
}

// withoutPremiums are the editions that pay for nothing but the grain.
func withoutPremiums(all []bothWays) []bothWays {
	return slices.DeleteFunc(slices.Clone(all), func(b bothWays) bool {
		if b.engine.Shrink.Credit != "none" {
			return true
		}
		return slices.ContainsFunc(b.engine.Discounts, func(d discount.Rule) bool {
			pays := slices.ContainsFunc(d.Rows, func(row rule.Band) bool { return row.Direction == rule.Pays })
			return pays || d.Direction == rule.Pays
		})
	})
}

// All else equal, more moisture never pays more. A load that is refused pays
// nothing, and a wetter one is not then taken.
func TestMoreMoistureNeverPaysMore(t *testing.T) {
	neverPaysMore(t, func(rt *rapid.T, f settle.Facts) settle.Facts {
		more := rapid.Int64Range(1, 800).Draw(rt, "hundredths more")
		r := f.Moisture.(settle.Reading)
		r.Percent = r.Percent.Add(hundredthsOf(more, quantity.Percent))
		f.Moisture = r
		return f
	})
}

func TestMoreDamageNeverPaysMore(t *testing.T)  { moreOfAFactor(t, grain.Damage) }
func TestMoreDockageNeverPaysMore(t *testing.T) { moreOfAFactor(t, grain.Dockage) }
func TestMoreForeignMaterialNeverPaysMore(t *testing.T) {
	moreOfAFactor(t, grain.ForeignMaterial)
}

func moreOfAFactor(t *testing.T, factor grain.FactorID) {
	neverPaysMore(t, func(rt *rapid.T, f settle.Facts) settle.Facts {
		more := rapid.Int64Range(1, 800).Draw(rt, "hundredths more")
		f.Findings = slices.Clone(f.Findings)
		for i := range f.Findings {
			if f.Findings[i].Factor == factor {
				f.Findings[i].Amount = f.Findings[i].Amount.Add(hundredthsOf(more, quantity.Percent))
			}
		}
		return f
	})
}

func hundredthsOf(n int64, unit quantity.Unit) quantity.Amount {
	return quantity.Int(n, unit).Mul(quantity.Of("0.01", quantity.Plain))
}

// dryingSaved is the drying charge the worse load saves; zero where it pays more of it. Drying is
// charged on the wet pounds: one pound more of dockage is one pound less to dry, and at whole
// pounds and a low price that may outweigh the grain lost. Canola at 15.9 %, 820 lb net at
// $9.75/cwt, pays $45.90 with 34 lb of dockage and $45.92 with 35 lb, for the same 720 dry pounds.
func dryingSaved(t *testing.T, good, bad *settle.Settlement) quantity.Amount {
	t.Helper()
	saved := drying(t, good).Sub(drying(t, bad))
	if saved.Sign() < 0 {
		return quantity.Zero(quantity.Dollar)
	}
	return saved
}

func drying(t *testing.T, s *settle.Settlement) quantity.Amount {
	t.Helper()
	sum, err := s.Summary()
	if err != nil {
		t.Fatal(err)
	}
	return sum.Drying
}

func neverPaysMore(t *testing.T, worse func(*rapid.T, settle.Facts) settle.Facts) {
	editions := withoutPremiums(shippedEditions(t))
	if len(editions) < 10 {
		t.Fatalf("only %d editions without premiums", len(editions))
	}
	compared := 0
	checkOften(t, func(rt *rapid.T) {
		b := rapid.SampledFrom(editions).Draw(rt, "edition")
		f := drawLoad(rt, b)
		good, errGood := settle.Settle(f, b.engine)
		bad, errBad := settle.Settle(worse(rt, f), b.engine)
		switch {
		case errBad != nil:
		case errGood != nil:
			rt.Fatalf("%s refuses the better load and takes the worse: %v", b, errGood)
		case bad.Quantity.Value().More(good.Quantity.Value()):
			rt.Fatalf("%s: %s for the better load, %s for the worse", b, good.Quantity.Printed(), bad.Quantity.Printed())
		case good.Price != nil && bad.Payable.Value().More(good.Payable.Value().Add(dryingSaved(t, good, bad))):
			rt.Fatalf("%s: %s for the better load, %s for the worse", b, good.Payable.Printed(), bad.Payable.Printed())
		default:
			compared++
		}
	})
	if compared == 0 {
		t.Error("no two settlements were compared")
	}
}

// Loads have nothing to do with each other: settled one by one in any order
// they come out the same.
func TestLoadsAreIndependent(t *testing.T) {
	editions := shippedEditions(t)
	rapid.Check(t, func(rt *rapid.T) {
		type one struct {
			b bothWays
			f settle.Facts
		}
		var loads []one
		for range rapid.IntRange(2, 6).Draw(rt, "loads") {
			b := rapid.SampledFrom(editions).Draw(rt, "edition")
			loads = append(loads, one{b, drawLoad(rt, b)})
		}
		first := map[int]string{}
		for i, l := range loads {
			first[i] = textOf(l.f, l.b.engine)
		}
		for _, i := range rapid.Permutation([]int{0, 1, 2, 3, 4, 5}[:len(loads)]).Draw(rt, "order") {
			if again := textOf(loads[i].f, loads[i].b.engine); again != first[i] {
				rt.Fatalf("load %d settled otherwise the second time", i)
			}
		}
	})
}

func textOf(f settle.Facts, e *rates.Edition) string {
	s, err := settle.Settle(f, e)
	if err != nil {
		return err.Error()
	}
	return s.Sheet.Text(80)
}

// February's recomputation: the edition read again from the text that the
// ticket kept gives the same sheet, byte for byte, as text and as JSON.
func TestReplayGivesTheSameBytes(t *testing.T) {
	editions := shippedEditions(t)
	rapid.Check(t, func(rt *rapid.T) {
		b := rapid.SampledFrom(editions).Draw(rt, "edition")
		f := drawLoad(rt, b)
		again, err := rates.Read("from the book", b.engine.Text)
		if err != nil || again.Hash != b.engine.Hash {
			rt.Fatal("the edition is not the same when read again")
		}
		one, errOne := settle.Settle(f, b.engine)
		two, errTwo := settle.Settle(f, again)
		if (errOne == nil) != (errTwo == nil) || errOne != nil && errOne.Error() != errTwo.Error() {
			rt.Fatalf("%v, then %v", errOne, errTwo)
		}
		if errOne != nil {
			return
		}
		jsonOne, _ := json.Marshal(one.Sheet)
		jsonTwo, _ := json.Marshal(two.Sheet)
		if one.Sheet.Text(72) != two.Sheet.Text(72) || string(jsonOne) != string(jsonTwo) {
			rt.Fatal("the sheet is not the same when worked again")
		}
	})
}
