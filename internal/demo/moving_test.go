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
