package sqlite

import (
	"context"
	"database/sql"

	"tenthpoint/internal/book"
)

// hasSample is true for a load with a retained sample on the shelf. The load of a corrected ticket,
// and of a void one that was reissued, has handed its sample on; one that was to take a ticket's
// place and was turned away has handed it back.
const hasSample = "kept <> '' AND phase <> 'corrected' AND reissued_by IS NULL AND (phase <> 'refused' OR coalesce(corrects, reissues) IS NULL)"

// Shelf lists the loads with a retained sample, in the order of their tickets, those without one
// last.
func (r loadReader) Shelf(ctx context.Context, f book.ShelfFilter) ([]book.ShelfRow, error) {
	query, args := "SELECT id, coalesce(ticket, 0), commodity, grower_name, day, sample, kept, keep_until FROM loads WHERE "+hasSample+" AND keep_until <> ''", []any{}
	if f.Until != "" {
		query, args = query+" AND keep_until <= ?", append(args, f.Until)
	}
	if f.Gone != "" {
		query, args = query+" AND NOT EXISTS (SELECT 1 FROM standing WHERE kind = ? AND id = loads.id)", append(args, f.Gone)
	}
	return list(r.during(ctx), scanShelf, query+" ORDER BY ticket IS NULL, ticket, length(id), id", args...)
}

func scanShelf(rows *sql.Rows) (s book.ShelfRow, err error) {
	err = rows.Scan(&s.Load, &s.Ticket, &s.Commodity, &s.GrowerName, &s.Day, &s.Sample, &s.Kept, &s.Until)
	return s, err
}

// SamplesKept counts the retained samples to be kept through the days from one
// to another, day by day.
func (r loadReader) SamplesKept(ctx context.Context, from, to string) ([]book.KeptSamples, error) {
	return list(r.during(ctx), scanKept, selectKept, from, to)
}

// SamplesKept is [Book.SamplesKept] as the write has left it so far.
func (tx *Tx) SamplesKept(from, to string) ([]book.KeptSamples, error) {
	return list(tx, scanKept, selectKept, from, to)
}

const selectKept = "SELECT keep_until, count(*) FROM loads WHERE keep_until >= ? AND keep_until <= ? AND " + hasSample + " GROUP BY keep_until ORDER BY keep_until"

func scanKept(rows *sql.Rows) (k book.KeptSamples, err error) {
	err = rows.Scan(&k.Until, &k.Count)
	return k, err
}

// Origins leads from every load that corrects or reissues a ticket, however often
// that was done before, to the load that the first ticket was for.
func (r loadReader) Origins(ctx context.Context) (map[string]string, error) {
	out := map[string]string{}
	err := each(r.during(ctx), func(rows *sql.Rows) error {
		var id, origin string
		err := rows.Scan(&id, &origin)
		out[id] = origin
		return err
	}, selectOrigins)
	return out, err
}

// selectOrigins names the order of its joins: from the few loads that take a ticket's
// place to the one load of that ticket, never from all loads.
const selectOrigins = `WITH RECURSIVE chain (id, origin) AS (
		SELECT c.id, o.id
		  FROM loads c CROSS JOIN loads o ON o.ticket = coalesce(c.corrects, c.reissues)
		 WHERE coalesce(c.corrects, c.reissues) IS NOT NULL AND coalesce(o.corrects, o.reissues) IS NULL
		UNION ALL
		SELECT c.id, chain.origin
		  FROM chain CROSS JOIN loads o ON o.id = chain.id CROSS JOIN loads c ON coalesce(c.corrects, c.reissues) = o.ticket
	) SELECT id, origin FROM chain`
