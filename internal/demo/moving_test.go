package demo

import (
	"testing"

	"tenthpoint/internal/bin"
)

// A season leaves grain in measured bins, and some of it moved.
func TestSeasonMovesGrain(t *testing.T) {
	kept := filled(t, Options{Loads: 400, Seed: 7, Now: noon, Rates: shipped(t)})
	moves, err := kept.Movements(ctx, "", "")
	must(t, err)
	done := map[bin.Kind]int{}
	for _, m := range moves {
		done[m.What]++
	}
	for _, want := range []bin.Kind{bin.Dry, bin.Transfer, bin.Aerate, bin.Temperatures} {
		if done[want] != 1 {
			t.Errorf("%d movements are %s", done[want], want)
		}
	}
}

// What is dumped in a pit lies in the bin that the usual path of its grain leads to.
func TestNothingStaysInAPit(t *testing.T) {
	kept := filled(t, Options{Loads: 400, Seed: 7, Now: noon, Rates: shipped(t)})
	rows, err := kept.BinDays(ctx, "", "", "")
	must(t, err)
	in := map[string]string{}
	for _, r := range rows {
		in[r.Bin] = r.Commodity
	}
	for _, path := range paths {
		if in[path.To] != path.Commodity {
			t.Errorf("%s holds %q, want %s", path.To, in[path.To], path.Commodity)
		}
	}
	if in["P1"] != "" || in["P2"] != "" {
		t.Errorf("%q lies in pit 1, %q in pit 2", in["P1"], in["P2"])
	}
}
