package sqlite

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
)

// Verify does all the checks of a book and returns every problem as a
// sentence. The error says what could not be read to the end; the other checks
// are done nevertheless.
func (b *Book) Verify(ctx context.Context) (problems []string, err error) {
	damaged, fileErr := b.VerifyFile(ctx)
	broken, _, chainErr := b.VerifyChain(ctx)
	altered, _, editionErr := b.VerifyEditions(ctx)
	return slices.Concat(damaged, broken, altered), errors.Join(fileErr, chainErr, editionErr)
}

// VerifyChain walks the whole chain and returns every break as a sentence
// naming the fact, and the number of facts read.
func (b *Book) VerifyChain(ctx context.Context) (problems []string, count int64, err error) {
	return journal.Check(b.Facts(ctx, book.FactFilter{}))
}

// VerifyEditions compares every edition's text with the hash it is known by.
func (b *Book) VerifyEditions(ctx context.Context) (problems []string, count int64, err error) {
	rows, err := b.read.QueryContext(ctx, "SELECT sha256, id, text FROM editions ORDER BY id, sha256")
	if err != nil {
		return nil, 0, b.sentence(err)
	}
	defer rows.Close()
	for rows.Next() {
		var sha, id, text string
		if err := rows.Scan(&sha, &id, &text); err != nil {
			return problems, count, b.sentence(err)
		}
		count++
		if now := hashOf(text); now != sha {
			problems = append(problems, fmt.Sprintf(
				"The edition %q was changed after it was kept: it carries hash %q, its text now gives %.12s...", id, sha, now))
		}
	}
	return problems, count, b.sentence(rows.Err())
}

// VerifyFile checks the file itself: that its pages and indexes agree, and
// that the triggers which forbid altering the journal are there.
func (b *Book) VerifyFile(ctx context.Context) ([]string, error) {
	problems, err := b.texts(ctx, `SELECT 'The file is damaged: ' || integrity_check || '.'
		FROM pragma_integrity_check WHERE integrity_check <> 'ok'`)
	if err != nil {
		return problems, err
	}
	unguarded, err := b.texts(ctx, `
		WITH guard (name) AS (VALUES
			('facts_only_follow'), ('facts_never_change'), ('facts_never_go'),
			('editions_only_new'), ('editions_never_change'), ('editions_never_go'),
			('series_start_at_1'), ('series_count_by_1'), ('series_never_go'))
		SELECT 'The trigger ' || name || ' was removed from the book; somebody meant to alter it.'
		FROM guard WHERE name NOT IN (SELECT name FROM sqlite_schema WHERE type = 'trigger')`)
	return append(problems, unguarded...), err
}

// texts reads a query's single column.
func (b *Book) texts(ctx context.Context, query string, args ...any) ([]string, error) {
	rows, err := b.read.QueryContext(ctx, query, args...)
	if err != nil {
		return nil, b.sentence(err)
	}
	defer rows.Close()
	var texts []string
	for rows.Next() {
		var text string
		if err := rows.Scan(&text); err != nil {
			return texts, b.sentence(err)
		}
		texts = append(texts, text)
	}
	return texts, b.sentence(rows.Err())
}
