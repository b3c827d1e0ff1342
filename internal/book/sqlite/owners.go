package sqlite

import "context"

// OwnersFor are the owners of every shared load that a grower brought or has a
// share in, by load, in the order of the ticket.
func (b *Book) OwnersFor(ctx context.Context, grower string) (map[string][]string, error) {
	rows, err := b.read.QueryContext(ctx, `SELECT load, grower FROM owners
		WHERE load IN (SELECT load FROM owners WHERE grower = ? UNION SELECT id FROM loads WHERE grower = ?)
		ORDER BY load, place`, grower, grower)
	if err != nil {
		return nil, b.sentence(err)
	}
	defer rows.Close()
	out := map[string][]string{}
	for rows.Next() {
		var load, owner string
		if err := rows.Scan(&load, &owner); err != nil {
			return nil, b.sentence(err)
		}
		out[load] = append(out[load], owner)
	}
	return out, b.sentence(rows.Err())
}
