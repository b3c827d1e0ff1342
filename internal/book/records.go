package book

import (
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

// A Filter chooses facts. What is left empty does not restrict.
type FactFilter struct {
	Subject string
	Kind    string
	FromSeq int64  // the first number
	ToSeq   int64  // the last number
	Hash    string // beginning of the hash, in lower-case hexadecimal
}

// Record is master data as last written: an elevator, a grower, a
// meter. Body is the fact's body.
type Record struct {
	Kind, ID string
	Seq      int64
	Body     []byte
}

// RecordsIn reads all records of one kind in some lists.
func RecordsIn[F journal.Kinded](lists interface {
	Records(kind string) ([]Record, error)
}) ([]F, error) {
	var zero F
	rows, err := lists.Records(zero.Kind())
	if err != nil {
		return nil, err
	}
	return ReadRecords[F](rows)
}

// ReadRecords decodes records of one kind from their rows.
func ReadRecords[F journal.Kinded](rows []Record) ([]F, error) {
	out := make([]F, 0, len(rows))
	for _, row := range rows {
		fact, err := journal.ReadBody[F](row.Body)
		if err != nil {
			return nil, message.Errorf("%s: %w", row.ID, err)
		}
		out = append(out, fact)
	}
	return out, nil
}

// Draft is text typed at a place of the book and not yet recorded as a fact. Texts is a JSON object
// of name to text; a draft without texts is none.
type Draft struct {
	Place, ID string
	At, Who   string
	Texts     string
}

// KeptSamples is the number of retained samples to be kept through a day.
type KeptSamples struct {
	Until string
	Count int
}

// ShelfFilter chooses samples kept: no longer than the day Until, if one is given, and
// without those whose load has a record of the kind Gone.
type ShelfFilter struct{ Until, Gone string }

// ShelfRow is a load with a retained sample. Ticket is zero where it has none yet; days are text as
// in the facts.
type ShelfRow struct {
	Load                string
	Ticket              int64
	Commodity           string
	GrowerName          string
	Day                 string
	Sample, Kept, Until string
}

// ErrBusy is returned by a write when another program kept writing in the book for longer than
// Options.Busy. Nothing was written; the caller may try again.
var ErrBusy = message.Storage.Errorf("the book is busy")

// ErrOld is returned when a book opened for reading is too old to be read unchanged. Opening it
// once for writing migrates it.
var ErrOld = message.Storage.Errorf("the book is older than this program")
