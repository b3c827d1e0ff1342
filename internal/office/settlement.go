package office

import (
	"context"

	"tenthpoint/internal/digest"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/title"
)

// Preview settles a load in its current state without writing anything. If it cannot, the problems
// say why and the settlement is nil. The settlement of a load that leaves is its weights alone,
// under no edition. A load with a ticket is settled by the ticket's engine, any other by the
// current one.
func Preview(d Desk, l *load.Load) (*settle.Settlement, settle.Problems) {
	var problems settle.Problems
	for _, m := range l.Missing() {
		problems = append(problems, settle.Problem{Field: m.Field, Sentence: m.Sentence})
	}
	tables, err := TablesFor(context.Background(), d, l)
	if err != nil {
		problems = append(problems, settle.Problem{Field: "edition", Sentence: message.Stopped(message.Of(err))})
	}
	if isOutbound(l) {
		if len(problems) > 0 {
			return nil, problems
		}
		return settled(weighOnly(l, EngineOf(d, l), tables))
	}
	problems = append(problems, unsoundTerms(l)...)
	e, err := EditionFor(d, l)
	if err != nil {
		problems = append(problems, settle.Problem{Field: "edition", Sentence: message.Stopped(message.Of(err))})
	}
	if len(problems) > 0 {
		return nil, problems
	}
	return settled(EngineOf(d, l).Settle(l.SettleFacts(), e.By(tables)))
}

// EngineOf is the engine that settled a load, or would now.
func EngineOf(d Desk, l *load.Load) settle.Engine {
	if l.Settled != nil && l.Number > 0 {
		return l.Settled.Engine
	}
	return d.Engine()
}

// unsoundTerms are the problems of title and price, owner by
// owner. Books of old may hold such loads; they are settled again as they were
// issued.
func unsoundTerms(l *load.Load) settle.Problems {
	for _, deal := range l.Details.Deals() {
		if err := deal.Check(); err != nil {
			return settle.Problems{{Field: "terms", Sentence: message.Stopped(message.Of(err))}}
		}
		if deal.Price == nil || deal.TakesPrice() {
			continue
		}
		if deal.Under == title.OpenStorage {
			return settle.Problems{{Field: "price", Sentence: message.New("Stored grain has no price: it stays its owner's. Take the price away, or say that the load is sold.")}}
		}
		return settle.Problems{{Field: "price", Sentence: message.New("This grain is %s and has no price: take the price away, or say that it is sold.", deal.Said())}}
	}
	return nil
}

// settled returns why a load was not settled, problem by problem.
func settled(s *settle.Settlement, err error) (*settle.Settlement, settle.Problems) {
	if err == nil {
		return s, nil
	}
	if problems, ok := err.(settle.Problems); ok {
		return nil, problems
	}
	return nil, settle.Problems{{Field: "edition", Sentence: message.Of(err)}}
}

// EditionFor is the edition in force for a load.
func EditionFor(d Desk, l *load.Load) (*rates.Edition, error) {
	return entry.EditionOf(d.Profile(), d.Rates(), l.Details)
}

// Resettle recalculates an issued ticket from its facts, by the engine and under the edition it was
// settled with. It fails when a newer program's engine is not known here.
func Resettle(ctx context.Context, d Desk, l *load.Load) (*settle.Settlement, error) {
	return ResettledUnder(l, Kept{
		Edition: func(hash string) (*rates.Edition, error) { return d.Kept(ctx, hash) },
		Tables:  func(hash string) (*grain.Tables, error) { return d.TablesKept(ctx, hash) },
	})
}

// Kept finds by their hashes the editions, charts and laws of tickets.
type Kept struct {
	Edition func(hash string) (*rates.Edition, error)
	Tables  func(hash string) (*grain.Tables, error)
}

// ResettledUnder works a load again as it was issued, under the edition and the
// rules of law that it keeps the hashes of.
func ResettledUnder(l *load.Load, kept Kept) (*settle.Settlement, error) {
	if l.Settled == nil {
		return nil, message.Errorf("load %s has not been settled; issue its ticket first", l.ID)
	}
	tables, err := kept.Tables(l.Settled.Law)
	if err != nil {
		return nil, err
	}
	if isOutbound(l) {
		return weighOnly(l, l.Settled.Engine, tables)
	}
	e, err := kept.Edition(l.Settled.EditionHash)
	if err != nil {
		return nil, err
	}
	return l.Settled.Engine.Settle(l.SettleFacts(), e.By(tables))
}

// SettledFact is a settlement as the journal keeps it, with the hash of the law
// that it was settled by.
func SettledFact(s *settle.Settlement, law string) load.Settled {
	f := load.Settled{Engine: s.Engine, Working: digest.Of(s.Digest()), Figures: s.Figures(), Law: law}
	if s.Edition != nil {
		f.Edition, f.EditionHash = s.Edition.ID, s.Edition.Hash
	}
	return f
}

// Grain that leaves is weighed in the same way, but only weighed: it is sold on the buyer's test.
// Its settlement is a sheet of weights, with bushels by legal weight, under no edition; every other
// line is nil.

// byLegalWeight rounds bushels that are counted and not settled (practice).
var byLegalWeight = quantity.To("0.01", quantity.HalfUp)

// weighOnly records the weights of a load that leaves.
func weighOnly(l *load.Load, by settle.Engine, tables *grain.Tables) (*settle.Settlement, error) {
	w, err := by.WeighOnly(l.SettleFacts().Drafts, countedIn(l, tables))
	if err != nil {
		return nil, err
	}
	return &settle.Settlement{Engine: by.Number(), Sheet: w.Sheet, Gross: w.Gross, Tare: w.Tare, Net: w.Net, Bushels: w.Bushels}, nil
}

// countedIn returns bushels where the law defines a bushel of the grain and the scale weighs in
// pounds.
func countedIn(l *load.Load, tables *grain.Tables) settle.Outbound {
	out := settle.Outbound{Place: quantity.Unrounded, Bushels: byLegalWeight}
	gross, ok := l.Weight(load.Gross, l.Drafts()[0])
	c, err := tables.ByID(l.Details.Commodity)
	if ok && err == nil && !c.Bushel.IsZero() && gross.Weight.Unit() == quantity.Lb {
		out.Bushel, out.BushelSource = c.Bushel, c.BushelSource
	}
	return out
}

func isOutbound(l *load.Load) bool { return l.Details.Direction == load.Outbound }
