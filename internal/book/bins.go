package book

import (
	"maps"
	"slices"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/message"
	"tenthpoint/internal/position"
	"tenthpoint/internal/quantity"
)

// BinMove is the effect of one ticket on one day of one place.
type BinMove struct {
	bin.Place
	Day string
	bin.Tally
}

// LiesIn is the bin that the grain of a load went to: by the usual path of its pit, or the one on
// its ticket.
func (r LoadRow) LiesIn() string {
	if r.Onward != "" {
		return r.Onward
	}
	return r.Bin
}

// binMovesOf returns what a load's ticket moves, as weighed: on the day it was issued, and again on
// the day it was voided or corrected. A ticket that ended on its own day never moved anything.
func binMovesOf(r LoadRow) ([]BinMove, error) {
	if !r.moved() {
		return nil, nil
	}
	b, err := position.BroughtBy(r.Recorded())
	if err != nil {
		return nil, message.Errorf("%w: ticket %d: %w", ErrFigures, r.Ticket, err)
	}
	day, err := quantity.ParseDate(r.IssuedDay)
	if err != nil {
		return nil, message.Errorf("%w: ticket %d: %w", ErrFigures, r.Ticket, err)
	}
	unit := b.Net.Unit()
	place := bin.Place{Bin: r.LiesIn(), Commodity: r.Commodity, Unit: unit}
	issued, ended := bin.NoTrucks(unit), bin.NoTrucks(unit)
	if r.Recorded().Weighed {
		issued.Out, ended.Returned = b.Net, b.Net
	} else {
		issued.In, ended.Back = b.Grain(day), b.Net
	}
	moves := []BinMove{{place, r.IssuedDay, issued}}
	if r.EndedDay != "" {
		moves = append(moves, BinMove{place, r.EndedDay, ended})
	}
	return moves, nil
}

func (r LoadRow) moved() bool { return r.Ticket != 0 && r.EndedDay != r.IssuedDay }

// lineMovesOf returns what a load's ticket adds to the lines of who owns the grain.
func lineMovesOf(r LoadRow) ([]StockMove, error) {
	if !r.moved() {
		return nil, nil
	}
	b, err := position.BroughtBy(r.Recorded())
	if err != nil {
		return nil, message.Errorf("%w: ticket %d: %w", ErrFigures, r.Ticket, err)
	}
	entries := b.Entries(r.TermsOf)
	if r.Recorded().Weighed {
		entries = []position.Entry{{Line: position.Shipped, Weight: b.Net.Neg()}}
	}
	var moves []StockMove
	none := quantity.Zero(b.Net.Unit())
	for _, e := range entries {
		key := StockKey{r.Commodity, string(e.Line), b.Net.Unit()}
		moves = append(moves, StockMove{key, r.IssuedDay, e.Weight, none, none})
		if r.EndedDay != "" {
			moves = append(moves, StockMove{key, r.EndedDay, none, none, e.Weight})
		}
	}
	return moves, nil
}

// LineMovesOfMovement returns what a movement takes off the lines.
func LineMovesOfMovement(m bin.Movement) []StockMove {
	var moves []StockMove
	none := quantity.Zero(m.Unit())
	for _, e := range position.Postings(m) {
		moves = append(moves, StockMove{StockKey{m.Commodity, string(e.Line), m.Unit()}, m.Day.String(), none, e.Weight, none})
	}
	return moves
}

// binChange returns the moves when a load's row replaces another: those of the old row reversed,
// then those of the new one; none if they are equal.
func binChange(was, is []BinMove) []BinMove {
	if slices.EqualFunc(was, is, BinMove.equal) {
		return nil
	}
	var out []BinMove
	for _, m := range was {
		m.Tally = m.Neg()
		out = append(out, m)
	}
	return append(out, is...)
}

func (m BinMove) equal(o BinMove) bool {
	return m.Place == o.Place && m.Day == o.Day && m.Tally.Equal(o.Tally)
}

// A BinStore keeps the rows of bins, a day each. An engine gives it to [MoveBins] and [MoveBetween]
// within a write.
type BinStore interface {
	// BinRowsOn are the rows of a day, of one place or, without one, of all.
	BinRowsOn(day string, place *bin.Place) ([]bin.Row, error)
	// BinsBefore are the last rows before a day, of one place or, without one, of all.
	BinsBefore(day string, place *bin.Place) ([]bin.Row, error)
	// NextBinDay is the first day after a day that has a row; empty for none.
	NextBinDay(after string) (string, error)
	// MovementsOn are the movements of a day in the order of their numbers.
	MovementsOn(day string) ([]bin.Movement, error)
	PutBinRow(bin.Row) error
}

// MoveBins adds moves of tickets to their days and works out those days, and all later ones that
// follow from them.
func MoveBins(s BinStore, moves []BinMove) error {
	dirty := map[string]map[bin.Place]bool{}
	for _, m := range moves {
		rows, err := s.BinRowsOn(m.Day, &m.Place)
		if err != nil {
			return err
		}
		day, err := quantity.ParseDate(m.Day)
		if err != nil {
			return err
		}
		row := bin.NoRow(m.Place, day)
		if len(rows) > 0 {
			row = rows[0]
		}
		row.Tally = row.Add(m.Tally)
		if err := s.PutBinRow(row); err != nil {
			return err
		}
		if dirty[m.Day] == nil {
			dirty[m.Day] = map[bin.Place]bool{}
		}
		dirty[m.Day][m.Place] = true
	}
	for _, day := range slices.Sorted(maps.Keys(dirty)) {
		if err := closeBins(s, day, dirty[day]); err != nil {
			return err
		}
	}
	return nil
}

// MoveBetween works out the day of a movement whose record was just written, and all later ones that
// follow from it.
func MoveBetween(s BinStore, m bin.Movement) error {
	changed := map[bin.Place]bool{}
	for _, name := range m.Bins() {
		changed[bin.Place{Bin: name, Commodity: m.Commodity, Unit: m.Unit()}] = true
	}
	return closeBins(s, m.Day.String(), changed)
}

// closeBins works a day out again for the places where it changed, and the days after it as long
// as anything differs. A day with movements is worked out whole, since they tie places together.
func closeBins(s BinStore, day string, changed map[bin.Place]bool) error {
	for first := true; day != "" && len(changed) > 0; first = false {
		moves, err := s.MovementsOn(day)
		if err != nil {
			return err
		}
		whole := []*bin.Place{nil}
		if len(moves) == 0 {
			whole = whole[:0]
			for p := range changed {
				whole = append(whole, &p)
			}
		}
		for _, place := range whole {
			same, other, err := closeDay(s, day, place, moves)
			if err != nil {
				return err
			}
			for _, p := range other {
				changed[p] = true
			}
			for _, p := range same {
				if !first { // on the first day the tickets themselves differ
					delete(changed, p)
				}
			}
		}
		if day, err = s.NextBinDay(day); err != nil {
			return err
		}
	}
	return nil
}

// closeDay works out one day, of one place or of all, and returns which places close it as before
// and which otherwise.
func closeDay(s BinStore, day string, place *bin.Place, moves []bin.Movement) (same, other []bin.Place, err error) {
	kept, err := s.BinRowsOn(day, place)
	if err != nil {
		return nil, nil, err
	}
	before, err := s.BinsBefore(day, place)
	if err != nil {
		return nil, nil, err
	}
	open, trucks, was := bin.House{}, map[bin.Place]bin.Tally{}, map[bin.Place]bin.Row{}
	for _, r := range before {
		open[r.Place] = r.Close
	}
	for _, r := range kept {
		trucks[r.Place], was[r.Place] = r.Tally, r
	}
	date, err := quantity.ParseDate(day)
	if err != nil {
		return nil, nil, err
	}
	for _, r := range bin.CloseDay(date, open, trucks, moves) {
		if had, there := was[r.Place]; there && equalRows(had, r) {
			same = append(same, r.Place)
			continue
		}
		other = append(other, r.Place)
		if err := s.PutBinRow(r); err != nil {
			return nil, nil, err
		}
	}
	return same, other, nil
}

func equalRows(a, b bin.Row) bool { return EncodeBinRow(a) == EncodeBinRow(b) }

// BinSum works the bins of every day out from all loads and movements.
type BinSum struct {
	trucks map[string]map[bin.Place]bin.Tally
	moves  map[string][]bin.Movement
}

// Add adds the moves of a load. It fails for figures that cannot be read.
func (s *BinSum) Add(r LoadRow) error {
	moves, err := binMovesOf(r)
	for _, m := range moves {
		if s.trucks == nil {
			s.trucks = map[string]map[bin.Place]bin.Tally{}
		}
		if s.trucks[m.Day] == nil {
			s.trucks[m.Day] = map[bin.Place]bin.Tally{}
		}
		tally, there := s.trucks[m.Day][m.Place]
		if !there {
			tally = bin.NoTrucks(m.Unit)
		}
		s.trucks[m.Day][m.Place] = tally.Add(m.Tally)
	}
	return err
}

// Move adds a movement. They are added in the order of their numbers.
func (s *BinSum) Move(m bin.Movement) {
	if s.moves == nil {
		s.moves = map[string][]bin.Movement{}
	}
	s.moves[m.Day.String()] = append(s.moves[m.Day.String()], m)
}

// Rows are the rows of all days, day by day.
func (s *BinSum) Rows() ([]bin.Row, error) {
	days := slices.Collect(maps.Keys(s.trucks))
	days = append(days, slices.Collect(maps.Keys(s.moves))...)
	slices.Sort(days)
	house := bin.House{}
	var out []bin.Row
	for _, day := range slices.Compact(days) {
		date, err := quantity.ParseDate(day)
		if err != nil {
			return out, err
		}
		for _, r := range bin.CloseDay(date, house, s.trucks[day], s.moves[day]) {
			house[r.Place] = r.Close
			if !r.IsEmpty() {
				out = append(out, r)
			}
		}
	}
	return out, nil
}

// CompareBins says of every row in which the book differs from what was worked out anew.
func CompareBins(want, kept []bin.Row) []message.Text {
	found := map[string]bin.Row{}
	for _, r := range kept {
		found[binPlace(r).String()] = r
	}
	var problems []message.Text
	for _, w := range want {
		is, ok := found[binPlace(w).String()]
		delete(found, binPlace(w).String())
		switch {
		case !ok:
			problems = append(problems, message.New("What lies in %s is missing from the book.", binPlace(w)))
		case !equalRows(is, w):
			problems = append(problems, message.New("What lies in %s is written down as %s; tickets and movements come to %s.", binPlace(w), is.Close.Balance(), w.Close.Balance()))
		}
	}
	for _, r := range kept {
		if _, left := found[binPlace(r).String()]; left {
			problems = append(problems, message.New("What lies in %s is written down as %s, but nothing moved there.", binPlace(r), r.Close.Balance()))
		}
	}
	return problems
}

func binPlace(r bin.Row) message.Text {
	return message.New("bin %q, %s in %v, on %s", r.Bin, r.Commodity, r.Unit, r.Day)
}

// LineSum adds the lines of owners up from all loads and movements.
type LineSum struct{ StockSum }

// Add adds the moves of a load. It fails for figures that cannot be read.
func (s *LineSum) Add(r LoadRow) error {
	moves, err := lineMovesOf(r)
	s.put(moves)
	return err
}

// Move adds a movement.
func (s *LineSum) Move(m bin.Movement) { s.put(LineMovesOfMovement(m)) }
