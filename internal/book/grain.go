package book

import (
	"errors"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/journal"
)

// GrainChange is the changes of all that is kept of the grain: the position, the lines of
// owners and the bins.
type GrainChange struct {
	Stock, Lines []StockMove
	Bins         []BinMove
}

// ChangeOf returns what changes when a load's row replaces another.
func ChangeOf(was, is LoadRow) (c GrainChange, err error) {
	if c.Stock, err = changeOf(was, is, movesOf, StockChange); err != nil {
		return c, err
	}
	if c.Lines, err = changeOf(was, is, lineMovesOf, StockChange); err != nil {
		return c, err
	}
	c.Bins, err = changeOf(was, is, binMovesOf, binChange)
	return c, err
}

func changeOf[M any](was, is LoadRow, moves func(LoadRow) ([]M, error), change func(was, is []M) []M) ([]M, error) {
	before, err := moves(was)
	if err != nil {
		return nil, err
	}
	after, err := moves(is)
	if err != nil {
		return nil, err
	}
	return change(before, after), nil
}

// GrainSum adds everything that is kept of the grain up anew.
type GrainSum struct {
	Stock StockSum
	Lines LineSum
	Bins  BinSum
}

// Add adds the moves of a load. It fails for figures that cannot be read.
func (s *GrainSum) Add(r LoadRow) error {
	return errors.Join(s.Stock.Add(r), s.Lines.Add(r), s.Bins.Add(r))
}

// Follow adds what follows the loads: all movements in the order of their numbers, and all records of
// the kinds of [OwnerKinds].
func (s *GrainSum) Follow(moves []bin.Movement, owned []journal.Kinded) {
	for _, m := range moves {
		s.Lines.Move(m)
		s.Bins.Move(m)
	}
	for _, f := range owned {
		s.Lines.Own(f)
	}
}
