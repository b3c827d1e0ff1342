package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"slices"
	"sync"
	"testing"

	"tenthpoint/internal/digest"
	"tenthpoint/internal/journal"
)

// contents is everything a write can leave in a book, as text.
func contents(t testing.TB, b *Book) []string {
	t.Helper()
	all, err := texts(ctx, b, `
		SELECT 'fact ' || seq || ' ' || hash FROM facts UNION ALL
		SELECT 'series ' || name || ' ' || last FROM series UNION ALL
		SELECT 'edition ' || id || ' ' || sha256 FROM editions`)
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// everything uses each way of writing once.
func everything(tx *Tx, text string) error {
	_, err := tx.Append(draft(0))
	_, numberErr := tx.NextNumber("ticket")
	return errors.Join(err, numberErr, tx.KeepEdition("demo 2025", digest.Of(text), text))
}

func TestWriteKeepsEverythingOrNothing(t *testing.T) {
	b := newBook(t)
	write(t, b, func(tx *Tx) error { return everything(tx, "trigger = \"15.0\"") })
	before := contents(t, b)
	if len(before) != 3 {
		t.Fatalf("the write left %q", before)
	}

	changedMind := errors.New("changed my mind")
	cancelled, cancel := context.WithCancel(ctx)
	cases := map[string]struct {
		ctx  context.Context
		act  func(*Tx) error
		want error
	}{
		"an error at the end": {ctx, func(tx *Tx) error {
			return errors.Join(everything(tx, "other"), changedMind)
		}, changedMind},
		"cancelled on the way": {cancelled, func(tx *Tx) error {
			err := everything(tx, "other")
			cancel()
			return err
		}, context.Canceled},
		"cancelled before": {cancelled, func(tx *Tx) error {
			return everything(tx, "other")
		}, context.Canceled},
	}
	for _, name := range []string{"an error at the end", "cancelled on the way", "cancelled before"} {
		t.Run(name, func(t *testing.T) {
			c := cases[name]
			if err := b.inWrite(c.ctx, c.act); !errors.Is(err, c.want) {
				t.Errorf("got %v, want %v", err, c.want)
			}
			if after := contents(t, b); !slices.Equal(after, before) {
				t.Errorf("something was written: %q", after)
			}
		})
	}
	t.Run("a panic", func(t *testing.T) {
		func() {
			defer func() { _ = recover() }()
			_ = b.inWrite(ctx, func(tx *Tx) error {
				_ = everything(tx, "other")
				panic("a fault in a use case")
			})
		}()
		if after := contents(t, b); !slices.Equal(after, before) {
			t.Errorf("something was written: %q", after)
		}
	})
	// The book still works.
	write(t, b, func(tx *Tx) error { return everything(tx, "other") })
	if after := contents(t, b); len(after) != 5 {
		t.Errorf("then: %q", after)
	}
}

// A use case that overlooks an error must not leave half an act behind.
func TestWriteIsLostAfterAnyFailureInIt(t *testing.T) {
	failures := map[string]struct {
		fail func(*Tx) error
		want string
	}{
		"a bad draft": {func(tx *Tx) error {
			_, err := tx.Append(journal.Entry{})
			return err
		}, "This was not entered. A fact needs the person"},
		"a bad statement": {func(tx *Tx) error {
			_, err := tx.exec("INSERT INTO nowhere VALUES (1)")
			return err
		}, "no such table"},
		"a bad query": {func(tx *Tx) error {
			_, err := tx.query("SELECT x FROM nowhere")
			return err
		}, "no such table"},
		"a bad row": {func(tx *Tx) error {
			var number int64
			return tx.queryRow("SELECT 'x'").Scan(&number)
		}, "converting"},
		"a forbidden change": {func(tx *Tx) error {
			_, err := tx.exec("UPDATE facts SET who = 'B.'")
			return err
		}, "never changed"},
		"a wrong edition": {func(tx *Tx) error {
			return tx.KeepEdition("demo", digest.Of("a"), "b")
		}, "not kept"},
	}
	for name, c := range failures {
		t.Run(name, func(t *testing.T) {
			b := newBook(t)
			appendTo(t, b, 1)
			before := contents(t, b)
			var inside, later error
			err := b.inWrite(ctx, func(tx *Tx) error {
				inside = c.fail(tx)
				later = everything(tx, "text")
				return nil
			})
			wantError(t, inside, c.want)
			wantError(t, later, c.want)
			wantError(t, err, c.want)
			if after := contents(t, b); !slices.Equal(after, before) {
				t.Errorf("something was written: %q", after)
			}
		})
	}
}

func TestNoRowIsNoFailure(t *testing.T) {
	b := newBook(t)
	write(t, b, func(tx *Tx) error {
		var last int64
		if err := tx.queryRow("SELECT last FROM series WHERE name = ?", "ticket").Scan(&last); !errors.Is(err, sql.ErrNoRows) {
			return fmt.Errorf("got %w", err)
		}
		_, err := tx.NextNumber("ticket")
		return err
	})
}

func TestTxSeesItsOwnWrite(t *testing.T) {
	b := newBook(t)
	appendTo(t, b, 4)
	write(t, b, func(tx *Tx) error {
		appended, err := tx.Append(draft(4))
		if err != nil {
			return err
		}
		facts, err := tx.FactsOf("load 2")
		if err != nil || len(facts) != 2 || facts[1].Hash != appended.Hash || facts[1].Seq != 5 {
			t.Errorf("inside: %v, %v", facts, err)
		}
		outside, err := b.FactsOf(ctx, "load 2")
		if err != nil || len(outside) != 1 {
			t.Errorf("outside: %v, %v", outside, err)
		}
		return nil
	})
	if facts, err := b.FactsOf(ctx, "load 2"); err != nil || len(facts) != 2 {
		t.Errorf("afterwards: %v, %v", facts, err)
	}
}

func TestReadModelsAreWrittenWithTheirFacts(t *testing.T) {
	b := newBook(t)
	write(t, b, func(tx *Tx) error {
		_, err := tx.exec("CREATE TABLE yard (load TEXT PRIMARY KEY, grain TEXT NOT NULL) STRICT")
		return err
	})
	put := func(tx *Tx, load string) error {
		if _, err := tx.Append(draft(0)); err != nil {
			return err
		}
		_, err := tx.exec("INSERT INTO yard (load, grain) VALUES (?, ?)", load, "corn")
		return err
	}
	write(t, b, func(tx *Tx) error { return errors.Join(put(tx, "load 1"), put(tx, "load 2")) })
	wantError(t, b.inWrite(ctx, func(tx *Tx) error { return errors.Join(put(tx, "load 3"), put(tx, "load 1")) }), "UNIQUE")
	var loads int64
	if err := b.read.QueryRow("SELECT count(*) FROM yard").Scan(&loads); err != nil || loads != 2 {
		t.Errorf("%d loads on the yard, %v", loads, err)
	}
	wantSound(t, b, 2)
}

func TestNumbersAreUsedUpOnlyByAKeptWrite(t *testing.T) {
	b := newBook(t)
	next := func(series string, keep bool) (number int64) {
		err := b.inWrite(ctx, func(tx *Tx) (err error) {
			if number, err = tx.NextNumber(series); err == nil && !keep {
				err = errors.New("not kept")
			}
			return err
		})
		if (err == nil) != keep {
			t.Fatal(err)
		}
		return number
	}
	got := []int64{
		next("ticket", false), next("ticket", true), next("ticket", true), next("ticket", false),
		next("sample", true), next("ticket", true), next("sample", true),
	}
	if want := []int64{1, 1, 2, 3, 1, 3, 2}; !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
	write(t, b, func(tx *Tx) error {
		for want := int64(4); want < 8; want++ {
			if number, err := tx.NextNumber("ticket"); err != nil || number != want {
				t.Errorf("in one write: got %d, want %d (%v)", number, want, err)
			}
		}
		return nil
	})
}

func TestEditionsAreKeptByTheirText(t *testing.T) {
	b := newBook(t)
	keep := func(id, text string) error {
		return b.inWrite(ctx, func(tx *Tx) error { return tx.KeepEdition(id, digest.Of(text), text) })
	}
	for _, id := range []string{"corn 2025", "corn 2025", "corn 2025"} { // again changes nothing
		if err := keep(id, "rate = \"0.05\"\n"); err != nil {
			t.Fatal(err)
		}
	}
	if err := keep("corn 2025", "rate = \"0.06\"\n"); err != nil {
		t.Fatal(err)
	}
	wantError(t, keep("beans 2025", "rate = \"0.05\"\n"), "beans 2025", "already in the book as corn 2025")
	for _, text := range []string{"rate = \"0.05\"\n", "rate = \"0.06\"\n"} {
		if id, back, err := b.Edition(ctx, digest.Of(text)); id != "corn 2025" || back != text || err != nil {
			t.Errorf("got %q, %q, %v", id, back, err)
		}
	}
	_, _, err := b.Edition(ctx, digest.Of("never kept"))
	wantError(t, err, "keeps no edition")
	problems, count, err := b.VerifyEditions(ctx)
	if err != nil || len(problems) > 0 || count != 2 {
		t.Errorf("%q, %d, %v", problems, count, err)
	}
}

// Two desks in one program, and a reader beside them.
func TestWritersTakeTurns(t *testing.T) {
	b := newBook(t)
	const each = 60
	numbers := make([][]int64, 2)
	var desks sync.WaitGroup
	for desk := range numbers {
		desks.Go(func() {
			for i := range each {
				err := b.inWrite(ctx, func(tx *Tx) error {
					if _, err := tx.Append(draft(i)); err != nil {
						return err
					}
					number, err := tx.NextNumber("ticket")
					numbers[desk] = append(numbers[desk], number)
					return err
				})
				if err != nil {
					t.Error(err)
				}
			}
		})
	}
	desks.Go(func() {
		for range 20 {
			if problems, _, err := b.VerifyChain(ctx); err != nil || len(problems) > 0 {
				t.Errorf("meanwhile: %q, %v", problems, err)
			}
		}
	})
	desks.Wait()
	wantSound(t, b, 2*each)
	all := slices.Concat(numbers...)
	slices.Sort(all)
	for i, number := range all {
		if number != int64(i+1) {
			t.Fatalf("the series has %v", all)
		}
	}
}
