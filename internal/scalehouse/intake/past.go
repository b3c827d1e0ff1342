package intake

import (
	"tenthpoint/internal/imports"
	"tenthpoint/internal/load"
)

// pastFacts are the facts of a past load after it is opened. Its weights were copied from the old
// books and say so.
func pastFacts(p *imports.Past) []load.Fact {
	var out []load.Fact
	for _, w := range p.Facts.Weighed {
		out = append(out, load.Weighed{Weighing: w})
	}
	return append(out, load.Sampled{Sample: *p.Facts.Sample})
}
