package book

import (
	"tenthpoint/internal/bin"
	"tenthpoint/internal/journal"
)

// Tx is a write transaction. Everything done in it is in the book when the write succeeds, and
// nothing of it otherwise; after a first failure every later call fails the same way. It belongs to
// the function it was handed to.
//
// Tx is declared here and not by its users because Go matches the parameter of a function by
// identity: an engine and a user of it must name the same type.
type Tx interface {
	// Append enters a fact at the end of the chain.
	Append(journal.Entry) (journal.Fact, error)
	// NextNumber issues the next number of a series, from 1 and without a gap.
	NextNumber(series string) (int64, error)
	// KeepEdition keeps the text of an edition by its SHA-256, once.
	KeepEdition(id, sha, text string) error

	// PutLoad writes a load's row in place of the one before, and moves the
	// position, the bins and the lines of owners with it.
	PutLoad(LoadRow) error
	PutRecord(Record) error
	// MoveGrain brings bins and owners up to date with a movement whose record was just written.
	MoveGrain(bin.Movement) error
	// MoveOwners brings owners up to date with a record of one of [OwnerKinds] that was just written in
	// place of another, or of nil.
	MoveOwners(was, is journal.Kinded) error
	SaveDraft(Draft) error
	DropDrafts(id string) error

	// What follows reads the book as this write has left it so far.

	// LastAt is the time of the last fact, as facts carry it; empty in an empty book.
	LastAt() (string, error)
	FactsOf(subject string) ([]journal.Fact, error)
	Loads(LoadFilter) ([]LoadRow, error)
	Records(kind string) ([]Record, error)
	StockBefore(day string) ([]StockRow, error)
	// BinsBefore is the last row before a day of every place where grain lies or lay.
	BinsBefore(day string) ([]bin.Row, error)
	// BinBefore is the same of one bin: a row for each grain that lies or lay there.
	BinBefore(name, day string) ([]bin.Row, error)
	// MovementsOn are the movements of grain of a day, in the order of their numbers.
	MovementsOn(day string) ([]bin.Movement, error)
	LastTicketBefore(day string) (int64, error)
	SamplesKept(from, to string) ([]KeptSamples, error)
	HasRecord(kind, id string) (bool, error)
	// LastRecord is the highest id among the records of a kind; empty for none.
	LastRecord(kind string) (id string, err error)
	// LastIssuedDay is the latest day that any ticket counts in.
	LastIssuedDay() (day string, err error)
}
