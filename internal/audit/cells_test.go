package audit_test

import (
	"database/sql"
	"fmt"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/book/sqlite/sqlitetest"
	"tenthpoint/internal/dispute"
	"tenthpoint/internal/message"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/disputes"
	"tenthpoint/internal/scalehouse/housetest"
)

// unchecked are the tables that no check looks at: what was typed and is no fact.
var unchecked = []string{"drafts"}

// everything is a book with rows in every table.
func everything(t *testing.T) *scene {
	s := housetest.Season(t)
	s.At("2026-10-02 08:00")
	id := s.Arrive(52000)
	s.Probe(id, "Shelf A1")
	_, err := disputes.Raise(ctx, s.Desk, dispute.Raised{Ticket: 4, By: "Ada Field", About: "moisture", Claim: "too high"})
	must(t, err)
	must(t, scalehouse.SaveDraft(s.Desk, scalehouse.DraftOfLoad, "", map[string]string{"grower": "Ada"}))
	s.Verify()
	return s
}

// The schema is walked: each column of each table is changed in some of its rows,
// and a check names it every time.
func TestEveryChangedCellIsFound(t *testing.T) {
	s := everything(t)
	db := sqlitetest.Open(t, s.Store.Path())
	for _, table := range names(t, db, "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'") {
		if slices.Contains(unchecked, table) {
			continue
		}
		rows := someRows(t, db, table)
		if len(rows) == 0 {
			t.Errorf("no row of %s is looked at", table)
		}
		for _, column := range names(t, db, "SELECT name FROM pragma_table_info('"+table+"')") {
			for _, row := range rows {
				changeCell(s, db, table, column, row)
			}
		}
	}
	s.Verify()
}

// changeCell changes a cell, wants a check to say so, and puts the cell back.
func changeCell(s *scene, db *sql.DB, table, column, row string) {
	s.T.Helper()
	var was any
	must(s.T, db.QueryRow(fmt.Sprintf("SELECT %s FROM %s WHERE %s", column, table, row)).Scan(&was))
	change, back := "'x'", "NULL"
	switch is := was.(type) {
	case string:
		change, back = "'"+sqlitetest.Quoted(is)+"x'", "'"+sqlitetest.Quoted(is)+"'"
	case int64:
		change, back = fmt.Sprint(is+1000), fmt.Sprint(is)
	case nil:
		change = "1000"
	}
	where := strings.ReplaceAll(row, column+" = "+back, column+" = "+change) // a key finds its row again
	sqlitetest.Unguarded(s.T, s.Store.Path(), fmt.Sprintf("UPDATE %s SET %s = %s WHERE %s", table, column, change, row))
	sound, err := audit.Verify(ctx, s.Desk, s.Store, nil)
	if err == nil && len(sound.Problems) == 0 {
		s.T.Errorf("%s of %s where %s: %v became %s, and the book is sound", column, table, row, was, change)
	}
	sqlitetest.Unguarded(s.T, s.Store.Path(), fmt.Sprintf("UPDATE %s SET %s = %s WHERE %s", table, column, back, where))
}

// someRows are conditions that each choose one row of a table by its key: every row
// of a small table, some of a large one.
func someRows(t *testing.T, db *sql.DB, table string) []string {
	t.Helper()
	var parts []string
	for _, key := range names(t, db, "SELECT name FROM pragma_table_info('"+table+"') WHERE pk > 0 ORDER BY pk") {
		parts = append(parts, "'"+key+" = ' || quote("+key+")")
	}
	all := names(t, db, "SELECT "+strings.Join(parts, " || ' AND ' || ")+" FROM "+table+" ORDER BY 1")
	if len(all) <= 3 {
		return all
	}
	return []string{all[0], all[len(all)/2], all[len(all)-1]}
}

func names(t *testing.T, db *sql.DB, query string) []string {
	t.Helper()
	rows, err := db.Query(query)
	must(t, err)
	defer rows.Close()
	var out []string
	for rows.Next() {
		var one string
		must(t, rows.Scan(&one))
		out = append(out, one)
	}
	must(t, rows.Err())
	return out
}

// Whatever is put beside the guards of a book, or in their place, is named.
func TestForeignSchemaIsNamed(t *testing.T) {
	for name, c := range map[string]struct{ statement, want string }{
		"a guard that guards nothing": {"DROP TRIGGER facts_never_go; CREATE TRIGGER facts_never_go BEFORE DELETE ON facts BEGIN SELECT 1; END", "facts_never_go is not the one"},
		"a trigger put in":            {"CREATE TRIGGER helpful AFTER INSERT ON loads BEGIN UPDATE loads SET bin = 'Pit 9' WHERE id = new.id; END", `trigger "helpful" does not belong`},
		"a table put in":              {"CREATE TABLE mine (a TEXT)", `table "mine" does not belong`},
		"a view put in":               {"CREATE VIEW mine AS SELECT * FROM facts", `view "mine" does not belong`},
		"an index dropped":            {"DROP INDEX loads_truck", "index loads_truck was removed"},
		"an index narrowed":           {"DROP INDEX loads_truck; CREATE INDEX loads_truck ON loads (truck)", "index loads_truck is not the one"},
		"a table rewritten":           {"PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = replace(sql, 'UNIQUE', '      ') WHERE name = 'loads'", "table loads is not the one"},
	} {
		t.Run(name, func(t *testing.T) {
			s := housetest.New(t)
			db := sqlitetest.Open(t, s.Store.Path())
			_, err := db.Exec(c.statement)
			must(t, err)
			problems, err := s.Store.VerifyFile(ctx)
			if all := message.Texts("\n", problems).String(); !strings.Contains(all, c.want) {
				t.Errorf("named: %s, %v", all, err)
			}
		})
	}
}
