package sqlite

import (
	"context"
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"io/fs"
	"regexp"
	"strconv"

	"tenthpoint/internal/book"
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

// A migration is one step in building the tables.
type migration struct {
	number int64
	name   string // the file's name
	sha256 string // of the file's text
	text   string
}

var migrationName = regexp.MustCompile(`^([0-9]{4})_[a-z0-9_]+\.sql$`)

// readMigrations reads all steps and requires that they are numbered 1, 2, 3
// and so on.
func readMigrations(steps fs.FS) ([]migration, error) {
	names, err := fs.Glob(steps, "*.sql") // in order of their names
	if err != nil {
		return nil, err
	}
	var known []migration
	for i, name := range names {
		parts := migrationName.FindStringSubmatch(name)
		if parts == nil {
			return nil, message.Storage.Errorf("The migration %s is not named NNNN_what.sql.", name)
		}
		number, err := strconv.ParseInt(parts[1], 10, 64)
		if err != nil || number != int64(i+1) {
			return nil, message.Storage.Errorf("The migration %s stands where number %04d is due.", name, i+1)
		}
		text, err := fs.ReadFile(steps, name)
		if err != nil {
			return nil, err
		}
		sum := sha256.Sum256(text)
		known = append(known, migration{number, name, hex.EncodeToString(sum[:]), string(text)})
	}
	return known, nil
}

// history returns the migrations applied to the book, in order.
func history(q interface {
	QueryContext(context.Context, string, ...any) (*sql.Rows, error)
}) ([]migration, error) {
	rows, err := q.QueryContext(context.Background(), selectHistory)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var past []migration
	for rows.Next() {
		m, err := scanMigration(rows)
		if err != nil {
			return nil, err
		}
		past = append(past, m)
	}
	return past, rows.Err()
}

const selectHistory = "SELECT number, name, sha256 FROM migrations ORDER BY number"

func scanMigration(rows *sql.Rows) (m migration, err error) {
	err = rows.Scan(&m.number, &m.name, &m.sha256)
	return m, err
}

// pending compares the book's past with what this program knows and returns
// the steps still to do.
func pending(path string, past, known []migration) ([]migration, error) {
	if len(past) > len(known) {
		return nil, message.Storage.Errorf(
			"The book %s belongs to a newer program: it went through %s, this program knows %d migrations. Use the newer program.",
			path, past[len(past)-1].name, len(known))
	}
	for i, done := range past {
		ours := known[i]
		if done.number != ours.number || done.name != ours.name || done.sha256 != ours.sha256 {
			return nil, message.Storage.Errorf(
				"The book %s has another history than this program: its migration %d is %s (%.12s), here it is %s (%.12s). "+
					"Nothing was touched. Use the program that wrote the book, or a backup.",
				path, done.number, done.name, done.sha256, ours.name, ours.sha256)
		}
	}
	return known[len(past):], nil
}

// neededFor is the last step without which a book cannot be read for what is asked.
func neededFor(o book.Options) int64 {
	if o.Bins {
		return max(migrations.NeededToRead, migrations.Bins)
	}
	return migrations.NeededToRead
}

// refuseOld accepts an older book only if it can be read without migrating.
func (f *file) refuseOld(db *sql.DB, known []migration, needed int64) error {
	past, err := history(db)
	if err != nil {
		return err
	}
	due, err := pending(f.path, past, known)
	if err == nil && len(due) > 0 && due[0].number <= needed {
		return message.Storage.Errorf("The book %s is older than this program and is open for reading only. "+
			"Open it once for writing; it is then brought up to date: %w", f.path, book.ErrOld)
	}
	return err
}

// migrate takes the book through the steps it has not been through. A book
// with a past is copied first.
func (f *file) migrate(conn *sql.Conn, known []migration) error {
	past, err := history(conn)
	if err != nil {
		return err
	}
	due, err := pending(f.path, past, known)
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
func (f *file) takeStep(conn *sql.Conn, known []migration) (more bool, err error) {
	tx, err := conn.BeginTx(context.Background(), nil)
	if err != nil {
		return false, err
	}
	defer tx.Rollback() // nothing after a commit
	past, err := history(tx)
	if err != nil {
		return false, err
	}
	due, err := pending(f.path, past, known)
	if err != nil || len(due) == 0 {
		return false, err
	}
	step := due[0]
	if _, err := tx.Exec(step.text); err != nil {
		return false, message.Errorf("The migration %s failed and the book %s stays as it was: %w", step.name, f.path, err)
	}
	if fill, ok := fills[step.name]; ok {
		if err := fill(f, tx); err != nil {
			return false, message.Errorf("The migration %s failed and the book %s stays as it was: %w", step.name, f.path, err)
		}
	}
	_, err = tx.Exec("INSERT INTO migrations (number, name, sha256) VALUES (?, ?, ?)",
		step.number, step.name, step.sha256)
	if err != nil {
		return false, err
	}
	return len(due) > 1, tx.Commit()
}
