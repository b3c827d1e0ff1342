package intake

import (
	"fmt"

	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/takeover"
)

// pastFacts are what is written down of a past load. Its weights were typed over
// from the old books and say so.
func pastFacts(name string, r takeover.Row) []load.Fact {
	reason := fmt.Sprintf("past load, from line %d of %s", r.Line, name)
	weighed := func(which load.Which, weight quantity.Amount) load.Fact {
		return load.Weighed{Weighing: load.Weighing{Which: which, Weight: weight, Source: load.ByHand, Reason: reason}}
	}
	return []load.Fact{weighed(load.Gross, r.Past.Gross), weighed(load.Tare, r.Past.Tare), load.Sampled{Sample: r.Past.Sample}}
}

// pastReplayed is a past load as it would be, without writing it down.
func pastReplayed(name string, r takeover.Row) (*load.Load, error) {
	stamped := []load.Stamped{{Fact: load.Opened{Details: r.Past.Details}}}
	for _, f := range pastFacts(name, r) {
		stamped = append(stamped, load.Stamped{Fact: f})
	}
	return load.Replay("to be taken over", stamped)
}
