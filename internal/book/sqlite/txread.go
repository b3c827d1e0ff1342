package sqlite

import "tenthpoint/internal/book"

// A use case that writes down what it has read, such as the closing of a day,
// reads the lists as its own write has left them.

// Loads is [Book.Loads] as the write has left it so far.
func (tx *Tx) Loads(f book.LoadFilter) ([]book.LoadRow, error) {
	query, args := loadQuery(f)
	rows, err := tx.query(query, args...)
	if err != nil {
		return nil, err
	}
	out, err := scanLoads(rows)
	return out, tx.fail(err)
}

// Records is [Book.Records] as the write has left it so far.
func (tx *Tx) Records(kind string) ([]book.Record, error) {
	rows, err := tx.query(selectStanding, kind)
	if err != nil {
		return nil, err
	}
	out, err := scanStanding(rows)
	return out, tx.fail(err)
}
