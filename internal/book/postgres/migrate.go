package postgres

import (
	"context"
	"errors"
	"io/fs"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/steps"
	"tenthpoint/internal/message"
)

// createHistory makes the table in which a book remembers the steps its tables went through.
const createHistory = `CREATE TABLE IF NOT EXISTS migrations (
    number bigint PRIMARY KEY,
    name   text NOT NULL,
    sha256 text NOT NULL
)`

// migrate takes the book through the steps it has not been through.
func (b *Book) migrate(ctx context.Context, conn *pgx.Conn, o book.Options, files fs.FS) error {
	known, err := steps.Read(files)
	if err != nil {
		return err
	}
	past, there, err := history(ctx, conn)
	if err != nil {
		return err
	}
	if !there {
		if !o.Create || o.ReadOnly {
			return message.NotFound.Errorf("there is no book in the schema %s of the database %q. Check the address, or create a book there", b.line.address.schema, b.line.address.name)
		}
		if err := b.begin(ctx, conn); err != nil {
			return err
		}
	}
	due, err := steps.Due(b.Path(), past, known)
	if err != nil || len(due) == 0 {
		return err
	}
	if o.ReadOnly {
		return message.Storage.Errorf("the book %s is older than this program and is open for reading only. Whoever owns it opens it once for writing; it is then brought up to date: %w", b.Path(), book.ErrOld)
	}
	for more := true; more && err == nil; {
		more, err = b.takeStep(ctx, conn, known)
	}
	if code(err) == noRights {
		return message.Storage.Errorf("the book %s is older than this program, and only who owns it may bring it up to date. Have it opened once by that user: %w", b.Path(), err)
	}
	return err
}

// begin makes the place of a new book.
func (b *Book) begin(ctx context.Context, conn *pgx.Conn) error {
	a := b.line.address
	_, err := conn.Exec(ctx, "CREATE SCHEMA IF NOT EXISTS "+a.schema)
	if code(err) == noRights {
		return message.Storage.Errorf("you may not make a book in the database %q. Have it allowed: GRANT CREATE ON DATABASE %s TO your user: %w", a.name, a.name, err)
	}
	if err != nil {
		return err
	}
	var others int
	if err := conn.QueryRow(ctx, "SELECT count(*) FROM pg_class WHERE relnamespace = current_schema()::regnamespace").Scan(&others); err != nil {
		return err
	}
	if others > 0 {
		return message.Storage.Errorf("the schema %s of the database %q holds tables, but no book. Nothing in it was touched; name another with ?schema=", a.schema, a.name)
	}
	_, err = conn.Exec(ctx, createHistory)
	return err
}

// history is the steps that the book went through; there is false where there is no book.
func history(ctx context.Context, q querier) (past []steps.Step, there bool, err error) {
	rows, err := q.Query(ctx, "SELECT number, name, sha256 FROM migrations ORDER BY number")
	if err == nil {
		past, err = pgx.CollectRows(rows, func(row pgx.CollectableRow) (s steps.Step, err error) {
			err = row.Scan(&s.Number, &s.Name, &s.SHA256)
			return s, err
		})
	}
	if code(err) == noSuchTable {
		return nil, false, nil
	}
	return past, err == nil, err
}

// takeStep goes through the next step, in one transaction with the note that it was taken. What is
// next is looked up in that transaction, because another desk may be doing the same.
func (b *Book) takeStep(ctx context.Context, conn *pgx.Conn, known []steps.Step) (more bool, err error) {
	err = pgx.BeginFunc(ctx, conn, func(tx pgx.Tx) error {
		if _, err := tx.Exec(ctx, "LOCK TABLE migrations IN EXCLUSIVE MODE"); err != nil {
			return err
		}
		past, _, err := history(ctx, tx)
		if err != nil {
			return err
		}
		due, err := steps.Due(b.Path(), past, known)
		if err != nil || len(due) == 0 {
			return err
		}
		if _, err := tx.Exec(ctx, due[0].Text); err != nil {
			return message.Storage.Errorf("The migration %s failed and the book %s stays as it was: %w", due[0].Name, b.Path(), err)
		}
		more = len(due) > 1
		_, err = tx.Exec(ctx, "INSERT INTO migrations VALUES ($1, $2, $3)", due[0].Number, due[0].Name, due[0].SHA256)
		return err
	})
	return more, err
}

// code is the server's word for what went wrong; empty where it said nothing.
func code(err error) string {
	var said *pgconn.PgError
	if errors.As(err, &said) {
		return said.Code
	}
	return ""
}
