package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite/access"
	"tenthpoint/internal/book/sqlite/filecopy"
	"tenthpoint/internal/book/steps"
	"tenthpoint/internal/message"
	"tenthpoint/migrations"
)

// createHistory makes the table in which a book remembers its migrations.
const createHistory = `
CREATE TABLE IF NOT EXISTS migrations (
    number INTEGER PRIMARY KEY,
    name   TEXT NOT NULL,
    sha256 TEXT NOT NULL
) STRICT;`

// history returns the migrations applied to the book, in order.
func history(q interface {
	QueryContext(context.Context, string, ...any) (*sql.Rows, error)
}) ([]steps.Step, error) {
	rows, err := q.QueryContext(context.Background(), selectHistory)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var past []steps.Step
	for rows.Next() {
		step, err := scanStep(rows)
		if err != nil {
			return nil, err
		}
		past = append(past, step)
	}
	return past, rows.Err()
}

const selectHistory = "SELECT number, name, sha256 FROM migrations ORDER BY number"

func scanStep(rows *sql.Rows) (s steps.Step, err error) {
	err = rows.Scan(&s.Number, &s.Name, &s.SHA256)
	return s, err
}

// neededFor is the last step without which a book cannot be read for what is asked.
func neededFor(o book.Options) int64 {
	if o.Bins {
		return max(migrations.NeededToRead, migrations.Bins)
	}
	return migrations.NeededToRead
}

// refuseOld accepts an older book only if it can be read without migrating.
func (f *file) refuseOld(db *sql.DB, known []steps.Step, needed int64) error {
	past, err := history(db)
	if err != nil {
		return err
	}
	due, err := steps.Due(f.path, past, known)
	if err == nil && len(due) > 0 && due[0].Number <= needed {
		return message.Storage.Errorf("The book %s is older than this program and is open for reading only. "+
			"Open it once for writing; it is then brought up to date: %w", f.path, book.ErrOld)
	}
	return err
}

// migrate takes the book through the steps it has not been through. A book
// with a past is copied first.
func (f *file) migrate(conn *sql.Conn, known []steps.Step) error {
	past, err := history(conn)
	if err != nil {
		return err
	}
	due, err := steps.Due(f.path, past, known)
	if err != nil || len(due) == 0 {
		return err
	}
	if len(past) > 0 {
		if err := f.copyBefore(due[0]); err != nil {
			return err
		}
	}
	for more := true; more && err == nil; {
		more, err = f.takeStep(conn, known)
	}
	return err
}

// takeStep goes through the next step, in one transaction with the note that
// it was taken. What is next is looked up in that transaction, because another
// program may be bringing the same book up to date.
func (f *file) takeStep(conn *sql.Conn, known []steps.Step) (more bool, err error) {
	tx, err := conn.BeginTx(context.Background(), nil)
	if err != nil {
		return false, err
	}
	defer tx.Rollback() // nothing after a commit
	past, err := history(tx)
	if err != nil {
		return false, err
	}
	due, err := steps.Due(f.path, past, known)
	if err != nil || len(due) == 0 {
		return false, err
	}
	step := due[0]
	if _, err := tx.Exec(step.Text); err != nil {
		return false, message.Storage.Errorf("The migration %s failed and the book %s stays as it was: %w", step.Name, f.path, err)
	}
	if fill, ok := fills[step.Name]; ok {
		if err := fill(f, tx); err != nil {
			return false, message.Storage.Errorf("The migration %s failed and the book %s stays as it was: %w", step.Name, f.path, err)
		}
	}
	_, err = tx.Exec("INSERT INTO migrations (number, name, sha256) VALUES (?, ?, ?)",
		step.Number, step.Name, step.SHA256)
	if err != nil {
		return false, err
	}
	return len(due) > 1, tx.Commit()
}

// copyBefore keeps the book as it was before a migration, beside it. A name
// already taken belongs to an earlier attempt, or to another program that does
// the same just now, and is kept as well.
func (f *file) copyBefore(step steps.Step) error {
	target := fmt.Sprintf("%s.before-%04d", f.path, step.Number)
	var already filecopy.Exists
	from, err := access.Connect(f.path, access.Probe(f.busy), 1)
	if err != nil {
		return err
	}
	defer from.Close()
	err = filecopy.Make(context.Background(), from, target, func(string) error { return nil })
	for n := 2; errors.As(err, &already); n++ {
		next := fmt.Sprintf("%s-%d", target, n)
		err = filecopy.Make(context.Background(), from, next, func(string) error { return nil })
	}
	if err != nil {
		return message.Errorf("The book %s was not brought up to date, because it could not be copied first: %w", f.path, err)
	}
	return nil
}
