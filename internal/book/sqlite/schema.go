package sqlite

import (
	"context"
	"database/sql"
	"strings"

	"tenthpoint/internal/book/steps"
	"tenthpoint/internal/message"
	"tenthpoint/migrations"
)

// A schemaPart is a table, index, trigger or view of a book, as SQLite keeps it.
type schemaPart struct {
	kind, name, table string
	text              string // its SQL, spaces set alike; none for an index SQLite made itself
}

const selectSchema = "SELECT type, name, tbl_name, coalesce(sql, '') FROM sqlite_schema ORDER BY type, name"

func scanPart(rows *sql.Rows) (p schemaPart, err error) {
	err = rows.Scan(&p.kind, &p.name, &p.table, &p.text)
	p.text = strings.Join(strings.Fields(p.text), " ")
	return p, err
}

// verifySchema compares every table, index and trigger of the book by its text with the result of
// the book's migrations. Nothing may be missing, changed or added.
func verifySchema(ctx context.Context, from source) ([]message.Text, error) {
	known, err := steps.Read(migrations.Files)
	if err != nil {
		return nil, err
	}
	past, err := list(from, scanStep, selectHistory)
	if err != nil {
		return nil, err
	}
	if _, other := steps.Due("", past, known); other != nil {
		return []message.Text{message.New("The list of what the book went through was changed.")}, nil
	}
	want, err := schemaAfter(ctx, known[:len(past)])
	if err != nil {
		return nil, err
	}
	is, err := list(from, scanPart, selectSchema)
	return compareSchema(want, is), err
}

// schemaAfter returns the schema that migrations produce in an empty database.
func schemaAfter(ctx context.Context, steps []steps.Step) ([]schemaPart, error) {
	scratch, err := sql.Open("sqlite", ":memory:")
	if err != nil {
		return nil, err
	}
	defer scratch.Close()
	scratch.SetMaxOpenConns(1) // each connection would have a database of its own
	if _, err := scratch.ExecContext(ctx, createHistory); err != nil {
		return nil, err
	}
	for _, step := range steps {
		if _, err := scratch.ExecContext(ctx, step.Text); err != nil {
			return nil, err
		}
	}
	return list(inMemory{scratch, ctx}, scanPart, selectSchema)
}

// inMemory is a scratch database as a source of rows.
type inMemory struct {
	db  *sql.DB
	ctx context.Context
}

func (m inMemory) query(query string, args ...any) (*sql.Rows, error) {
	return m.db.QueryContext(m.ctx, query, args...)
}

func (m inMemory) fail(err error) error { return err }

// compareSchema lists what is missing, what differs, and what does not belong in a book.
func compareSchema(want, is []schemaPart) []message.Text {
	left := map[string]schemaPart{}
	for _, p := range is {
		left[p.key()] = p
	}
	var problems []message.Text
	for _, w := range want {
		p, there := left[w.key()]
		delete(left, w.key())
		switch {
		case !there:
			problems = append(problems, message.New("The %s %v was removed from the book; somebody meant to alter it.", w.kind, w.name))
		case p != w:
			problems = append(problems, message.New("The %s %v is not the one that the program made: it says %q.", w.kind, w.name, p.text))
		}
	}
	for _, p := range is {
		if _, foreign := left[p.key()]; foreign {
			problems = append(problems, message.New("The %s %q does not belong in a book; another program put it in.", p.kind, p.name))
		}
	}
	return problems
}

func (p schemaPart) key() string { return p.kind + " " + p.name }
