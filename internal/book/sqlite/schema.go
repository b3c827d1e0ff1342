package sqlite

import (
	"context"
	"database/sql"
	"strings"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/steps"
	"tenthpoint/internal/message"
	"tenthpoint/migrations"
)

const selectSchema = "SELECT type, name, coalesce(sql, '') FROM sqlite_schema ORDER BY type, name"

// scanPart reads a table, index, trigger or view as SQLite keeps it: its SQL, spaces set alike; none
// for an index SQLite made itself.
func scanPart(rows *sql.Rows) (p book.Part, err error) {
	err = rows.Scan(&p.Kind, &p.Name, &p.Text)
	p.Text = strings.Join(strings.Fields(p.Text), " ")
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
	return book.CompareParts(want, is), err
}

// schemaAfter returns the schema that migrations produce in an empty database.
func schemaAfter(ctx context.Context, steps []steps.Step) ([]book.Part, error) {
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
