package audit

import (
	"fmt"
	"maps"
	"reflect"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"tenthpoint/internal/book"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
)

// looksTogether is how many loads are looked at before they are counted.
const looksTogether = 256

// look is what a look at one load found; load is nil when its facts make none.
type look struct {
	load     *load.Load
	problems []string
}

// loads replays every load, works it again and compares it with its row. Loads
// do not depend on each other, so every core looks at some; they are counted in
// the order they were opened.
func (v *walk) loads() error {
	for ids := range slices.Chunk(v.ids, looksTogether) {
		looks := make([]look, len(ids))
		var next atomic.Int64
		var workers sync.WaitGroup
		for range runtime.NumCPU() {
			workers.Go(func() {
				for i := next.Add(1) - 1; int(i) < len(ids) && v.ctx.Err() == nil; i = next.Add(1) - 1 {
					looks[i] = v.look(ids[i])
				}
			})
		}
		workers.Wait()
		if err := v.ctx.Err(); err != nil {
			return err
		}
		for i, one := range looks {
			v.found(one.problems...)
			v.count(ids[i], one.load)
			if v.progress != nil {
				v.progress(v.out.Loads)
			}
		}
	}
	return nil
}

// look looks at a load, and again where something is wrong: a truck may have
// been weighed between one reading and the other.
func (v *walk) look(id string) look {
	l, problems := v.load(id)
	if len(problems) > 0 {
		l, problems = v.load(id)
	}
	return look{l, problems}
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
		v.found(fmt.Sprintf("Ticket number %d was given to load %s and to load %s.", l.Number, other, id))
	}
	v.tickets[l.Number] = id
	if before := l.InPlaceOf(); before > 0 {
		v.inPlace[l.Number] = before
	}
	if after := l.Successor(); after > 0 {
		v.gaveWay[l.Number] = after
	}
}

func (v *walk) load(id string) (*load.Load, []string) {
	l, err := office.Load(v.ctx, v.desk, id)
	if err != nil {
		return nil, []string{fmt.Sprintf("The facts of load %s do not follow from each other: %v.", id, err)}
	}
	var problems []string
	if l.Settled != nil {
		problems = v.settlement(l)
	}
	return l, append(problems, v.row(l)...)
}

// settlement works a load again and compares every figure.
func (v *walk) settlement(l *load.Load) []string {
	s, err := office.ResettledUnder(l, office.Kept{Edition: v.kept, Tables: v.tables})
	if err != nil {
		return []string{fmt.Sprintf("%s cannot be settled again: %v.", office.LoadTitle(l), err)}
	}
	fresh := office.SettledFact(s, l.Settled.Law)
	problems := unlike(office.LoadTitle(l)+": %s was written down as %s and works out as %s.", l.Settled.Figures, fresh.Figures)
	if fresh.Working != l.Settled.Working {
		problems = append(problems, fmt.Sprintf("%s: the working does not have the hash that was written down.", office.LoadTitle(l)))
	}
	return problems
}

// kept is an edition out of the book, read once.
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

// tables are the rules of law out of the book.
func (v *walk) tables(hash string) (*grain.Tables, error) { return v.desk.TablesKept(v.ctx, hash) }

// row compares a load with its row in the lists.
func (v *walk) row(l *load.Load) []string {
	rows, err := v.book.Loads(v.ctx, book.LoadFilter{ID: l.ID})
	if err != nil {
		return []string{fmt.Sprintf("The row of load %s in the lists cannot be read: %v.", l.ID, err)}
	}
	if len(rows) == 0 {
		return []string{fmt.Sprintf("%s has facts in the journal but is missing from the lists.", office.LoadTitle(l))}
	}
	was, is := rows[0], office.RowOf(l)
	if was.Owners, err = v.book.Owners(v.ctx, l.ID); err != nil {
		return []string{fmt.Sprintf("The owners of load %s in the lists cannot be read: %v.", l.ID, err)}
	}
	problems := unlike(office.LoadTitle(l)+": in the lists %s is %s, by the facts %s.", was.Figures, is.Figures)
	return append(problems, unlikeCells(l, was, is)...)
}

// unlikeCells names the cells in which two rows part.
func unlikeCells(l *load.Load, was, is book.LoadRow) []string {
	var problems []string
	a, b := reflect.ValueOf(was), reflect.ValueOf(is)
	for i := range a.NumField() {
		name := a.Type().Field(i).Name
		x, y := a.Field(i).Interface(), b.Field(i).Interface()
		if name != "Figures" && fmt.Sprint(x) != fmt.Sprint(y) {
			problems = append(problems, fmt.Sprintf("%s: in the lists %s is %q, by the facts %q.", office.LoadTitle(l), name, fmt.Sprint(x), fmt.Sprint(y)))
		}
	}
	return problems
}

// unlike names every figure that two settlements do not share; format takes the
// figure's name and its two values.
func unlike(format string, was, is map[string]quantity.Amount) []string {
	var problems []string
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
			problems = append(problems, fmt.Sprintf(format, name, figureOrNone(a, hasA), figureOrNone(b, hasB)))
		}
	}
	return problems
}

func figureOrNone(a quantity.Amount, there bool) string {
	if !there {
		return "nothing"
	}
	return a.String()
}
