package book

import (
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/opening"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/position"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/receipt"
	"tenthpoint/internal/title"
)

// OwnerKinds are the kinds of records that move grain between the lines of who owns it.
var OwnerKinds = []string{paysheet.Sheet{}.Kind(), receipt.Receipt{}.Kind(), opening.Opening{}.Kind()}

// ReadOwner reads a record that moves grain between the lines of who owns it; nil for any other.
func ReadOwner(r Record) (journal.Kinded, error) {
	var f journal.Kinded
	var err error
	switch r.Kind {
	case paysheet.Sheet{}.Kind():
		f, err = journal.ReadBody[paysheet.Sheet](r.Body)
	case receipt.Receipt{}.Kind():
		f, err = journal.ReadBody[receipt.Receipt](r.Body)
	case opening.Opening{}.Kind():
		f, err = journal.ReadBody[opening.Opening](r.Body)
	default:
		return nil, nil
	}
	if err != nil {
		return nil, message.Errorf("%s: %w", r.ID, err)
	}
	return f, nil
}

// ReadOwners reads the records that move grain between the lines of who owns it.
func ReadOwners(all []Record) ([]journal.Kinded, error) {
	var out []journal.Kinded
	for _, r := range all {
		f, err := ReadOwner(r)
		if err != nil {
			return nil, err
		}
		out = append(out, f)
	}
	return out, nil
}

// OwnerChange is what moves between the lines where a record stands in place of another; each may be
// nil.
func OwnerChange(was, is journal.Kinded) []StockMove {
	return StockChange(ownerMoves(was), ownerMoves(is))
}

func ownerMoves(f journal.Kinded) []StockMove {
	switch f := f.(type) {
	case paysheet.Sheet:
		return lineMovesOfSheet(f)
	case receipt.Receipt:
		return lineMovesOfReceipt(f)
	case opening.Opening:
		return lineMovesOfOpening(f)
	}
	return nil
}

// lineMovesOfOpening returns what the house is opened with, line by line; what is taken back goes on the
// day it was.
func lineMovesOfOpening(o opening.Opening) []StockMove {
	var moves []StockMove
	for _, p := range o.Postings() {
		none := quantity.Zero(p.Weight.Unit())
		key := StockKey{p.Commodity, string(p.Line), p.Weight.Unit()}
		moves = append(moves, StockMove{key, o.Day.String(), p.Weight, none, none})
		if o.Ended != nil {
			moves = append(moves, StockMove{key, o.Ended.Day.String(), none, none, p.Weight})
		}
	}
	return moves
}

// lineMovesOfReceipt returns what a warehouse receipt moves: grain that was held for its owner is owed
// on it, until it ends.
func lineMovesOfReceipt(r receipt.Receipt) []StockMove {
	var moves []StockMove
	for _, l := range r.Lines {
		none := quantity.Zero(l.Weight.Unit())
		held := StockKey{r.Commodity, string(l.Held), l.Weight.Unit()}
		owed := StockKey{r.Commodity, string(r.Class()), l.Weight.Unit()}
		moves = append(moves, StockMove{held, r.Day.String(), none, l.Weight, none}, StockMove{owed, r.Day.String(), l.Weight, none, none})
		if r.Ended != nil {
			day := r.Ended.Day.String()
			moves = append(moves, StockMove{held, day, l.Weight, none, none}, StockMove{owed, day, none, l.Weight, none})
		}
	}
	return moves
}

// lineMovesOfSheet returns what a settlement sheet moves between the lines of who owns the grain:
// what was held for its owner, or not priced yet, is bought. A void sheet moves it back on the day
// it was void. Sheets of programs that did not write weights move nothing.
func lineMovesOfSheet(s paysheet.Sheet) []StockMove {
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

// Own adds what a record moved between the lines.
func (s *LineSum) Own(f journal.Kinded) { s.put(ownerMoves(f)) }
