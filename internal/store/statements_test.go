package store

import (
	"fmt"
	"testing"
)

func TestStatementsStayPrepared(t *testing.T) {
	b := newBook(t)
	for i := range 2 {
		write(t, b, func(tx *Tx) error {
			if _, ok := b.stmts.ready[advanceSeries]; ok != (i > 0) {
				t.Errorf("write %d: ready is %t", i+1, ok)
			}
			_, err := tx.NextNumber("ticket")
			return err
		})
	}
	// What fails to be prepared is told where it is used, every time.
	for range 3 {
		err := b.Write(ctx, func(tx *Tx) error {
			_, err := tx.Exec("INSERT INTO later VALUES ('x')")
			return err
		})
		wantError(t, err, "no such table: later")
	}
	// And once it can be, it is.
	write(t, b, func(tx *Tx) error {
		_, err := tx.Exec("CREATE TABLE later (x TEXT) STRICT")
		return err
	})
	for range 3 {
		write(t, b, func(tx *Tx) error {
			_, err := tx.Exec("INSERT INTO later VALUES ('x')")
			return err
		})
	}
	if rows, err := b.texts(ctx, "SELECT x FROM later"); err != nil || len(rows) != 3 {
		t.Errorf("%q, %v", rows, err)
	}
}

func TestStatementsDoNotPileUp(t *testing.T) {
	b := newBook(t)
	for i := range 3 * mostStatements {
		write(t, b, func(tx *Tx) error {
			var number int64
			err := tx.QueryRow(fmt.Sprintf("SELECT %d", i)).Scan(&number)
			if number != int64(i) {
				t.Errorf("got %d, want %d", number, i)
			}
			return err
		})
	}
	if kept := len(b.stmts.ready) + len(b.stmts.noted); kept > mostStatements {
		t.Errorf("%d statements are kept", kept)
	}
}
