package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"slices"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

// Verify does all the checks of a book and returns every problem as a sentence. The error says what
// could not be read to the end; the other checks are done anyway.
func (b *Book) Verify(ctx context.Context) (problems []message.Text, err error) {
	damaged, fileErr := b.VerifyFile(ctx)
	broken, _, chainErr := b.VerifyChain(ctx)
	altered, _, editionErr := b.VerifyEditions(ctx)
	return slices.Concat(damaged, broken, altered), errors.Join(fileErr, chainErr, editionErr)
}

// verifySince checks what was entered after a head, and that tables, indexes and
// triggers are as the program makes them.
func (b *Book) verifySince(ctx context.Context, head journal.Head) ([]message.Text, error) {
	altered, err := verifySchema(ctx, reader{b.file, b.read}.during(ctx))
	if err != nil {
		return nil, err
	}
	broken, _, err := journal.CheckSince(head, b.Facts(ctx, book.FactFilter{FromSeq: head.Seq}))
	return append(altered, broken...), err
}

// VerifyChain walks the whole chain and returns every break as a sentence
// naming the fact, and the number of facts read.
func (r factReader) VerifyChain(ctx context.Context) (problems []message.Text, count int64, err error) {
	return journal.Check(r.Facts(ctx, book.FactFilter{}))
}

// VerifyFile checks the file itself: that its pages and indexes agree, and that its tables, indexes
// and triggers, some of which forbid altering the journal, are exactly those that the program
// makes.
func (b *Book) VerifyFile(ctx context.Context) ([]message.Text, error) {
	from := reader{b.file, b.read}.during(ctx)
	problems, err := list(from, scanDamage, "SELECT integrity_check FROM pragma_integrity_check WHERE integrity_check <> 'ok'")
	if err != nil {
		return problems, err
	}
	altered, err := verifySchema(ctx, from)
	problems = append(problems, altered...)
	if err != nil || len(altered) > 0 {
		return problems, err
	}
	misplaced, err := list(from, scanMisplaced, selectMisplacedOwners)
	return append(problems, misplaced...), err
}

// selectMisplacedOwners finds loads whose owners are not numbered from 1 on: the
// places are only sorted by, so nothing else would tell.
const selectMisplacedOwners = `SELECT load, count(*)
	FROM owners GROUP BY load HAVING min(place) <> 1 OR max(place) <> count(*) ORDER BY load`

func scanMisplaced(rows *sql.Rows) (message.Text, error) {
	var load string
	var owners int
	err := rows.Scan(&load, &owners)
	return message.New("The owners of load %v are not numbered 1 to %d.", load, owners), err
}

// scanDamage scans a message of SQLite's own integrity check.
func scanDamage(rows *sql.Rows) (message.Text, error) {
	said, err := scanText(rows)
	return message.New("The file is damaged: %v.", said), err
}
