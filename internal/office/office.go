// Package office has the read-only queries on the book: loads on the yard, previews of settlements,
// status of meters and samples, and every report for the manager and the examiner (day sheet,
// position, accounts, registers, proof).
//
// Its functions take a [Desk], the place of work they answer for. The acts that write are in
// package scalehouse, above this one.
package office

import (
	"context"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/law"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// Desk is the context of queries and papers: the book, the elevator's set-up, the rates and charts
// in use, and its clock.
type Desk interface {
	Reader() Book
	Profile() elevator.Profile
	Rates() *rates.Set
	Charts() *chart.Set
	// Engine settles new loads and closes days.
	Engine() settle.Engine
	// Kept returns the edition a ticket was settled under, from the book.
	Kept(ctx context.Context, hash string) (*rates.Edition, error)
	// Laws are the published rules in use.
	Laws() *law.Set
	// TablesOn returns the grain tables in force on a day, TablesKept those whose hash a ticket
	// keeps, from the book.
	TablesOn(day quantity.Date) (*grain.Tables, error)
	TablesKept(ctx context.Context, hash string) (*grain.Tables, error)
	// Now is the time as facts carry it, Today the business day, Local a fact's time on the wall's clock.
	Now() string
	Today() quantity.Date
	Local(at string) string
	// Signature is the name of the person signed in, for facts and papers.
	Signature() string
	// HeadText is a head as it is noted outside the book, signed where this computer has a key.
	HeadText(journal.Head) string
}
