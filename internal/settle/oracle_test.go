package settle_test

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// oracleLoads is the number of loads settled on both sides, over all editions.
const oracleLoads = 100_000

func TestOracleAgrees(t *testing.T) {
	files := editionFiles(t)
	names := make([]string, 0, len(files))
	for name := range files {
		names = append(names, name)
	}
	slices.Sort(names)
	each := oracleLoads/len(names) + 1
	for i, name := range names {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			engine, err := rates.Read(name, files[name])
			if err != nil {
				t.Fatal(err)
			}
			compareMany(t, engine, readOracleEdition(t, files[name]), rand.New(rand.NewPCG(uint64(i), 1)), each)
		})
	}
}

// compareMany continues until so many loads were settled; those that are refused on the way must be
// refused on both sides. At least a fifth must settle.
func compareMany(t *testing.T, engine *rates.Edition, e *oracleEdition, r *rand.Rand, loads int) {
	settled, tried := 0, 0
	for ; settled < loads && tried < 5*loads; tried++ {
		l := e.randomLoad(r)
		s, err := settle.Settle(l.facts(e), engine)
		o := workOracle(e, l)
		if problem := disagreement(s, err, o); problem != "" {
			t.Fatalf("%s\nload %+v\nengine: %v\noracle refused: %q", problem, l, err, o.refused)
		}
		if err == nil {
			settled++
		}
	}
	if settled < loads {
		t.Errorf("only %d of %d loads were settled: the random loads test refusals, not settlements", settled, tried)
	}
	t.Logf("%d loads settled alike, %d refused alike", settled, tried-settled)
}

// disagreement names the first line on which the two sides part.
func disagreement(s *settle.Settlement, err error, o *oracle) string {
	if (err != nil) != (o.refused != "") {
		return "one side refuses the load"
	}
	if err != nil {
		return ""
	}
	got := engineLines(s)
	for line, want := range o.lines {
		if have, ok := got[line]; !ok || have.Cmp(want) != 0 {
			return fmt.Sprintf("%s: engine %v, oracle %s", line, have, want.FloatString(6))
		}
	}
	for line := range got {
		if _, ok := o.lines[line]; !ok {
			return "the oracle has no line " + line
		}
	}
	return ""
}

// engineLines are the engine's figures under the oracle's names.
func engineLines(s *settle.Settlement) map[string]*big.Rat {
	out := map[string]*big.Rat{}
	put := func(name string, step *worksheet.Step) {
		if step != nil && !settle.AwaitsPrice(step) && step.Note().String() != "no owner has a price" {
			out[name] = step.Value().Rat()
		}
	}
	for name, step := range map[string]*worksheet.Step{
		"net": s.Net, "dockage": s.Dockage, "water": s.Water, "handling": s.Handling, "dry": s.Dry,
		"settled": s.Settled, "quantity": s.Quantity, "bushels": s.Bushels, "drying": s.Drying,
		"services": s.Services, "adjustments": s.Adjustments, "discounts": s.Discounts, "premiums": s.Premiums,
		"value": s.Value, "net value": s.NetValue, "payable": s.Payable,
	} {
		put(name, step)
	}
	for _, d := range s.Deductions {
		put("discount."+d.Rule.ID, d.Step)
	}
	for i, line := range s.Shares {
		for name, step := range map[string]*worksheet.Step{
			"net": line.Net, "settled": line.Settled, "quantity": line.Quantity,
			"bushels": line.Bushels, "drying": line.Drying, "value": line.Value,
			"adjustments": line.Adjustments, "payable": line.Payable,
		} {
			put(fmt.Sprintf("%d %s", i, name), step)
		}
		for n, step := range line.Deductions {
			put(fmt.Sprintf("%d discount.%s", i, s.Deductions[n].Rule.ID), step)
		}
	}
	return out
}

// The oracle is not the engine in other words: its files name nothing that
// computes in settle or rates.
func TestOracleStandsAlone(t *testing.T) {
	for _, name := range []string{"oracle_edition_test.go", "oracle_rules_test.go", "oracle_money_test.go"} {
		text := readText(t, name)
		for _, inner := range []string{"internal/settle", "internal/rates", "internal/quantity", "internal/worksheet"} {
			if strings.Contains(text, `"tenthpoint/`+inner+`"`) {
				t.Errorf("%s imports %s", name, inner)
			}
		}
	}
}
