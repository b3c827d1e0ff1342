package postgres

import (
	"context"
	"fmt"
	"strings"

	"github.com/jackc/pgx/v5"

	"tenthpoint/internal/book"
	"tenthpoint/internal/settle"
)

// Search lists the tickets that fit.
func (r loadReader) Search(ctx context.Context, s book.Search) ([]book.LoadRow, error) {
	w := searchWhere(s)
	order := " ORDER BY ticket DESC NULLS LAST"
	if s.Refused {
		order = " ORDER BY ended_at DESC"
	}
	return list(r.during(ctx), scanRow, fmt.Sprintf("%s%s%s LIMIT %d", selectLoads, w, order, s.Limit), w.args...)
}

// CountFound returns the number of matching tickets, over all pages.
func (r loadReader) CountFound(ctx context.Context, s book.Search) (int64, error) {
	s.Before = 0
	w := searchWhere(s)
	n, _, err := one(r.during(ctx), scanNumber, "SELECT count(*) FROM loads"+w.String(), w.args...)
	return n, err
}

func searchWhere(s book.Search) *where {
	w := &where{}
	day := "issued_day"
	if s.Refused {
		day = "ended_day"
		w.add("ticket IS NULL AND ended_at <> ''")
	} else {
		w.add("ticket IS NOT NULL")
	}
	if s.Before > 0 && !s.Refused {
		w.add("ticket < ?", s.Before)
	}
	w.number("ticket", s.Ticket)
	if s.Grower != "" {
		codes := append([]string{s.Grower}, s.AlsoGrowers...)
		w.add("(grower = ANY (?) OR id IN (SELECT load FROM owners WHERE grower = ANY (?)))", codes, codes)
	}
	w.text("truck", s.Truck)
	w.text("commodity", s.Commodity)
	w.text("bin", s.Bin)
	w.from(day, s.FromDay)
	if s.ToDay != "" {
		w.add(day+" <= ?", s.ToDay)
	}
	if len(s.Phases) > 0 {
		w.add("phase = ANY (?)", s.Phases)
	}
	w.found(s)
	for _, t := range s.Terms {
		termFits(t, w)
	}
	return w
}

// found adds conditions on what was found of a load, and on when it came.
func (w *where) found(s book.Search) {
	const line = "split_part(figures::json ->> ?::text, ' ', 1)::numeric"
	if s.MoistFrom != "" {
		w.add(line+" >= ?::numeric", settle.LineMoisture, s.MoistFrom)
	}
	if s.MoistBelow != "" {
		w.add(line+" < ?::numeric", settle.LineMoisture, s.MoistBelow)
	}
	if s.With != "" {
		w.add(line+" <> 0", s.With)
	}
	if s.CameFrom != "" {
		w.add("opened_at >= ? AND opened_at < ? AND corrects IS NULL AND reissues IS NULL", s.CameFrom, s.CameBefore)
	}
}

// termFits adds one word's condition.
func termFits(t book.Term, w *where) {
	like := part(t.Text)
	either := []string{"grower_name ILIKE ? ESCAPE '!'", "truck ILIKE ? ESCAPE '!'", "grower = ?", "ticket::text LIKE ? ESCAPE '!'"}
	args := []any{like, like, t.Text, likeWords.Replace(t.Text) + "%"}
	if len(t.Commodities) > 0 {
		either, args = append(either, "commodity = ANY (?)"), append(args, t.Commodities)
	}
	if len(t.Growers) > 0 {
		either, args = append(either, "grower = ANY (?)"), append(args, t.Growers)
	}
	w.add("("+strings.Join(either, " OR ")+")", args...)
}

// hasSample is true for a load with a retained sample on the shelf. The load of a corrected ticket,
// and of a void one that was reissued, has handed its sample on; one that was to take a ticket's
// place and was turned away has handed it back.
const hasSample = "kept <> '' AND phase <> 'corrected' AND reissued_by IS NULL AND (phase <> 'refused' OR coalesce(corrects, reissues) IS NULL)"

// Shelf lists the loads with a retained sample, in the order of their tickets, those without one
// last.
func (r loadReader) Shelf(ctx context.Context, f book.ShelfFilter) ([]book.ShelfRow, error) {
	w := &where{}
	w.add(hasSample + " AND keep_until <> ''")
	if f.Until != "" {
		w.add("keep_until <= ?", f.Until)
	}
	if f.Gone != "" {
		w.add("NOT EXISTS (SELECT 1 FROM standing WHERE kind = ? AND id = loads.id)", f.Gone)
	}
	return list(r.during(ctx), scanShelf, "SELECT id, coalesce(ticket, 0), commodity, grower_name, day, sample, kept, keep_until FROM loads"+
		w.String()+" ORDER BY ticket IS NULL, ticket, length(id), id", w.args...)
}

func scanShelf(row pgx.Row) (s book.ShelfRow, err error) {
	err = row.Scan(&s.Load, &s.Ticket, &s.Commodity, &s.GrowerName, &s.Day, &s.Sample, &s.Kept, &s.Until)
	return s, err
}

// SamplesKept counts the retained samples to be kept through the days from one to another, day by
// day.
func (r loadReader) SamplesKept(ctx context.Context, from, to string) ([]book.KeptSamples, error) {
	return samplesKept(r.during(ctx), from, to)
}

func samplesKept(s source, from, to string) ([]book.KeptSamples, error) {
	return list(s, scanKept, "SELECT keep_until, count(*) FROM loads WHERE keep_until >= $1 AND keep_until <= $2 AND "+hasSample+" GROUP BY keep_until ORDER BY keep_until", from, to)
}

func scanKept(row pgx.Row) (k book.KeptSamples, err error) {
	err = row.Scan(&k.Until, &k.Count)
	return k, err
}

// Origins leads from every load that corrects or reissues a ticket, however often that was done
// before, to the load that the first ticket was for.
func (r loadReader) Origins(ctx context.Context) (map[string]string, error) {
	out := map[string]string{}
	err := r.during(ctx).each(func(rows pgx.Rows) error {
		var id, origin string
		err := rows.Scan(&id, &origin)
		out[id] = origin
		return err
	}, `WITH RECURSIVE chain (id, origin) AS (
		SELECT c.id, o.id
		  FROM loads c JOIN loads o ON o.ticket = coalesce(c.corrects, c.reissues)
		 WHERE coalesce(c.corrects, c.reissues) IS NOT NULL AND coalesce(o.corrects, o.reissues) IS NULL
		UNION ALL
		SELECT c.id, chain.origin
		  FROM chain JOIN loads o ON o.id = chain.id JOIN loads c ON coalesce(c.corrects, c.reissues) = o.ticket
	) SELECT id, origin FROM chain`)
	return out, err
}
