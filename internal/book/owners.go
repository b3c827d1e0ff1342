package book

import (
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/position"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/title"
)

// LineMovesOfSheet returns what a settlement sheet moves between the lines of who owns the grain:
// what was held for its owner, or not priced yet, is bought. A void sheet moves it back on the day
// it was void. Sheets of programs that did not write weights move nothing.
func LineMovesOfSheet(s paysheet.Sheet) []StockMove {
	var moves []StockMove
	for _, l := range s.Lines {
		from := position.LineOf(title.Terms{Under: l.Under, Whose: l.Whose})
		if l.Weight == nil || from == position.Sold {
			continue
		}
		none := quantity.Zero(l.Weight.Unit())
		was := StockKey{s.Commodity, string(from), l.Weight.Unit()}
		is := StockKey{s.Commodity, string(position.Sold), l.Weight.Unit()}
		moves = append(moves, StockMove{was, s.Day.String(), none, *l.Weight, none}, StockMove{is, s.Day.String(), *l.Weight, none, none})
		if s.Voided != nil {
			day := s.Voided.Day.String()
			moves = append(moves, StockMove{was, day, *l.Weight, none, none}, StockMove{is, day, none, none, *l.Weight})
		}
	}
	return moves
}

// Settle adds what a settlement sheet moved.
func (s *LineSum) Settle(sheet paysheet.Sheet) { s.put(LineMovesOfSheet(sheet)) }
