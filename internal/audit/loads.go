package audit

import (
	"fmt"
	"iter"
	"maps"
	"reflect"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"tenthpoint/internal/book"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
)

// looksTogether is the number of loads checked per batch.
const looksTogether = 256

// loadFacts is the book's data on one load: its facts, and its row in the read model where that
// could be read.
type loadFacts struct {
	id    string
	facts []journal.Fact
	row   *book.LoadRow
}

// look is the result of checking one load; load is nil when its facts make none.
type look struct {
	load     *load.Load
	problems []message.Text
}

// loads replays every load, works it again and compares it with its row. Facts and
// rows are each read once, in the same order. Loads do not depend on each other, so
// every core looks at some.
func (v *walk) loads() error {
	var together []loadFacts
	for t, err := range eachLoad(v) {
		if err != nil {
			return err
		}
		if together = append(together, t); len(together) == looksTogether {
			if err := lookAt(v, together); err != nil {
				return err
			}
			together = together[:0]
		}
	}
	return lookAt(v, together)
}

// eachLoad joins the facts of every load of the walk with its row. Loads opened since the walk
// began are left out.
func eachLoad(v *walk) iter.Seq2[loadFacts, error] {
	return func(yield func(loadFacts, error) bool) {
		nextRow, stop := iter.Pull2(v.book.EachLoad(v.ctx))
		defer stop()
		row, rowErr, more := nextRow()
		finish := func(t loadFacts) bool {
			for more && row.ID < t.id {
				row, rowErr, more = nextRow()
			}
			if more && row.ID == t.id && rowErr == nil {
				own := row
				t.row = &own
			}
			return !v.seen[t.id] || yield(t, nil)
		}
		var t loadFacts
		for f, err := range v.book.FactsBySubject(v.ctx, office.LoadSubject("")) {
			if err != nil {
				yield(t, err)
				return
			}
			if id, _ := office.LoadOfSubject(f.Subject); id != t.id || t.facts == nil {
				if t.facts != nil && !finish(t) {
					return
				}
				t = loadFacts{id: id}
			}
			t.facts = append(t.facts, f)
		}
		if t.facts != nil {
			finish(t)
		}
	}
}

// lookAt looks at some loads and counts them.
func lookAt(v *walk, together []loadFacts) error {
	looks := make([]look, len(together))
	var next atomic.Int64
	var workers sync.WaitGroup
	for range runtime.NumCPU() {
		workers.Go(func() {
			for i := next.Add(1) - 1; int(i) < len(together) && v.ctx.Err() == nil; i = next.Add(1) - 1 {
				looks[i] = v.look(together[i])
			}
		})
	}
	workers.Wait()
	if err := v.ctx.Err(); err != nil {
		return err
	}
	for i, one := range looks {
		v.found(one.problems...)
		v.count(together[i].id, one.load)
		if v.progress != nil {
			v.progress(v.out.Loads)
		}
	}
	return nil
}

// look checks a load, and again in one snapshot where anything is wrong: a truck may have been
// weighed between the two reads.
func (v *walk) look(t loadFacts) look {
	if l := sound(v, t); l != nil {
		return look{load: l}
	}
	l, problems := v.load(t.id)
	if len(problems) > 0 {
		l, problems = v.load(t.id)
	}
	return look{l, problems}
}

// sound returns a load whose facts and row agree, or nil.
func sound(v *walk, t loadFacts) *load.Load {
	if t.row == nil {
		return nil
	}
	l, err := office.Replay(t.id, t.facts)
	if err == nil {
		err = office.AttachCharts(v.ctx, v.desk, l)
	}
	if err != nil || l.Settled != nil && len(v.settlement(l)) > 0 || len(unlikeRow(l, *t.row)) > 0 {
		return nil
	}
	return l
}

// count adds a load up; l is nil when its facts make none.
func (v *walk) count(id string, l *load.Load) {
	v.out.Loads++
	if l == nil {
		return
	}
	if l.Settled != nil {
		v.out.Settlements++
	}
	if l.Number == 0 {
		return
	}
	v.out.Tickets++
	if other, taken := v.tickets[l.Number]; taken {
		v.found(message.New("Ticket number %d was given to load %s and to load %s.", l.Number, other, id))
	}
	v.tickets[l.Number] = id
	if before := l.InPlaceOf(); before > 0 {
		v.inPlace[l.Number] = before
	}
	if l.Phase == load.Void || l.Phase == load.Corrected {
		v.ended[l.Number] = true
	}
	if after := l.Successor(); after > 0 {
		v.superseded[l.Number] = after
	}
}

func (v *walk) load(id string) (*load.Load, []message.Text) {
	l, err := office.Load(v.ctx, v.desk, id)
	if err != nil {
		return nil, []message.Text{message.New("The facts of load %s do not follow from each other: %v.", id, err)}
	}
	var problems []message.Text
	if l.Settled != nil {
		problems = v.settlement(l)
	}
	return l, append(problems, v.row(l)...)
}

// settlement works a load again and compares every figure.
func (v *walk) settlement(l *load.Load) []message.Text {
	s, err := office.ResettledUnder(l, office.Kept{Edition: v.kept, Tables: v.tables})
	if err != nil {
		return []message.Text{message.New("%s cannot be settled again: %v.", office.LoadTitle(l), err)}
	}
	fresh := office.SettledFact(s, l.Settled.Law)
	problems := unlike(l.Settled.Figures, fresh.Figures, func(name string, was, is message.Text) message.Text {
		return message.New("%s: %v was written down as %s and works out as %s.", office.LoadTitle(l), name, was, is)
	})
	if fresh.Working != l.Settled.Working {
		problems = append(problems, message.New("%s: the working does not have the hash that was written down.", office.LoadTitle(l)))
	}
	return problems
}

// kept returns an edition of the book, read once.
func (v *walk) kept(hash string) (*rates.Edition, error) {
	v.reading.Lock()
	defer v.reading.Unlock()
	if e, ok := v.editions[hash]; ok {
		return e, nil
	}
	e, err := office.KeptEdition(v.ctx, v.book, hash)
	if err == nil {
		v.editions[hash] = e
	}
	return e, err
}

// tables returns the rules of law of the book.
func (v *walk) tables(hash string) (*grain.Tables, error) { return v.desk.TablesKept(v.ctx, hash) }

// row compares a load with its row in the lists.
func (v *walk) row(l *load.Load) []message.Text {
	rows, err := v.book.Loads(v.ctx, book.LoadFilter{ID: l.ID})
	if err != nil {
		return []message.Text{message.New("The row of load %s in the lists cannot be read: %v.", l.ID, err)}
	}
	if len(rows) == 0 {
		return []message.Text{message.New("%s has facts in the journal but is missing from the lists.", office.LoadTitle(l))}
	}
	was := rows[0]
	if was.Owners, err = v.book.Owners(v.ctx, l.ID); err != nil {
		return []message.Text{message.New("The owners of load %s in the lists cannot be read: %v.", l.ID, err)}
	}
	return unlikeRow(l, was)
}

// unlikeRow returns the differences between a load's row in the read model and its facts.
func unlikeRow(l *load.Load, was book.LoadRow) []message.Text {
	is := office.RowOf(l)
	problems := unlike(was.Figures, is.Figures, func(name string, was, is message.Text) message.Text {
		return message.New("%s: in the lists %v is %s, by the facts %s.", office.LoadTitle(l), name, was, is)
	})
	was.Figures, is.Figures = nil, nil
	if reflect.DeepEqual(was, is) {
		return problems
	}
	return append(problems, unlikeCells(l, was, is)...)
}

// unlikeCells names the cells in which two rows part.
func unlikeCells(l *load.Load, was, is book.LoadRow) []message.Text {
	var problems []message.Text
	a, b := reflect.ValueOf(was), reflect.ValueOf(is)
	for i := range a.NumField() {
		name := a.Type().Field(i).Name
		x, y := a.Field(i).Interface(), b.Field(i).Interface()
		if fmt.Sprint(x) != fmt.Sprint(y) {
			problems = append(problems, message.New("%s: in the lists %v is %q, by the facts %q.", office.LoadTitle(l), name, fmt.Sprint(x), fmt.Sprint(y)))
		}
	}
	return problems
}

// unlike lists every figure in which two settlements differ, as say puts it: by the figure's name
// and its two values.
func unlike(was, is map[string]quantity.Amount, say func(name string, was, is message.Text) message.Text) []message.Text {
	if maps.EqualFunc(was, is, quantity.Amount.Equal) {
		return nil
	}
	var problems []message.Text
	names := slices.Sorted(maps.Keys(was))
	for name := range is {
		if _, both := was[name]; !both {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	for _, name := range names {
		a, hasA := was[name]
		b, hasB := is[name]
		if hasA != hasB || !a.Equal(b) {
			problems = append(problems, say(name, figureOrNone(a, hasA), figureOrNone(b, hasB)))
		}
	}
	return problems
}

func figureOrNone(a quantity.Amount, there bool) message.Text {
	if !there {
		return message.New("nothing")
	}
	return message.New("%s", a)
}
