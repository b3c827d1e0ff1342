// Package sqlitetest looks at and writes in the file of a book past the program, for tests: as anyone
// could with another program.
package sqlitetest

import (
	"database/sql"
	"fmt"
	"strings"
	"testing"
)

// Open opens the file as SQL sees it.
func Open(t testing.TB, path string) *sql.DB {
	t.Helper()
	db, err := sql.Open("sqlite", path)
	must(t, err)
	t.Cleanup(func() { _ = db.Close() })
	return db
}

// Contents is everything that a book holds and checks look at, as text.
func Contents(t testing.TB, path string) string {
	t.Helper()
	db := Open(t, path)
	var b strings.Builder
	for _, table := range []string{"facts", "editions", "series", "loads", "owners", "standing", "stock", "owned", "bin_days"} {
		rows, err := db.Query("SELECT * FROM " + table + " ORDER BY 1, 2")
		must(t, err)
		columns, err := rows.Columns()
		must(t, err)
		for rows.Next() {
			cells, into := make([]any, len(columns)), make([]any, len(columns))
			for i := range cells {
				into[i] = &cells[i]
			}
			must(t, rows.Scan(into...))
			fmt.Fprintf(&b, "%s %q\n", table, cells)
		}
		must(t, rows.Err())
		must(t, rows.Close())
	}
	must(t, db.Close())
	return b.String()
}

// Unguarded writes in the book past its triggers, as somebody with another
// program might.
func Unguarded(t testing.TB, path string, statements ...string) {
	t.Helper()
	db := Open(t, path)
	rows, err := db.Query("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")
	must(t, err)
	guards := map[string]string{}
	for rows.Next() {
		var name, text string
		must(t, rows.Scan(&name, &text))
		guards[name] = text
	}
	must(t, rows.Close())
	var all []string
	for name := range guards {
		all = append(all, "DROP TRIGGER "+name)
	}
	all = append(all, statements...)
	for _, text := range guards {
		all = append(all, text)
	}
	for _, statement := range all {
		result, err := db.Exec(statement)
		if err != nil {
			t.Fatalf("%s: %v", statement, err)
		}
		if n, _ := result.RowsAffected(); n == 0 && strings.HasPrefix(statement, "UPDATE") {
			t.Fatalf("%s: changed nothing", statement)
		}
	}
	must(t, db.Close())
}

// Quoted doubles the quotes of a text of SQL.
func Quoted(text string) string { return strings.ReplaceAll(text, "'", "''") }

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}
