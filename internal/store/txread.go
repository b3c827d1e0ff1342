package store

// A use case that writes down what it has read, such as the closing of a day,
// reads the lists as its own write has left them.

// Loads is [Book.Loads] as the write has left it so far.
func (tx *Tx) Loads(f LoadFilter) ([]LoadRow, error) {
	query, args := f.query()
	rows, err := tx.Query(query, args...)
	if err != nil {
		return nil, err
	}
	out, err := scanLoads(rows)
	return out, tx.fail(err)
}

// StandingOf is [Book.StandingOf] as the write has left it so far.
func (tx *Tx) StandingOf(kind string) ([]Standing, error) {
	rows, err := tx.Query(selectStanding, kind)
	if err != nil {
		return nil, err
	}
	out, err := scanStanding(rows)
	return out, tx.fail(err)
}
