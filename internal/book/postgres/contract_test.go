//go:build postgres

package postgres

import (
	"context"
	"fmt"
	"os"
	"sync/atomic"
	"testing"

	"tenthpoint/internal/book/booktest"
)

// The server is started by go run ./cmd/task postgres, which names it here.
const serverIn = "TENTHPOINT_POSTGRES"

var made atomic.Int64

// opened is a book under test and the schema it lies in.
type opened struct {
	*Book
	name string
}

func TestMain(m *testing.M) {
	open := func(name string) (*Book, error) { return Open(context.Background(), os.Getenv(serverIn), name) }
	if booktest.WriteUntilKilled(open) {
		os.Exit(1)
	}
	os.Exit(m.Run())
}

func TestContract(t *testing.T) {
	server := os.Getenv(serverIn)
	if server == "" {
		t.Fatal("there is no server: run go run ./cmd/task postgres")
	}
	ctx := context.Background()
	closed := func(t testing.TB, b *Book, name string, err error) opened {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() { _ = b.Close() })
		return opened{b, name}
	}
	e := booktest.Engine[opened]{
		New: func(t testing.TB) opened {
			name := fmt.Sprintf("book_%d", made.Add(1))
			b, err := Create(ctx, server, name)
			return closed(t, b, name, err)
		},
		Reopen: func(t testing.TB, o opened) opened {
			b, err := Open(ctx, server, o.name)
			return closed(t, b, o.name, err)
		},
		Place: func(o opened) string { return o.name },
		Raw: func(t testing.TB, o opened, statement string) error {
			_, err := o.pool.Exec(ctx, statement)
			return err
		},
	}
	t.Run("journal", func(t *testing.T) { booktest.Journal(t, e) })
	t.Run("numbers", func(t *testing.T) { booktest.Numbers(t, e) })
	t.Run("position", func(t *testing.T) { booktest.Position(t, e) })
	t.Run("killed", func(t *testing.T) { booktest.Killed(t, e, 1) })
}
