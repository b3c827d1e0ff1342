package desk

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// Preview settles a load as it stands without writing anything. While it
// cannot be settled the sentences say why; the settlement is then nil. The
// settlement of a load that leaves is its weights alone, under no edition. A load
// with a ticket is settled by the ticket's engine, any other by the current one.
func (d *Desk) Preview(l *load.Load) (*settle.Settlement, settle.Problems) {
	var problems settle.Problems
	for _, m := range l.Missing() {
		problems = append(problems, settle.Problem{Field: m.Field, Sentence: m.Sentence})
	}
	if isOutbound(l) {
		if len(problems) > 0 {
			return nil, problems
		}
		return settled(weighOnly(l, d.engineOf(l)))
	}
	problems = append(problems, priceOfStored(l)...)
	e, err := d.edition(l)
	if err != nil {
		problems = append(problems, settle.Problem{Field: "edition", Sentence: err.Error() + "."})
	}
	if len(problems) > 0 {
		return nil, problems
	}
	return settled(d.engineOf(l).Settle(l.SettleFacts(), e))
}

// engineOf is the engine that settled a load, or would now.
func (d *Desk) engineOf(l *load.Load) settle.Engine {
	if l.Settled != nil && l.Number > 0 {
		return l.Settled.Engine
	}
	return d.engine
}

// priceOfStored is what is wrong with a price on stored grain: it stays its
// owner's, and a paper that says both would claim it twice. Books of old may hold
// such loads; they are settled again as they were issued.
func priceOfStored(l *load.Load) settle.Problems {
	if l.Details.Disposition != load.Stored || l.Details.Price == nil {
		return nil
	}
	return settle.Problems{{Field: "price", Sentence: "Stored grain has no price: it stays its owner's. Take the price away, or say that the load is sold."}}
}

// settled tells why a load was not settled, problem by problem.
func settled(s *settle.Settlement, err error) (*settle.Settlement, settle.Problems) {
	if err == nil {
		return s, nil
	}
	if problems, ok := err.(settle.Problems); ok {
		return nil, problems
	}
	return nil, settle.Problems{{Field: "edition", Sentence: err.Error()}}
}

// edition is the edition in force for a load.
func (d *Desk) edition(l *load.Load) (*rates.Edition, error) {
	return entry.EditionOf(d.profile, d.rates, l.Details)
}

// Kept is the edition a ticket was settled under, out of the book: its text as
// it was on that day.
func (d *Desk) Kept(ctx context.Context, hash string) (*rates.Edition, error) {
	id, text, err := d.book.Edition(ctx, hash)
	if err != nil {
		return nil, err
	}
	e, err := rates.Read(id, []byte(text))
	if err != nil {
		return nil, fmt.Errorf("edition %s is in the book but cannot be read: %w", id, err)
	}
	return e, nil
}

// Resettle works an issued ticket again from its facts, by the engine and under
// the edition it was settled with. The error says so when a newer program's
// engine is not known here.
func (d *Desk) Resettle(ctx context.Context, l *load.Load) (*settle.Settlement, error) {
	return resettled(l, func(hash string) (*rates.Edition, error) { return d.Kept(ctx, hash) })
}

// resettled works a load again as it was issued, under the edition that kept
// finds by its hash.
func resettled(l *load.Load, kept func(hash string) (*rates.Edition, error)) (*settle.Settlement, error) {
	if l.Settled == nil {
		return nil, fmt.Errorf("load %s has not been settled; issue its ticket first", l.ID)
	}
	if isOutbound(l) {
		return weighOnly(l, l.Settled.Engine)
	}
	e, err := kept(l.Settled.EditionHash)
	if err != nil {
		return nil, err
	}
	return l.Settled.Engine.Settle(l.SettleFacts(), e)
}

// settledFact is a settlement as the journal keeps it.
func settledFact(s *settle.Settlement) load.Settled {
	f := load.Settled{Engine: s.Engine, Working: workingHash(s), Figures: s.Figures()}
	if s.Edition != nil {
		f.Edition, f.EditionHash = s.Edition.ID, s.Edition.Hash
	}
	return f
}

// workingHash is the SHA-256 of every figure of the working.
func workingHash(s *settle.Settlement) string {
	sum := sha256.Sum256([]byte(s.Digest()))
	return hex.EncodeToString(sum[:])
}
