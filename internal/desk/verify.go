package desk

import (
	"context"
	"fmt"
	"maps"
	"reflect"
	"slices"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/store"
)

// Soundness is what a check of the whole book found.
type Soundness struct {
	Facts, Loads, Tickets, Settlements int64
	// Problems are sentences, each naming the fact, load or ticket. None means
	// the book is sound.
	Problems []string
}

// Verify walks the whole book: the chain of facts, every load replayed, every
// settlement worked again under the edition kept with it, every row the desk
// reads compared with the facts it was made from, every ticket number
// accounted for. Progress is told after each load and may be nil; ending the
// context stops the walk.
func (d *Desk) Verify(ctx context.Context, progress func(done int64)) (Soundness, error) {
	v := verifier{desk: d, ctx: ctx, editions: map[string]*rates.Edition{}, tickets: map[int64]string{}}
	var err error
	v.out.Problems, v.out.Facts, err = d.book.VerifyChain(ctx)
	if err != nil {
		return v.out, err
	}
	if err := v.loads(progress); err != nil {
		return v.out, err
	}
	v.numbers()
	return v.out, nil
}

type verifier struct {
	desk     *Desk
	ctx      context.Context
	out      Soundness
	editions map[string]*rates.Edition
	tickets  map[int64]string // number -> load
}

func (v *verifier) wrong(format string, args ...any) {
	v.out.Problems = append(v.out.Problems, fmt.Sprintf(format, args...))
}

// loads gathers the facts of every load in one pass over the journal.
func (v *verifier) loads(progress func(int64)) error {
	facts := map[string][]journal.Fact{}
	var order []string
	for f, err := range v.desk.book.Facts(v.ctx, store.Filter{}) {
		if err != nil {
			return err
		}
		if !load.IsFact(f.Kind) {
			continue
		}
		if facts[f.Subject] == nil {
			order = append(order, f.Subject)
		}
		facts[f.Subject] = append(facts[f.Subject], f)
	}
	kept, err := v.rows()
	if err != nil {
		return err
	}
	for _, subject := range order {
		if err := v.ctx.Err(); err != nil {
			return err
		}
		v.load(subject, facts[subject], kept)
		v.out.Loads++
		if progress != nil {
			progress(v.out.Loads)
		}
	}
	for _, id := range slices.Sorted(maps.Keys(kept)) {
		v.wrong("Load %s is in the lists but has no facts in the journal.", id)
	}
	return nil
}

func (v *verifier) rows() (map[string]store.LoadRow, error) {
	all, err := v.desk.book.Loads(v.ctx, store.LoadFilter{})
	if err != nil {
		return nil, err
	}
	kept := make(map[string]store.LoadRow, len(all))
	for _, r := range all {
		kept[r.ID] = r
	}
	return kept, nil
}

func (v *verifier) load(subject string, facts []journal.Fact, kept map[string]store.LoadRow) {
	id := subject[len("load "):]
	l, err := Replay(id, facts)
	if err != nil {
		v.wrong("The facts of load %s do not follow from each other: %v.", id, err)
		delete(kept, id)
		return
	}
	if l.Number > 0 {
		v.out.Tickets++
		if other, taken := v.tickets[l.Number]; taken {
			v.wrong("Ticket number %d was given to load %s and to load %s.", l.Number, other, id)
		}
		v.tickets[l.Number] = id
	}
	if l.Settled != nil {
		v.out.Settlements++
		v.settlement(l)
	}
	v.compareRow(l, kept)
}

// settlement works a load again and compares every figure.
func (v *verifier) settlement(l *load.Load) {
	s, err := v.again(l)
	if err != nil {
		v.wrong("Load %s cannot be settled again: %v.", l.ID, err)
		return
	}
	fresh := settledFact(s)
	for _, id := range slices.Sorted(maps.Keys(l.Settled.Figures)) {
		if was, is := l.Settled.Figures[id], fresh.Figures[id]; !was.Equal(is) {
			v.wrong("Ticket %d, load %s: %s was written down as %s and works out as %s.", l.Number, l.ID, id, was, is)
		}
	}
	if fresh.Working != l.Settled.Working {
		v.wrong("Ticket %d, load %s: the working does not have the hash that was written down.", l.Number, l.ID)
	}
}

func (v *verifier) again(l *load.Load) (*settle.Settlement, error) {
	if l.Details.Direction == load.Outbound {
		return v.desk.Resettle(v.ctx, l)
	}
	hash := l.Settled.EditionHash
	e, ok := v.editions[hash]
	if !ok {
		var err error
		if e, err = v.desk.Kept(v.ctx, hash); err != nil {
			return nil, err
		}
		v.editions[hash] = e
	}
	return settle.Settle(l.SettleFacts(), e)
}

func (v *verifier) compareRow(l *load.Load, kept map[string]store.LoadRow) {
	was, ok := kept[l.ID]
	delete(kept, l.ID)
	if !ok {
		v.wrong("Load %s has facts in the journal but is missing from the lists.", l.ID)
		return
	}
	is := row(l)
	if !sameFigures(was.Figures, is.Figures) {
		v.wrong("The figures of load %s in the lists are not those of its facts.", l.ID)
	}
	was.Figures, is.Figures, was.Owners, is.Owners = nil, nil, nil, nil
	if !reflect.DeepEqual(was, is) {
		v.wrong("The row of load %s in the lists does not agree with its facts.", l.ID)
	}
}

func sameFigures(a, b map[string]quantity.Amount) bool {
	return maps.EqualFunc(a, b, quantity.Amount.Equal)
}

// numbers asks that ticket numbers run from 1 without a gap.
func (v *verifier) numbers() {
	last := int64(0)
	for _, n := range slices.Sorted(maps.Keys(v.tickets)) {
		if n != last+1 {
			v.wrong("Ticket numbers %d to %d are missing.", last+1, n-1)
		}
		last = n
	}
}

// ByCode finds the ticket that carries a short code, by the fact that issued
// it.
func (d *Desk) ByCode(ctx context.Context, code string) (*load.Load, error) {
	for f, err := range d.book.Facts(ctx, store.Filter{Kind: load.Issued{}.Kind()}) {
		if err != nil {
			return nil, err
		}
		if len(code) >= 8 && len(code) <= len(f.Hash) && f.Hash[:len(code)] == code {
			return d.Load(ctx, f.Subject[len("load "):])
		}
	}
	return nil, fmt.Errorf("no ticket in this book carries the code %q. Check the letters; the code is 12 letters and digits from the foot of the slip", code)
}
