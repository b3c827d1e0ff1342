package book

import (
	"cmp"
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// StockRow is one day of one commodity in one bin. Weight is the closing balance: the balance
// before, and In − Out − Back.
type StockRow struct {
	Commodity, Bin, Day   string
	In, Out, Back, Weight quantity.Amount
}

// SamePlace reports whether two rows are of one commodity in one bin, in one unit.
func (r StockRow) SamePlace(o StockRow) bool {
	return r.Commodity == o.Commodity && r.Bin == o.Bin && r.Weight.Unit() == o.Weight.Unit()
}

// StockKey says where grain is stored. Weights in different units are kept apart.
type StockKey struct {
	Commodity, Bin string
	Unit           quantity.Unit
}

// StockMove is the effect of one ticket on one day's row.
type StockMove struct {
	Key           StockKey
	Day           string
	In, Out, Back quantity.Amount
}

// movesOf returns the moves of a load's ticket: on the day it was issued, and again on the day it
// was voided or corrected. A ticket that ended on its own day never moved anything. It fails when
// the figures have no weight.
func movesOf(r LoadRow) ([]StockMove, error) {
	if !r.moved() {
		return nil, nil
	}
	weight, err := r.Recorded().Moves()
	if err != nil {
		return nil, message.Errorf("%w: ticket %d: %w", ErrFigures, r.Ticket, err)
	}
	key, none := StockKey{r.Commodity, r.Bin, weight.Unit()}, quantity.Zero(weight.Unit())
	move := StockMove{key, r.IssuedDay, weight, none, none}
	ended := StockMove{key, r.EndedDay, none, none, weight}
	if r.Recorded().Weighed {
		move.In, move.Out = none, weight.Neg()
	}
	if r.EndedDay == "" {
		return []StockMove{move}, nil
	}
	return []StockMove{move, ended}, nil
}

// Shift adds a move to its day and to the balance of every day after it. Days are the rows of the
// move's place from its day on, in order; before is the balance of the last day before, zero where
// there is none. It returns the rows to write.
func (m StockMove) Shift(before quantity.Amount, days []StockRow) []StockRow {
	if len(days) == 0 || days[0].Day != m.Day {
		none := quantity.Zero(m.Key.Unit)
		first := StockRow{Commodity: m.Key.Commodity, Bin: m.Key.Bin, Day: m.Day, In: none, Out: none, Back: none, Weight: before}
		days = slices.Insert(days, 0, first)
	}
	days[0].In, days[0].Out, days[0].Back = days[0].In.Add(m.In), days[0].Out.Add(m.Out), days[0].Back.Add(m.Back)
	for i := range days {
		days[i].Weight = days[i].Weight.Add(m.delta())
	}
	return days
}

// StockChange returns the moves when a load's row replaces another: those of the old row reversed,
// then those of the new one; none if they are equal.
func StockChange(was, is []StockMove) []StockMove {
	if slices.EqualFunc(was, is, StockMove.equal) {
		return nil
	}
	var out []StockMove
	for _, m := range was {
		out = append(out, m.negative())
	}
	return append(out, is...)
}

func (m StockMove) delta() quantity.Amount { return m.In.Sub(m.Out).Sub(m.Back) }

func (m StockMove) negative() StockMove {
	m.In, m.Out, m.Back = m.In.Neg(), m.Out.Neg(), m.Back.Neg()
	return m
}

func (m StockMove) equal(o StockMove) bool {
	return m.Key == o.Key && m.Day == o.Day && m.In.Equal(o.In) && m.Out.Equal(o.Out) && m.Back.Equal(o.Back)
}

func EmptyStock(r StockRow) bool { return r.In.IsZero() && r.Out.IsZero() && r.Back.IsZero() }

// sortStock puts rows in the order of their key and day.
func sortStock(rows []StockRow) {
	slices.SortFunc(rows, func(a, b StockRow) int {
		return cmp.Or(cmp.Compare(a.Commodity, b.Commodity), cmp.Compare(a.Bin, b.Bin),
			cmp.Compare(a.Weight.Unit().String(), b.Weight.Unit().String()), cmp.Compare(a.Day, b.Day))
	})
}

// StockSum adds the position of every day up from the rows of all loads.
type StockSum struct {
	days map[StockKey]map[string]*StockRow
}

// Add adds the moves of a load. It fails for figures that cannot be read.
func (s *StockSum) Add(r LoadRow) error {
	moves, err := movesOf(r)
	s.put(moves)
	return err
}

func (s *StockSum) put(moves []StockMove) {
	for _, m := range moves {
		day := s.day(m)
		day.In, day.Out, day.Back = day.In.Add(m.In), day.Out.Add(m.Out), day.Back.Add(m.Back)
	}
}

func (s *StockSum) day(m StockMove) *StockRow {
	if s.days == nil {
		s.days = map[StockKey]map[string]*StockRow{}
	}
	if s.days[m.Key] == nil {
		s.days[m.Key] = map[string]*StockRow{}
	}
	if s.days[m.Key][m.Day] == nil {
		none := quantity.Zero(m.Key.Unit)
		s.days[m.Key][m.Day] = &StockRow{Commodity: m.Key.Commodity, Bin: m.Key.Bin, Day: m.Day, In: none, Out: none, Back: none, Weight: none}
	}
	return s.days[m.Key][m.Day]
}

// Rows are the days on which anything moved, in order, with their balances.
func (s *StockSum) Rows() []StockRow {
	var all []StockRow
	for _, byDay := range s.days {
		for _, r := range byDay {
			if !EmptyStock(*r) {
				all = append(all, *r)
			}
		}
	}
	sortStock(all)
	return balanced(all)
}

// balanced runs the balance down the days of each key.
func balanced(rows []StockRow) []StockRow {
	for i := range rows {
		r := &rows[i]
		if i > 0 && rows[i-1].SamePlace(*r) {
			r.Weight = rows[i-1].Weight
		}
		r.Weight = r.Weight.Add(r.In).Sub(r.Out).Sub(r.Back)
	}
	return rows
}

// CompareStock says of every row in which the book differs from what was added up anew. Place is
// what the balances are of: a bin, or a line of who owns the grain.
func CompareStock(place string, want, kept []StockRow) []message.Text {
	found := map[string]StockRow{}
	for _, r := range kept {
		found[stockPlace(place, r).String()] = r
	}
	var problems []message.Text
	for _, w := range want {
		is, ok := found[stockPlace(place, w).String()]
		delete(found, stockPlace(place, w).String())
		if !ok {
			problems = append(problems, message.New("The position of %s is missing from the book.", stockPlace(place, w)))
		} else if !equalStock(is, w) {
			problems = append(problems, message.New("The position of %s is written down as %s; its tickets come to %s.", stockPlace(place, w), is.Weight, w.Weight))
		}
	}
	for _, r := range kept {
		if _, left := found[stockPlace(place, r).String()]; left {
			problems = append(problems, message.New("The position of %s is written down as %s, but no ticket moved anything there.", stockPlace(place, r), r.Weight))
		}
	}
	return problems
}

func stockPlace(place string, r StockRow) message.Text {
	return message.New("%s in %s %q on %v, in %v", r.Commodity, message.Words(place), r.Bin, r.Day, r.Weight.Unit())
}

func equalStock(r StockRow, o StockRow) bool {
	return r.In.Equal(o.In) && r.Out.Equal(o.Out) && r.Back.Equal(o.Back) && r.Weight.Equal(o.Weight)
}
