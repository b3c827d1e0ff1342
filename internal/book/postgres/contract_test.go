//go:build postgres

package postgres

import (
	"context"
	"flag"
	"fmt"
	"os"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/jackc/pgx/v5"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/booktest"
)

// The server is started by go run ./cmd/task postgres, which names it here.
const serverIn = "TENTHPOINT_POSTGRES"

var ctx = context.Background()

func TestMain(m *testing.M) {
	_ = flag.Set("rapid.checks", "20") // each makes a book on the server; the command line may ask for more
	flag.Parse()
	open := func(place string) (*Book, error) { return Open(ctx, place, book.Options{}) }
	if booktest.WriteUntilKilled(open) {
		os.Exit(1)
	}
	if os.Getenv(serverIn) == "" {
		fmt.Fprintln(os.Stderr, "there is no server: run go run ./cmd/task postgres")
		os.Exit(1)
	}
	if err := makeRoles(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	os.Exit(m.Run())
}

// The three users of a book: who owns it, a desk, and one who only reads.
const (
	owner    = "tenthpoint"
	desk     = "desk"
	examiner = "examiner"
)

func makeRoles() error {
	conn, err := pgx.Connect(ctx, addressOf(owner, "none"))
	if err != nil {
		return err
	}
	defer conn.Close(ctx)
	for _, role := range []string{desk, examiner} {
		_, err := conn.Exec(ctx, "CREATE ROLE "+role+" LOGIN")
		if err != nil && code(err) != "42710" { // it is there from the run before
			return err
		}
	}
	return nil
}

func addressOf(user, schema string) string {
	text := fmt.Sprintf("postgres://%s@/postgres?host=%s", user, folder())
	if schema == "none" {
		return text
	}
	return text + "&schema=" + schema
}

// folder is where the server's socket is.
func folder() string {
	for _, setting := range strings.Fields(os.Getenv(serverIn)) {
		if path, is := strings.CutPrefix(setting, "host="); is {
			return path
		}
	}
	return ""
}

var made atomic.Int64

// newSchema makes an empty book that a desk and an examiner are let into, and returns its schema.
func newSchema(t testing.TB) string {
	t.Helper()
	schema := fmt.Sprintf("book_%d_%d", os.Getpid(), made.Add(1))
	b, err := Open(ctx, addressOf(owner, schema), book.Options{Create: true})
	must(t, err)
	must(t, b.exec(ctx, "SELECT let_in($1, true)", desk))
	must(t, b.exec(ctx, "SELECT let_in($1, false)", examiner))
	must(t, b.Close())
	return schema
}

func openedAs(t testing.TB, user, schema string) *Book {
	t.Helper()
	b, err := Open(ctx, addressOf(user, schema), book.Options{})
	must(t, err)
	t.Cleanup(func() { _ = b.Close() })
	return b
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// asOwner runs a statement as the owner of the book, who may do most.
func asOwner(t testing.TB, schema, statement string) error {
	t.Helper()
	conn, err := pgx.Connect(ctx, addressOf(owner, "none"))
	must(t, err)
	defer conn.Close(ctx)
	_, err = conn.Exec(ctx, "SET search_path = "+schema)
	must(t, err)
	_, err = conn.Exec(ctx, statement)
	return err
}

// engine is a desk with no more rights than it needs; what is done past the engine is done by the
// owner.
func engine() booktest.Engine[*Book] {
	return booktest.Engine[*Book]{
		New:    func(t testing.TB) *Book { return openedAs(t, desk, newSchema(t)) },
		Reopen: func(t testing.TB, b *Book) *Book { return openedAs(t, desk, b.line.address.schema) },
		Place:  (*Book).Path,
		Raw: func(t testing.TB, b *Book, statement string) error {
			return asOwner(t, b.line.address.schema, statement)
		},
	}
}

func TestContract(t *testing.T) {
	e := engine()
	t.Run("journal", func(t *testing.T) { booktest.Journal(t, e) })
	t.Run("numbers", func(t *testing.T) { booktest.Numbers(t, e) })
	t.Run("position", func(t *testing.T) { booktest.Position(t, e) })
	t.Run("bins", func(t *testing.T) { booktest.Bins(t, e) })
	t.Run("lists", func(t *testing.T) { booktest.Lists(t, e) })
	t.Run("killed", func(t *testing.T) { booktest.Killed(t, e, 1) })
}
