package sqlite

import (
	"context"
	"database/sql"
)

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
