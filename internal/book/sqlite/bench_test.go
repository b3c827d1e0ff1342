package sqlite

import (
	"fmt"
	"path/filepath"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/quantity"
)

// BenchmarkBareCommit is the measure for BenchmarkDurableWeighIn: one row in a
// plain table, on the disk when it returns, with nothing of ours around it.
func BenchmarkBareCommit(b *testing.B) {
	db := bare(b, filepath.Join(b.TempDir(), "bare.sqlite"))
	force(b, db, "PRAGMA journal_mode = WAL")
	force(b, db, "PRAGMA synchronous = FULL")
	force(b, db, "CREATE TABLE weights (seq INTEGER PRIMARY KEY, body TEXT NOT NULL) STRICT")
	insert, err := db.Prepare("INSERT INTO weights (body) VALUES (?)")
	if err != nil {
		b.Fatal(err)
	}
	body := string(draft(0).Body)
	for b.Loop() {
		if _, err := insert.Exec(body); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkDurableWeighIn is one weigh-in: the load's facts read and a fact
// appended, on the disk when it returns; alone, and with the row that lists
// show. It should take at most twice a bare commit. Where the disk answers
// within a tenth of a millisecond, the pages of the indexes count as much as
// the wait for it.
func BenchmarkDurableWeighIn(b *testing.B) {
	gross, err := quantity.ParseAmount("52300 lb")
	if err != nil {
		b.Fatal(err)
	}
	weighIn := func(tx *Tx, d journal.Entry) error {
		if _, err := tx.FactsOf(d.Subject); err != nil {
			return err
		}
		_, err := tx.Append(d)
		return err
	}
	b.Run("the fact", func(b *testing.B) { benchmarkDurable(b, weighIn) })
	b.Run("the fact and its row", func(b *testing.B) {
		benchmarkDurable(b, func(tx *Tx, d journal.Entry) error {
			if err := weighIn(tx, d); err != nil {
				return err
			}
			return tx.PutLoad(book.LoadRow{
				ID: d.Subject, Phase: "yard", Day: d.At[:10], OpenedAt: d.At, Commodity: "corn",
				Grower: "G1", GrowerName: "Example Grower", Truck: "blue",
				Figures: map[string]quantity.Amount{"gross": gross},
			})
		})
	})
}

func benchmarkDurable(b *testing.B, act func(*Tx, journal.Entry) error) {
	book, err := Open(filepath.Join(b.TempDir(), "durable.book"), book.Options{Create: true})
	if err != nil {
		b.Fatal(err)
	}
	defer book.Close()
	for i := 0; b.Loop(); i++ {
		if err := book.inWrite(ctx, func(tx *Tx) error { return act(tx, draft(i)) }); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkAppend is one fact among many of one write, as in an import.
func BenchmarkAppend(b *testing.B) {
	book := newBook(b)
	done := false
	for i := 0; !done; {
		write(b, book, func(tx *Tx) error {
			for n := 0; n < 8000 && !done; n++ {
				if done = !b.Loop(); done {
					break
				}
				if _, err := tx.Append(draft(i)); err != nil {
					return err
				}
				i++
			}
			return nil
		})
	}
}

// bigBook is a book of n facts, three to a load.
func bigBook(b *testing.B, n int) *Book {
	book := newBook(b)
	for done := 0; done < n; done += 10_000 {
		appendTo(b, book, min(10_000, n-done))
	}
	return book
}

// BenchmarkVerifyChain is per fact.
func BenchmarkVerifyChain(b *testing.B) {
	const facts = 30_000
	book := bigBook(b, facts)
	b.ResetTimer()
	for read := 0; read < b.N; read += facts {
		wantSound(b, book, facts)
	}
}

// BenchmarkFactsOf is one load's facts: the same in a small and a large book.
func BenchmarkFactsOf(b *testing.B) {
	sizes := []int{300, 30_000, 300_000}
	if testing.Short() {
		sizes = sizes[:2]
	}
	for _, n := range sizes {
		b.Run(fmt.Sprint(n, " facts"), func(b *testing.B) {
			book := bigBook(b, n)
			for i := 0; b.Loop(); i++ {
				subject := fmt.Sprintf("load %d", i*7919%(n/3)+1)
				if facts, err := book.FactsOf(ctx, subject); err != nil || len(facts) != 3 {
					b.Fatal(facts, err)
				}
			}
		})
	}
}
