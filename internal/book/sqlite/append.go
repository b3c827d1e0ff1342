package sqlite

import (
	"database/sql"
	"errors"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

const (
	columns = "seq, at, who, desk, kind, subject, body, prev, hash"

	selectEnd     = "SELECT seq, hash, at FROM facts ORDER BY seq DESC LIMIT 1"
	selectHead    = "SELECT " + columns + " FROM facts ORDER BY seq DESC LIMIT 1"
	selectSubject = "SELECT " + columns + " FROM facts INDEXED BY facts_subject WHERE subject = ? ORDER BY seq"
	insertFact    = "INSERT INTO facts (" + columns + ") VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)"
)

// Append enters a fact at the end of the chain. A draft with problems is
// refused with all of them.
func (tx *Tx) Append(d journal.Draft) (journal.Fact, error) {
	if problems := d.Problems(); len(problems) > 0 {
		return journal.Fact{}, tx.fail(message.Storage.Errorf("This was not entered. %s", message.Texts(" ", problems)))
	}
	if err := tx.findLast(); err != nil {
		return journal.Fact{}, err
	}
	f := journal.Link(tx.last, d)
	_, err := tx.exec(insertFact,
		f.Seq, f.At, f.Who, f.Desk, f.Kind, f.Subject, string(f.Body), f.Prev, f.Hash)
	if err != nil {
		return journal.Fact{}, err
	}
	tx.last = &f
	return f, nil
}

// findLast looks up the fact to link the next one to, once: while this write lasts nobody else can
// append.
func (tx *Tx) findLast() error {
	if tx.last != nil {
		return tx.failed
	}
	var f journal.Fact
	err := tx.queryRow(selectEnd).Scan(&f.Seq, &f.Hash, &f.At)
	if errors.Is(err, sql.ErrNoRows) {
		return nil
	}
	tx.last = &f
	return err
}

// LastAt is the time of the last fact, this write included; empty in an empty book.
func (tx *Tx) LastAt() (string, error) {
	if err := tx.findLast(); err != nil || tx.last == nil {
		return "", err
	}
	return tx.last.At, nil
}

// FactsOf returns all facts of a subject, in order, including those this write has appended so far.
func (tx *Tx) FactsOf(subject string) ([]journal.Fact, error) {
	return list(tx, scanFact, selectSubject, subject)
}

// scanFact reads a row of columns.
func scanFact(rows *sql.Rows) (f journal.Fact, err error) {
	err = rows.Scan(&f.Seq, &f.At, &f.Who, &f.Desk, &f.Kind, &f.Subject, &f.Body, &f.Prev, &f.Hash)
	return f, err
}
