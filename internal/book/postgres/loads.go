package postgres

import (
	"context"
	"encoding/json"
	"fmt"
	"iter"
	"strings"

	"github.com/jackc/pgx/v5"

	"tenthpoint/internal/book"
)

const (
	loadColumns = "id, phase, direction, day, opened_at, commodity, grower, grower_name, truck, bin, " +
		"disposition, contract, ticket, issued_at, issued_day, ended_at, ended_day, ended_by, corrects, reason, who, " +
		"manual, accepted, flags, sample, kept, keep_until, edition, edition_hash, figures, weigher, reissues, reissued_by, reissued_day"
	selectLoads = "SELECT " + loadColumns + " FROM loads"
	// selectWithOwners reads them as [scanWithOwners] does.
	selectWithOwners = "SELECT " + loadColumns + ", (SELECT coalesce(json_agg(grower ORDER BY place), '[]') FROM owners WHERE load = loads.id)::text FROM loads"
)

// loadRecord is a load's row by column, as append takes it.
func loadRecord(r book.LoadRow) (map[string]any, error) {
	figures, err := book.EncodeFigures(r)
	if err != nil {
		return nil, err
	}
	disposition, err := book.EncodeDisposition(r)
	if err != nil {
		return nil, err
	}
	values := []any{
		r.ID, r.Phase, r.Direction, r.Day, r.OpenedAt, r.Commodity, r.Grower, r.GrowerName, r.Truck, r.Bin,
		disposition, r.Contract, orNull(r.Ticket), r.IssuedAt, r.IssuedDay, r.EndedAt, r.EndedDay, orNull(r.EndedBy), orNull(r.Corrects), r.Reason, r.Who,
		r.Manual, r.Accepted, r.Flags, r.Sample, r.Kept, r.KeepUntil, r.Edition, r.EditionHash, figures, r.Weigher, orNull(r.Reissues), orNull(r.ReissuedBy), r.ReissuedDay,
	}
	out := map[string]any{}
	for i, column := range strings.Split(loadColumns, ", ") {
		out[column] = values[i]
	}
	return out, nil
}

func orNull(n int64) any {
	if n == 0 {
		return nil
	}
	return n
}

func orZero(n *int64) int64 {
	if n == nil {
		return 0
	}
	return *n
}

func scanRow(row pgx.Row) (book.LoadRow, error) { return scanLoad(row) }

// scanLoad reads loadColumns, and any further columns into more.
func scanLoad(row pgx.Row, more ...any) (r book.LoadRow, err error) {
	var ticket, endedBy, corrects, reissues, reissuedBy *int64
	var figures, disposition string
	err = row.Scan(append([]any{
		&r.ID, &r.Phase, &r.Direction, &r.Day, &r.OpenedAt, &r.Commodity, &r.Grower, &r.GrowerName, &r.Truck, &r.Bin,
		&disposition, &r.Contract, &ticket, &r.IssuedAt, &r.IssuedDay, &r.EndedAt, &r.EndedDay, &endedBy, &corrects, &r.Reason, &r.Who,
		&r.Manual, &r.Accepted, &r.Flags, &r.Sample, &r.Kept, &r.KeepUntil, &r.Edition, &r.EditionHash, &figures, &r.Weigher, &reissues, &reissuedBy, &r.ReissuedDay,
	}, more...)...)
	if err != nil {
		return r, err
	}
	r.Ticket, r.EndedBy, r.Corrects = orZero(ticket), orZero(endedBy), orZero(corrects)
	r.Reissues, r.ReissuedBy = orZero(reissues), orZero(reissuedBy)
	if err := book.DecodeDisposition(&r, disposition); err != nil {
		return r, err
	}
	return r, book.DecodeFigures(&r, figures)
}

// A loadReader reads the lists of loads, their owners and their samples.
type loadReader struct{ reader }

// Loads lists loads.
func (r loadReader) Loads(ctx context.Context, f book.LoadFilter) ([]book.LoadRow, error) {
	return loads(r.during(ctx), f)
}

func loads(s source, f book.LoadFilter) ([]book.LoadRow, error) {
	w := loadsWhere(f)
	order := " ORDER BY ticket NULLS FIRST, id"
	if f.Newest {
		order = " ORDER BY ticket DESC NULLS LAST, id DESC"
	}
	if f.Limit > 0 {
		order += fmt.Sprintf(" LIMIT %d", f.Limit)
	}
	if f.WithOwners {
		return list(s, scanWithOwners, selectWithOwners+w.String()+order, w.args...)
	}
	return list(s, scanRow, selectLoads+w.String()+order, w.args...)
}

// loadsWhere is the filter as SQL; [book.LoadFilter.Fits] is the same in Go.
func loadsWhere(f book.LoadFilter) *where {
	w := &where{}
	w.text("id", f.ID)
	w.text("issued_day", f.IssuedDay)
	w.text("ended_day", f.EndedDay)
	w.text("commodity", f.Commodity)
	w.text("truck", f.Truck)
	w.text("bin", f.Bin)
	w.text("sample", f.Sample)
	if len(f.Phases) > 0 {
		w.add("phase = ANY (?)", f.Phases)
	}
	if f.Undecided {
		w.add(`phase = 'issued' AND (disposition = '' OR starts_with(disposition, '{"load":""') OR position('"owners"' IN disposition) > 0)`)
	}
	if f.OnDay != "" {
		w.add("(issued_day = ? OR ended_day = ?)", f.OnDay, f.OnDay)
	}
	w.number("ticket", f.Ticket)
	w.number("corrects", f.Corrects)
	w.number("reissues", f.Reissues)
	if f.FromTicket != 0 {
		w.add("ticket >= ?", f.FromTicket)
	}
	if f.ToTicket != 0 {
		w.add("ticket <= ?", f.ToTicket)
	}
	w.from("issued_day", f.FromDay)
	w.to("issued_day", f.ToDay)
	w.from("ended_day", f.EndedFrom)
	w.to("ended_day", f.EndedTo)
	w.to("keep_until", f.KeptUntil)
	if f.Grower != "" {
		w.add("(grower = ? OR id IN (SELECT load FROM owners WHERE grower = ?))", f.Grower, f.Grower)
	}
	if f.Text != "" {
		like := part(f.Text)
		w.add("(grower_name ILIKE ? ESCAPE '!' OR truck ILIKE ? ESCAPE '!' OR commodity ILIKE ? ESCAPE '!' OR ticket::text = ?)", like, like, like, f.Text)
	}
	return w
}

// EachLoad reads every load with its owners, ordered by the bytes of their ids. A row that cannot be
// read is yielded as its id and an error, and reading continues.
func (r loadReader) EachLoad(ctx context.Context) iter.Seq2[book.LoadRow, error] {
	return eachLoad(r.during(ctx))
}

func eachLoad(s source) iter.Seq2[book.LoadRow, error] {
	return walk(s, scanWithOwners, selectWithOwners+" ORDER BY id")
}

func scanWithOwners(row pgx.Row) (book.LoadRow, error) {
	var owners string
	r, err := scanLoad(row, &owners)
	if err == nil && owners != "[]" {
		err = json.Unmarshal([]byte(owners), &r.Owners)
	}
	return r, err
}

// LoadIDs are the ids of all loads in the lists, in order.
func (r loadReader) LoadIDs(ctx context.Context) ([]string, error) {
	return list(r.during(ctx), scanText, "SELECT id FROM loads ORDER BY id")
}

// OwnersFor returns the owners of every shared load that a grower brought or has a share in, by
// load, in the order of the ticket.
func (r loadReader) OwnersFor(ctx context.Context, grower string) (map[string][]string, error) {
	out := map[string][]string{}
	err := r.during(ctx).each(func(rows pgx.Rows) error {
		var load, owner string
		err := rows.Scan(&load, &owner)
		out[load] = append(out[load], owner)
		return err
	}, `SELECT load, grower FROM owners
		WHERE load IN (SELECT load FROM owners WHERE grower = $1 UNION SELECT id FROM loads WHERE grower = $1)
		ORDER BY load, place`, grower)
	return out, err
}

// Owners are the growers who share in a load, in their order.
func (r loadReader) Owners(ctx context.Context, load string) ([]string, error) {
	return list(r.during(ctx), scanText, "SELECT grower FROM owners WHERE load = $1 ORDER BY place", load)
}

// Ownerships are the ids of all loads that have owners in the lists.
func (r loadReader) Ownerships(ctx context.Context) ([]string, error) {
	return list(r.during(ctx), scanText, "SELECT DISTINCT load FROM owners ORDER BY load")
}

// LastTicketBefore is the last ticket number of the last business day before a day; 0 when there is
// none.
func (r loadReader) LastTicketBefore(ctx context.Context, day string) (int64, error) {
	return lastTicketBefore(r.during(ctx), day)
}

func lastTicketBefore(s source, day string) (int64, error) {
	n, _, err := one(s, scanNumber, "SELECT ticket FROM loads WHERE issued_day < $1 AND issued_day > '' ORDER BY issued_day DESC, ticket DESC NULLS LAST LIMIT 1", day)
	return n, err
}
