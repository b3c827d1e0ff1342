package sqlite

import (
	"context"
	"tenthpoint/internal/book"
)

// hasSample holds for a load that has a part of its sample on the shelf. The
// load of a corrected ticket, and of a void one that was reissued, has handed
// its sample on; one that was to take a ticket's place and was turned away has
// handed it back.
const hasSample = "kept <> '' AND phase <> 'corrected' AND reissued_by IS NULL AND (phase <> 'refused' OR coalesce(corrects, reissues) IS NULL)"

// Shelf lists the loads of which a part of the sample was kept, to be kept no
// longer than a day if one is given, in the order of their tickets, those without
// one last.
func (b *Book) Shelf(ctx context.Context, until string) ([]book.ShelfRow, error) {
	rows, err := b.read.QueryContext(ctx,
		`SELECT id, coalesce(ticket, 0), commodity, grower_name, day, sample, kept, keep_until
		   FROM loads
		  WHERE `+hasSample+` AND keep_until <> '' AND (? = '' OR keep_until <= ?)
		  ORDER BY ticket IS NULL, ticket, length(id), id`, until, until)
	if err != nil {
		return nil, b.sentence(err)
	}
	defer rows.Close()
	var out []book.ShelfRow
	for rows.Next() {
		var r book.ShelfRow
		if err := rows.Scan(&r.Load, &r.Ticket, &r.Commodity, &r.GrowerName, &r.Day, &r.Sample, &r.Kept, &r.Until); err != nil {
			return nil, b.sentence(err)
		}
		out = append(out, r)
	}
	return out, b.sentence(rows.Err())
}

// Origins leads from every load that corrects or reissues a ticket, however often
// that was done before, to the load that the first ticket was for.
func (b *Book) Origins(ctx context.Context) (map[string]string, error) {
	rows, err := b.read.QueryContext(ctx,
		`WITH RECURSIVE chain (id, origin) AS (
			SELECT c.id, o.id FROM loads c JOIN loads o ON o.ticket = coalesce(c.corrects, c.reissues) WHERE coalesce(o.corrects, o.reissues) IS NULL
			UNION ALL
			SELECT c.id, chain.origin FROM loads c JOIN loads o ON o.ticket = coalesce(c.corrects, c.reissues) JOIN chain ON chain.id = o.id
		) SELECT id, origin FROM chain`)
	if err != nil {
		return nil, b.sentence(err)
	}
	defer rows.Close()
	out := map[string]string{}
	for rows.Next() {
		var id, origin string
		if err := rows.Scan(&id, &origin); err != nil {
			return nil, b.sentence(err)
		}
		out[id] = origin
	}
	return out, b.sentence(rows.Err())
}
