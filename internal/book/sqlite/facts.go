package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"iter"
	"strings"

	"tenthpoint/internal/book"
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

// Append enters a fact at the end of the chain. An entry with problems is
// refused with all of them.
func (tx *Tx) Append(d journal.Entry) (journal.Fact, error) {
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

// A factReader reads the journal.
type factReader struct{ reader }

// Facts reads the selected facts in order, all from one snapshot. It streams, so a book of any size
// may be read; an error is the last thing it yields.
func (r factReader) Facts(ctx context.Context, filter book.FactFilter) iter.Seq2[journal.Fact, error] {
	query, args := factQuery(filter)
	return r.walk(ctx, query, args...)
}

// FactsBySubject reads the facts of every subject that begins with a prefix, subject
// by subject in the order of their bytes, those of one in their order.
func (r factReader) FactsBySubject(ctx context.Context, prefix string) iter.Seq2[journal.Fact, error] {
	return r.walk(ctx, "SELECT "+columns+" FROM facts INDEXED BY facts_subject WHERE subject >= ? AND subject < ? ORDER BY subject, seq", prefix, prefix+lastOfAll)
}

// lastOfAll sorts behind every text: UTF-8 has no such byte.
const lastOfAll = "\xff"

func (r factReader) walk(ctx context.Context, query string, args ...any) iter.Seq2[journal.Fact, error] {
	return func(yield func(journal.Fact, error) bool) {
		from := r.during(ctx)
		rows, err := from.query(query, args...)
		if err != nil {
			yield(journal.Fact{}, err)
			return
		}
		defer rows.Close()
		for rows.Next() {
			f, err := scanFact(rows)
			if !yield(f, from.fail(err)) || err != nil {
				return
			}
		}
		if err := rows.Err(); err != nil {
			yield(journal.Fact{}, from.fail(err))
		}
	}
}

// FactsOf is everything that happened to a subject, in order.
func (r factReader) FactsOf(ctx context.Context, subject string) ([]journal.Fact, error) {
	var facts []journal.Fact
	for f, err := range r.Facts(ctx, book.FactFilter{Subject: subject}) {
		if err != nil {
			return nil, err
		}
		facts = append(facts, f)
	}
	return facts, nil
}

// Head is the last fact; some is false for a book without any.
func (r factReader) Head(ctx context.Context) (last journal.Fact, some bool, err error) {
	facts, err := list(r.during(ctx), scanFact, selectHead)
	if err != nil || len(facts) == 0 {
		return last, false, err
	}
	return facts[0], true, nil
}

// unlisted is the prefix of the kinds of facts of a load before its ticket. They are the most
// numerous and are looked up by load, so no index lists them by kind.
const unlisted = "load."

// coded is the kind whose hashes are on slips, and have an index.
const coded = "ticket.issued"

// factQuery is the filter as SQL. It names the index itself, the narrowest there
// is: a subject has few facts, a kind perhaps many thousands.
func factQuery(f book.FactFilter) (string, []any) {
	var where []string
	var args []any
	restrict := func(condition string, arg ...any) {
		where, args = append(where, condition), append(args, arg...)
	}
	index := "NOT INDEXED"
	switch {
	case f.Kind == coded && f.Hash != "":
		restrict("kind = '" + coded + "'") // in the words of the index, which older books lack
	case f.Kind != "":
		restrict("kind = ?", f.Kind)
	}
	if f.Kind != "" && f.Hash == "" && !strings.HasPrefix(f.Kind, unlisted) {
		index = "INDEXED BY facts_kind"
		restrict("substr(kind, 1, 5) <> 'load.'") // in the words of the index
	}
	if f.Subject != "" {
		index = "INDEXED BY facts_subject"
		restrict("subject = ?", f.Subject)
	}
	if f.Hash != "" {
		index = ""
		restrict("hash >= ? AND hash < ?", f.Hash, f.Hash+"g")
	}
	if f.FromSeq > 0 {
		restrict("seq >= ?", f.FromSeq)
	}
	if f.ToSeq > 0 {
		restrict("seq <= ?", f.ToSeq)
	}
	query := "SELECT " + columns + " FROM facts " + index
	if len(where) > 0 {
		query += " WHERE " + strings.Join(where, " AND ")
	}
	return query + " ORDER BY seq", args
}

// scanFact reads a row of columns.
func scanFact(rows *sql.Rows) (f journal.Fact, err error) {
	err = rows.Scan(&f.Seq, &f.At, &f.Who, &f.Desk, &f.Kind, &f.Subject, &f.Body, &f.Prev, &f.Hash)
	return f, err
}
