package housetest

import (
	"database/sql"
	"strings"
	"testing"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/scalehouse"
)

// Raw is the book's file as SQL sees it, beside the program.
func Raw(t testing.TB, path string) *sql.DB {
	t.Helper()
	db, err := sql.Open("sqlite", path)
	Must(t, err)
	t.Cleanup(func() { _ = db.Close() })
	return db
}

// Unguarded writes in the book past its triggers, as somebody with another
// program might.
func Unguarded(t testing.TB, path string, statements ...string) {
	t.Helper()
	db, err := sql.Open("sqlite", "file:"+path)
	Must(t, err)
	defer db.Close()
	rows, err := db.Query("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")
	Must(t, err)
	guards := map[string]string{}
	for rows.Next() {
		var name, text string
		Must(t, rows.Scan(&name, &text))
		guards[name] = text
	}
	Must(t, rows.Close())
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
}

// Quoted doubles the quotes of a text of SQL.
func Quoted(text string) string { return strings.ReplaceAll(text, "'", "''") }

// WantNamed wants a check to name each of these.
func WantNamed(t *testing.T, d *scalehouse.Desk, want ...string) {
	t.Helper()
	sound, err := audit.Verify(ctx, d, d.Book(), nil)
	Must(t, err)
	all := strings.Join(sound.Problems, "\n")
	for _, w := range want {
		if !strings.Contains(all, w) {
			t.Errorf("not named: %s\nnamed:\n%s", w, all)
		}
	}
}

// Noted is the end of the chain, as somebody would note it.
func (s *Scene) Noted() journal.Head {
	s.T.Helper()
	last, _, err := s.Store.Head(ctx)
	Must(s.T, err)
	return journal.HeadOf(last)
}
