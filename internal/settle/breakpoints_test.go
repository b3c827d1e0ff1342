package settle_test

import (
	"math/big"
	"math/rand/v2"
	"slices"
	"testing"

	"tenthpoint/internal/settle"
)

// TestBreakpointsOfEveryRow settles loads just below, on and just above every figure at which a
// shipped edition changes its mind (triggers, shrink-to, ends of rows, bases and the units counted
// from them, limits) and compares every line with the oracle, which reads "from", "over", "upto"
// and "under" for itself.
func TestBreakpointsOfEveryRow(t *testing.T) {
	points := 0
	for _, b := range shippedEditions(t) {
		r := rand.New(rand.NewPCG(7, 7))
		for factor, values := range b.oracle.breakpoints() {
			for _, v := range values {
				points++
				for _, beside := range nearby[unitsOf[factor]] {
					at := add(v, figure(beside))
					if at.Sign() <= 0 || unitsOf[factor] == "" && at.Cmp(rat(100, 1)) > 0 {
						continue
					}
					holdAt(t, b, r, factor, at.FloatString(2))
				}
			}
		}
	}
	if points < 250 {
		t.Errorf("only %d breakpoints were found in the shipped editions", points)
	}
}

// nearby are the distances from a figure, by unit: recording moves a result by half a step.
var nearby = map[string][]string{
	"":    {"-0.1", "-0.05", "-0.01", "0", "0.01", "0.05", "0.1"},
	"ppm": {"-0.1", "-0.05", "-0.01", "0", "0.01", "0.05", "0.1"},
	"ppb": {"-10", "-5", "-1", "-0.5", "0", "0.5", "1", "4.99", "5", "10"},
	"s":   {"-1", "-0.5", "-0.01", "0", "0.01", "0.49", "0.5", "1"},
}

func holdAt(t *testing.T, b bothWays, r *rand.Rand, factor, value string) {
	t.Helper()
	l := b.oracle.randomLoad(r)
	l.acceptedAll = r.IntN(2) == 0
	if factor == "moisture" {
		l.moisture = value
	} else {
		l.findings = slices.DeleteFunc(l.findings, func(f oracleFinding) bool { return f.factor == factor })
		found := b.oracle.randomFinding(r, factor)
		found.value = value
		l.findings = append(l.findings, found)
	}
	s, err := settle.Settle(l.facts(b.oracle), b.engine)
	if problem := disagreement(s, err, workOracle(b.oracle, l)); problem != "" {
		t.Errorf("%s, %s at %s: %s (engine: %v)", b.engine.ID, factor, value, problem, err)
	}
}

// breakpoints are the figures of an edition at which something changes, by
// factor.
func (e *oracleEdition) breakpoints() map[string][]*big.Rat {
	out := map[string][]*big.Rat{}
	note := func(factor string, texts ...string) {
		for _, text := range texts {
			if text != "" {
				out[factor] = append(out[factor], figure(text))
			}
		}
	}
	note("moisture", e.Shrink.Trigger, e.Shrink.To, e.Shrink.OverDryFloor, e.Drying.Trigger, e.Drying.To)
	for _, row := range slices.Concat(e.Shrink.Row, e.Drying.Band) {
		note("moisture", row.From, row.Over, row.Upto, row.Under)
	}
	for _, d := range e.Discount {
		note(d.Factor, d.Base, d.RefuseOver, d.RefuseUnder)
		for _, row := range d.Row {
			note(d.Factor, row.From, row.Over, row.Upto, row.Under)
		}
		if d.Form == "per-unit" {
			out[d.Factor] = append(out[d.Factor], d.counts()...)
		}
	}
	return out
}

// counts are the first few whole units beyond a base.
func (d oracleDiscount) counts() []*big.Rat {
	var out []*big.Rat
	step := figure(d.Per)
	if d.Side == "below" {
		step.Neg(step)
	}
	for n := int64(1); n <= 4; n++ {
		out = append(out, add(figure(d.Base), times(rat(n, 1), step)))
	}
	return out
}
