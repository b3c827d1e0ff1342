package sqlite

import (
	"context"
	"errors"
	"fmt"
	"testing"
)

func TestStatementsStayPrepared(t *testing.T) {
	b := newBook(t)
	for i := range 2 {
		if _, ok := b.write.kept[advanceSeries]; ok != (i > 0) {
			t.Errorf("before write %d: prepared is %t", i+1, ok)
		}
		write(t, b, func(tx *Tx) error {
			_, err := tx.NextNumber("ticket")
			return err
		})
	}
	// What fails to be prepared is told where it is used, every time.
	for range 3 {
		err := b.inWrite(ctx, func(tx *Tx) error {
			_, err := tx.exec("INSERT INTO later VALUES ('x')")
			return err
		})
		wantError(t, err, "no such table: later")
	}
	// And once it can be, it is.
	write(t, b, func(tx *Tx) error {
		_, err := tx.exec("CREATE TABLE later (x TEXT) STRICT")
		return err
	})
	for range 3 {
		write(t, b, func(tx *Tx) error {
			_, err := tx.exec("INSERT INTO later VALUES ('x')")
			return err
		})
	}
	if rows, err := texts(ctx, b, "SELECT x FROM later"); err != nil || len(rows) != 3 {
		t.Errorf("%q, %v", rows, err)
	}
}

func TestStatementsDoNotPileUp(t *testing.T) {
	b := newBook(t)
	for i := range 3 * mostStatements {
		write(t, b, func(tx *Tx) error {
			var number int64
			err := tx.queryRow(fmt.Sprintf("SELECT %d", i)).Scan(&number)
			if number != int64(i) {
				t.Errorf("got %d, want %d", number, i)
			}
			return err
		})
	}
	if len(b.write.kept) > mostStatements || len(b.write.once) > 0 {
		t.Errorf("%d statements are kept, and %d of one write", len(b.write.kept), len(b.write.once))
	}
}

// Whoever gives up while another writes enters nothing, and the turn is not
// lost with him; nor is it when a write gives up half way, or falls over.
func TestTheTurnIsNotLost(t *testing.T) {
	b := newBook(t)
	waiting, giveUp := context.WithCancel(ctx)
	write(t, b, func(*Tx) error {
		giveUp()
		if err := b.inWrite(waiting, func(*Tx) error { return nil }); !errors.Is(err, context.Canceled) {
			t.Errorf("waiting in vain: %v", err)
		}
		return nil
	})
	if err := b.inWrite(waiting, func(*Tx) error { return nil }); !errors.Is(err, context.Canceled) {
		t.Errorf("given up before: %v", err)
	}
	half, stop := context.WithCancel(ctx)
	err := b.inWrite(half, func(tx *Tx) error {
		if _, err := tx.Append(draft(0)); err != nil {
			return err
		}
		stop()
		return nil
	})
	if !errors.Is(err, context.Canceled) {
		t.Errorf("given up half way: %v", err)
	}
	func() {
		defer func() { _ = recover() }()
		_ = b.inWrite(ctx, func(tx *Tx) error {
			_, _ = tx.Append(draft(0))
			panic("the act fell over")
		})
	}()
	wantSound(t, b, 0)
	appendTo(t, b, 1)
	wantSound(t, b, 1)
}
