package rates

import (
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Table lists what comes of a load under an edition, with what each row says in
// full where its cells are short of room.
type Table struct {
	Columns []model.Column
	Rows    []model.Row
	load    string            // which load that is, in words
	says    string            // said while no row says more
	said    map[string]string // what a row says, by its key
}

// Said is which load it is, and what the row of a key says; an unknown key has
// what is said of the whole table.
func (t *Table) Said(key string) string {
	return session.Join("\n", t.load, session.OrElse(t.said[key], t.says))
}
