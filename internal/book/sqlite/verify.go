package sqlite

import (
	"context"
	"errors"
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
func (r factReader) VerifyChain(ctx context.Context) (problems []string, count int64, err error) {
	return journal.Check(r.Facts(ctx, book.FactFilter{}))
}

// VerifyFile checks the file itself: that its pages and indexes agree, and
// that the triggers which forbid altering the journal are there.
func (b *Book) VerifyFile(ctx context.Context) ([]string, error) {
	from := reader{b.file, b.read}.during(ctx)
	problems, err := list(from, scanText, `SELECT 'The file is damaged: ' || integrity_check || '.'
		FROM pragma_integrity_check WHERE integrity_check <> 'ok'`)
	if err != nil {
		return problems, err
	}
	unguarded, err := list(from, scanText, `
		WITH guard (name) AS (VALUES
			('facts_only_follow'), ('facts_never_change'), ('facts_never_go'),
			('editions_only_new'), ('editions_never_change'), ('editions_never_go'),
			('series_start_at_1'), ('series_count_by_1'), ('series_never_go'))
		SELECT 'The trigger ' || name || ' was removed from the book; somebody meant to alter it.'
		FROM guard WHERE name NOT IN (SELECT name FROM sqlite_schema WHERE type = 'trigger')`)
	return append(problems, unguarded...), err
}
