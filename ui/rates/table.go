package rates

import (
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Table is the result of a load under an edition, with the full text of each row where its cells
// are short of room.
type Table struct {
	Columns []model.Column
	Rows    []model.Row
	load    string            // which load that is, in words
	says    string            // shown while no row has more
	said    map[string]string // the full text of a row, by its key
}

// Said returns the description of a row, or for an unknown key that of the load and the whole
// table.
func (t *Table) Said(key string) string {
	return session.Join("\n", t.load, session.OrElse(t.said[key], t.says))
}
