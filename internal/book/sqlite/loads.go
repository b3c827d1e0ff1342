package sqlite

import (
	"context"
	"database/sql"
	"encoding/json"
	"fmt"
	"iter"
	"strings"

	"tenthpoint/internal/book"
)

const loadColumns = "id, phase, direction, day, opened_at, commodity, grower, grower_name, truck, bin, " +
	"disposition, contract, ticket, issued_at, issued_day, ended_at, ended_day, ended_by, corrects, " +
	"reason, who, manual, accepted, flags, sample, kept, keep_until, edition, edition_hash, figures, weigher, " +
	"reissues, reissued_by, reissued_day"

// putLoad is an upsert that keeps a row in place, so that only the indexes of changed columns are
// written.
var putLoad = "INSERT INTO loads (" + loadColumns + ") VALUES (" + marks(1+strings.Count(loadColumns, ",")) + ") ON CONFLICT (id) DO UPDATE SET " + replacedColumns()

func replacedColumns() string {
	var sets []string
	for _, column := range strings.Split(loadColumns, ", ")[1:] {
		sets = append(sets, column+" = excluded."+column)
	}
	return strings.Join(sets, ", ")
}

// PutLoad writes a load's row, in place of the one before.
func (tx *Tx) PutLoad(r book.LoadRow) error {
	figures, err := book.EncodeFigures(r)
	if err != nil {
		return tx.fail(err)
	}
	disposition, err := book.EncodeDisposition(r)
	if err != nil {
		return tx.fail(err)
	}
	if err := moveGrain(tx, r); err != nil {
		return err
	}
	_, err = tx.exec(putLoad, r.ID, r.Phase, r.Direction, r.Day, r.OpenedAt, r.Commodity, r.Grower,
		r.GrowerName, r.Truck, r.Bin, disposition, r.Contract, orNull(r.Ticket), r.IssuedAt, r.IssuedDay,
		r.EndedAt, r.EndedDay, orNull(r.EndedBy), orNull(r.Corrects), r.Reason, r.Who, r.Manual, r.Accepted,
		r.Flags, r.Sample, r.Kept, r.KeepUntil, r.Edition, r.EditionHash, figures, r.Weigher,
		orNull(r.Reissues), orNull(r.ReissuedBy), r.ReissuedDay)
	if err != nil {
		return err
	}
	if _, err := tx.exec("DELETE FROM owners WHERE load = ?", r.ID); err != nil {
		return err
	}
	for i, owner := range r.Owners {
		if _, err := tx.exec("INSERT INTO owners (load, place, grower) VALUES (?, ?, ?)", r.ID, i+1, owner); err != nil {
			return err
		}
	}
	return nil
}

func orNull(n int64) any {
	if n == 0 {
		return nil
	}
	return n
}

// A loadReader reads the lists of loads, their owners and their samples.
type loadReader struct{ reader }

// Loads lists loads.
func (r loadReader) Loads(ctx context.Context, f book.LoadFilter) ([]book.LoadRow, error) {
	return loads(r.during(ctx), f)
}

// EachLoad reads every load of the read model with its owners, ordered by the bytes of their ids. A
// row that cannot be read is yielded as its id and an error, and reading continues.
func (r loadReader) EachLoad(ctx context.Context) iter.Seq2[book.LoadRow, error] {
	return func(yield func(book.LoadRow, error) bool) {
		from := r.during(ctx)
		rows, err := from.query("SELECT " + loadColumns + ", " + ownersAsJSON + " FROM loads ORDER BY id")
		if err != nil {
			yield(book.LoadRow{}, err)
			return
		}
		defer rows.Close()
		for rows.Next() {
			if !yield(scanWithOwners(rows)) {
				return
			}
		}
		if err := rows.Err(); err != nil {
			yield(book.LoadRow{}, from.fail(err))
		}
	}
}

const ownersAsJSON = "(SELECT json_group_array(grower ORDER BY place) FROM owners WHERE load = loads.id)"

// LoadIDs are the ids of all loads in the lists, in order.
func (r loadReader) LoadIDs(ctx context.Context) ([]string, error) {
	return list(r.during(ctx), scanText, "SELECT id FROM loads ORDER BY id")
}

// Loads is [Book.Loads] as the write has left it so far.
func (tx *Tx) Loads(f book.LoadFilter) ([]book.LoadRow, error) {
	return loads(tx, f)
}

// loads lists loads, with their owners where these are asked for.
func loads(from source, f book.LoadFilter) ([]book.LoadRow, error) {
	query, args := loadQuery(f)
	if f.WithOwners {
		return list(from, scanWithOwners, query, args...)
	}
	return list(from, scanRow, query, args...)
}

func loadQuery(f book.LoadFilter) (string, []any) {
	var where []string
	var args []any
	restrict := func(condition string, arg ...any) {
		where, args = append(where, condition), append(args, arg...)
	}
	equal := func(column, value string) {
		if value != "" {
			restrict(column+" = ?", value)
		}
	}
	equal("id", f.ID)
	equal("issued_day", f.IssuedDay)
	equal("ended_day", f.EndedDay)
	equal("commodity", f.Commodity)
	equal("truck", f.Truck)
	equal("bin", f.Bin)
	equal("sample", f.Sample)
	if f.Undecided {
		restrict(undecided)
	}
	if len(f.Phases) > 0 {
		marks := strings.TrimSuffix(strings.Repeat("?, ", len(f.Phases)), ", ")
		phases := make([]any, len(f.Phases))
		for i, p := range f.Phases {
			phases[i] = p
		}
		column := "phase"
		if f.FromDay != "" || f.Bin != "" || f.Undecided {
			column = "+phase" // most loads have their ticket: what else is asked is the narrower index
		}
		restrict(column+" IN ("+marks+")", phases...)
	}
	if f.OnDay != "" {
		restrict("(issued_day = ? OR ended_day = ?)", f.OnDay, f.OnDay)
	}
	loadRanges(f, restrict)
	if f.Grower != "" {
		restrict("(grower = ? OR id IN (SELECT load FROM owners WHERE grower = ?))", f.Grower, f.Grower)
	}
	if f.Text != "" {
		like := "%" + likeWords.Replace(f.Text) + "%"
		restrict("(grower_name LIKE ? ESCAPE '!' OR truck LIKE ? ESCAPE '!' OR commodity LIKE ? ESCAPE '!' OR CAST(ticket AS TEXT) = ?)", like, like, like, f.Text)
	}
	return assembleQuery(f, where), args
}

func loadRanges(f book.LoadFilter, restrict func(string, ...any)) {
	number := func(column string, n int64) {
		if n != 0 {
			restrict(column+" = ?", n)
		}
	}
	number("ticket", f.Ticket)
	number("corrects", f.Corrects)
	number("reissues", f.Reissues)
	if f.FromTicket != 0 {
		restrict("ticket >= ?", f.FromTicket)
	}
	if f.ToTicket != 0 {
		restrict("ticket <= ?", f.ToTicket)
	}
	if f.FromDay != "" {
		restrict("issued_day >= ?", f.FromDay)
	}
	if f.ToDay != "" {
		restrict("issued_day <= ? AND issued_day <> ''", f.ToDay)
	}
	if f.EndedFrom != "" {
		restrict("ended_day >= ?", f.EndedFrom)
	}
	if f.EndedTo != "" {
		restrict("ended_day <= ? AND ended_day <> ''", f.EndedTo)
	}
	if f.KeptUntil != "" {
		restrict("keep_until <= ? AND keep_until <> ''", f.KeptUntil)
	}
}

// undecided is in the words of the index loads_undecided.
const undecided = `phase = 'issued' AND (disposition = '' OR substr(disposition, 1, 10) = '{"load":""' OR instr(disposition, '"owners"') > 0)`

func assembleQuery(f book.LoadFilter, where []string) string {
	columns := loadColumns
	if f.WithOwners {
		columns += ", " + ownersAsJSON
	}
	query := "SELECT " + columns + " FROM loads"
	if len(where) > 0 {
		query += " WHERE " + strings.Join(where, " AND ")
	}
	if f.Newest {
		query += " ORDER BY ticket DESC, id DESC"
	} else {
		query += " ORDER BY ticket, id"
	}
	if f.Limit > 0 {
		query += fmt.Sprintf(" LIMIT %d", f.Limit)
	}
	return query
}

// scanWithOwners reads loadColumns and ownersAsJSON.
func scanWithOwners(rows *sql.Rows) (book.LoadRow, error) {
	var owners string
	row, err := scanLoad(rows, &owners)
	if err == nil && owners != "[]" {
		err = json.Unmarshal([]byte(owners), &row.Owners)
	}
	return row, err
}

func scanRow(rows *sql.Rows) (book.LoadRow, error) { return scanLoad(rows) }

// scanLoad reads loadColumns, and any further columns into more.
func scanLoad(rows *sql.Rows, more ...any) (book.LoadRow, error) {
	var r book.LoadRow
	var ticket, endedBy, corrects, reissues, reissuedBy sql.NullInt64
	var figures, disposition string
	err := rows.Scan(append([]any{&r.ID, &r.Phase, &r.Direction, &r.Day, &r.OpenedAt, &r.Commodity, &r.Grower, &r.GrowerName,
		&r.Truck, &r.Bin, &disposition, &r.Contract, &ticket, &r.IssuedAt, &r.IssuedDay, &r.EndedAt,
		&r.EndedDay, &endedBy, &corrects, &r.Reason, &r.Who, &r.Manual, &r.Accepted, &r.Flags, &r.Sample,
		&r.Kept, &r.KeepUntil, &r.Edition, &r.EditionHash, &figures, &r.Weigher,
		&reissues, &reissuedBy, &r.ReissuedDay}, more...)...)
	if err != nil {
		return r, err
	}
	r.Ticket, r.EndedBy, r.Corrects = ticket.Int64, endedBy.Int64, corrects.Int64
	r.Reissues, r.ReissuedBy = reissues.Int64, reissuedBy.Int64
	if err := book.DecodeDisposition(&r, disposition); err != nil {
		return r, err
	}
	return r, book.DecodeFigures(&r, figures)
}

// OwnersFor returns the owners of every shared load that a grower brought or has a share in, by
// load, in the order of the ticket.
func (r loadReader) OwnersFor(ctx context.Context, grower string) (map[string][]string, error) {
	out := map[string][]string{}
	err := each(r.during(ctx), func(rows *sql.Rows) error {
		var load, owner string
		err := rows.Scan(&load, &owner)
		out[load] = append(out[load], owner)
		return err
	}, `SELECT load, grower FROM owners
		WHERE load IN (SELECT load FROM owners WHERE grower = ? UNION SELECT id FROM loads WHERE grower = ?)
		ORDER BY load, place`, grower, grower)
	return out, err
}

// Owners are the growers who share in a load, in their order.
func (r loadReader) Owners(ctx context.Context, load string) ([]string, error) {
	return list(r.during(ctx), scanText, "SELECT grower FROM owners WHERE load = ? ORDER BY place", load)
}

// Ownerships are the ids of all loads that have owners in the lists.
func (r loadReader) Ownerships(ctx context.Context) ([]string, error) {
	return list(r.during(ctx), scanText, "SELECT DISTINCT load FROM owners ORDER BY load")
}
