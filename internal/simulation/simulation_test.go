package simulation

import (
	"flag"
	"testing"
)

var (
	seed  = flag.Uint64("seed", 14, "what the simulation draws from")
	turns = flag.Int("acts", 250, "how many acts a simulation has")
)

// Whatever befalls the book, nothing happens that must not; and the same seed gives the same
// journal, so that what was found can be found again.
func TestTheSameSeedGivesTheSameJournal(t *testing.T) {
	first := Run(t, *seed, *turns, Bug{})
	t.Log(first)
	for _, found := range first.Found {
		t.Errorf("seed %d, %s", *seed, found)
	}
	again := Run(t, *seed, *turns, Bug{})
	if len(first.Journal) != len(again.Journal) {
		t.Fatalf("%d facts, and again %d", len(first.Journal), len(again.Journal))
	}
	for i, f := range first.Journal {
		if f.Hash != again.Journal[i].Hash {
			t.Fatalf("fact %d: %+v, and again %+v", f.Seq, f, again.Journal[i])
		}
	}
}
