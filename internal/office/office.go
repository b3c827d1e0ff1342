// Package office has the read-only queries on the book: loads on the yard, previews of settlements,
// status of meters and samples, and every report for the manager and the examiner (day sheet,
// position, accounts, registers, proof).
//
// Its functions take a [Desk], the place of work they answer for. The acts that write are in
// package scalehouse, above this one.
package office

import (
	"context"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/law"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// Desk is the place of work that answers and papers are made for: the book, the
// elevator as it is set up, the rates and charts in use, and its clock.
type Desk interface {
	Reader() Book
	Profile() elevator.Profile
	Rates() *rates.Set
	Charts() *chart.Set
	// Engine settles new loads and closes days.
	Engine() settle.Engine
	// Kept is the edition a ticket was settled under, out of the book.
	Kept(ctx context.Context, hash string) (*rates.Edition, error)
	// Laws are the published rules in use.
	Laws() *law.Set
	// TablesOn are those about grain in force on a day, TablesKept those that a
	// ticket keeps the hash of, out of the book.
	TablesOn(day quantity.Date) (*grain.Tables, error)
	TablesKept(ctx context.Context, hash string) (*grain.Tables, error)
	// Now is the time as facts carry it, Today the business day, Local a fact's time on the wall's clock.
	Now() string
	Today() quantity.Date
	Local(at string) string
	// Signature is the name of the person signed in, for facts and papers.
	Signature() string
}

// Sentences is several things wrong at once, each a sentence.
type Sentences []string

// Error shows every sentence on a line of its own.
func (s Sentences) Error() string { return strings.Join(s, "\n") }

func SentencesOf(errs []error) []string {
	var out []string
	for _, err := range errs {
		out = append(out, err.Error())
	}
	return out
}

// commodityName is a commodity for people; one that is not known here keeps its
// id.
func commodityName(id string) string {
	if c, err := grain.ByID(id); err == nil {
		return c.Name
	}
	return id
}
