// Package officetest has what tests of a head office share: an office on the server that
// go run ./cmd/task postgres starts, and chains to send to it.
package officetest

import (
	"context"
	"fmt"
	"os"
	"sync/atomic"
	"testing"

	"github.com/jackc/pgx/v5"

	"tenthpoint/internal/headoffice"
	"tenthpoint/internal/headoffice/central"
	"tenthpoint/internal/journal"
)

// The server is started by go run ./cmd/task postgres, which names it here.
const serverIn = "TENTHPOINT_POSTGRES"

var (
	ctx  = context.Background()
	made atomic.Int64
)

// Office is a head office under test, in a schema of its own.
type Office struct {
	*central.Office
	t              testing.TB
	Server, Schema string
}

// New makes an office, which goes with the test.
func New(t testing.TB) *Office {
	t.Helper()
	server := os.Getenv(serverIn)
	if server == "" {
		t.Fatal("there is no server: run go run ./cmd/task postgres")
	}
	o := &Office{t: t, Server: server, Schema: fmt.Sprintf("office_%d_%d", os.Getpid(), made.Add(1))}
	var err error
	o.Office, err = central.SetUp(ctx, server, o.Schema)
	Must(t, err)
	t.Cleanup(func() {
		o.Raw("DROP SCHEMA " + o.Schema + " CASCADE")
		Must(t, o.Close())
	})
	return o
}

// As is the office as a site signs in to it.
func (o *Office) As(letters string) *central.Office {
	o.t.Helper()
	config, err := pgx.ParseConfig(o.Server)
	Must(o.t, err)
	role := o.Site(letters)
	at, err := central.Open(ctx, fmt.Sprintf("host=%s port=%d dbname=%s user=%s", config.Host, config.Port, config.Database, role), o.Schema)
	Must(o.t, err)
	o.t.Cleanup(func() { Must(o.t, at.Close()) })
	return at
}

// Site is the role of a site, which is added where it is not there.
func (o *Office) Site(letters string) string {
	o.t.Helper()
	all, err := o.Sites(ctx)
	Must(o.t, err)
	for _, s := range all {
		if s.Letters == letters {
			return s.Role
		}
	}
	s, err := o.AddSite(ctx, letters, "Elevator "+letters)
	Must(o.t, err)
	o.t.Cleanup(func() { o.Raw("DROP OWNED BY " + s.Role + "; DROP ROLE " + s.Role) })
	return s.Role
}

// Raw runs a statement past the program, as the owner of the server.
func (o *Office) Raw(statement string) {
	o.t.Helper()
	conn, err := pgx.Connect(ctx, o.Server)
	Must(o.t, err)
	defer conn.Close(ctx)
	if _, err := conn.Exec(ctx, "SET search_path TO "+o.Schema+"; "+statement); err != nil {
		o.t.Error(err)
	}
}

// Must ends a test at an error.
func Must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// Chained are facts of a chain after one, with details that try the spelling of the hash.
func Chained(after *journal.Fact, word string, n int) []journal.Fact {
	var out []journal.Fact
	for i := range n {
		body, err := journal.Canonical(map[string]string{"text": word, "sign": "é \" \\ \n \u2028 <&> 😀", "n": fmt.Sprint(i)})
		if err != nil {
			panic(err)
		}
		f := journal.Link(after, journal.Entry{
			At: fmt.Sprintf("20%02d-10-04T14:12:%02dZ", 25+i%2, i%60), Who: "Maë Orton", Desk: "desk 1", Kind: "thing." + word, Subject: "thing 1", Body: body,
		})
		out = append(out, f)
		after = &out[len(out)-1]
	}
	return out
}

// Lines are facts as they travel.
func Lines(t testing.TB, facts ...journal.Fact) []byte {
	t.Helper()
	var out []byte
	var err error
	for i := range facts {
		out, err = headoffice.Line{Fact: &facts[i]}.Append(out)
		Must(t, err)
	}
	return out
}

// Kept are all facts of a branch at the office.
func Kept(t testing.TB, o *central.Office, c headoffice.Chain) []journal.Fact {
	t.Helper()
	var out []journal.Fact
	for f, err := range o.Facts(ctx, c, 1) {
		Must(t, err)
		out = append(out, f)
	}
	return out
}
