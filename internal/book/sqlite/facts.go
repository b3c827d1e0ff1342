package sqlite

import (
	"context"
	"iter"
	"strings"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
)

// Facts reads the chosen facts in order, all from the state at one moment. It
// reads as it goes, so a book of any size may be walked; whatever ends the
// reading is the last thing it yields.
func (b *Book) Facts(ctx context.Context, filter book.FactFilter) iter.Seq2[journal.Fact, error] {
	return func(yield func(journal.Fact, error) bool) {
		query, args := factQuery(filter)
		rows, err := b.read.QueryContext(ctx, query, args...)
		if err != nil {
			yield(journal.Fact{}, b.sentence(err))
			return
		}
		defer rows.Close()
		for rows.Next() {
			var f journal.Fact
			err := rows.Scan(parts(&f)...)
			if !yield(f, b.sentence(err)) || err != nil {
				return
			}
		}
		if err := rows.Err(); err != nil {
			yield(journal.Fact{}, b.sentence(err))
		}
	}
}

// FactsOf is everything that happened to a subject, in order.
func (b *Book) FactsOf(ctx context.Context, subject string) ([]journal.Fact, error) {
	var facts []journal.Fact
	for f, err := range b.Facts(ctx, book.FactFilter{Subject: subject}) {
		if err != nil {
			return nil, err
		}
		facts = append(facts, f)
	}
	return facts, nil
}

// Head is the last fact; some is false for a book without any.
func (b *Book) Head(ctx context.Context) (last journal.Fact, some bool, err error) {
	rows, err := b.read.QueryContext(ctx, selectHead)
	if err != nil {
		return last, false, b.sentence(err)
	}
	defer rows.Close()
	if rows.Next() {
		some = true
		err = rows.Scan(parts(&last)...)
	}
	if err == nil {
		err = rows.Err()
	}
	return last, some, b.sentence(err)
}

// unlisted begins the kinds of what happens to a load before its ticket. They
// are the most and are looked up by the load, so no index lists them by kind.
const unlisted = "load."

// factQuery is the filter as SQL. It names the index itself, the narrowest there
// is: a subject has few facts, a kind perhaps many thousands.
func factQuery(f book.FactFilter) (string, []any) {
	var where []string
	var args []any
	restrict := func(condition string, arg ...any) {
		where, args = append(where, condition), append(args, arg...)
	}
	index := "NOT INDEXED"
	if f.Kind != "" {
		restrict("kind = ?", f.Kind)
	}
	if f.Kind != "" && !strings.HasPrefix(f.Kind, unlisted) {
		index = "INDEXED BY facts_kind"
		restrict("substr(kind, 1, 5) <> 'load.'") // in the words of the index
	}
	if f.Subject != "" {
		index = "INDEXED BY facts_subject"
		restrict("subject = ?", f.Subject)
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
