//go:build postgres && crash

package postgres

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"math/rand/v2"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
)

var (
	serverKills = flag.Int("server-kills", 4, "how often the server is killed")
	crashSeed   = flag.Uint64("crash-seed", 1, "what the moments are drawn from")
)

// The server is killed at random moments while desks write: a killed process of it takes all others
// with it, and it comes back by its log. Whatever was acknowledged is there once, nothing else is there
// but what a desk was left unsure of, numbers have no gap and the chain is sound.
func TestServerKilledAtRandom(t *testing.T) {
	t.Logf("seed %d", *crashSeed)
	schema := newSchema(t)
	working, stop := context.WithCancel(ctx)
	defer stop()
	var all sync.WaitGroup
	var mu sync.Mutex
	acknowledged, unsure := map[string]int64{}, 0
	for d := range 4 {
		b := openedAs(t, desk, schema)
		all.Go(func() {
			for n := 0; working.Err() == nil; n++ {
				subject := fmt.Sprintf("load %d-%d", d, n)
				number, err := numbered(b, subject)
				mu.Lock()
				if err == nil {
					acknowledged[subject] = number
				} else {
					unsure++
				}
				mu.Unlock()
				if err != nil {
					time.Sleep(50 * time.Millisecond)
				}
			}
		})
	}
	r := rand.New(rand.NewPCG(*crashSeed, 0))
	kept := func() int {
		mu.Lock()
		defer mu.Unlock()
		return len(acknowledged)
	}
	before := 0
	for n := range *serverKills + 1 { // the desks are at work before each kill, and after the last
		until := time.Now().Add(time.Minute)
		for kept() < before+4 {
			if time.Now().After(until) {
				t.Fatalf("no desk works again after kill %d", n)
			}
			time.Sleep(5 * time.Millisecond)
		}
		before = kept()
		if n < *serverKills {
			time.Sleep(time.Duration(r.IntN(100)) * time.Millisecond)
			killServer(t)
		}
	}
	stop()
	all.Wait()
	wantKept(t, openedAs(t, desk, schema), acknowledged, unsure)
	t.Logf("%d acts acknowledged, %d not, %d kills", len(acknowledged), unsure, *serverKills)
}

// numbered enters a fact that takes a number.
func numbered(b *Book, subject string) (number int64, err error) {
	err = b.Write(ctx, func(tx book.Tx) error {
		if number, err = tx.NextNumber("ticket"); err != nil {
			return err
		}
		d := aFact()
		d.Subject, d.Body = subject, fmt.Appendf(nil, `{"number":"%d"}`, number)
		_, err := tx.Append(d)
		return err
	})
	return number, err
}

// killServer kills one process of the server, and waits until it is back.
func killServer(t *testing.T) {
	t.Helper()
	var pid int
	until := time.Now().Add(time.Minute)
	for killed := false; time.Now().Before(until); time.Sleep(50 * time.Millisecond) {
		conn, err := pgx.Connect(ctx, addressOf(owner, "none"))
		if err != nil {
			continue
		}
		if killed {
			must(t, conn.Close(ctx))
			return
		}
		err = conn.QueryRow(ctx, "SELECT pid FROM pg_stat_activity WHERE backend_type = 'client backend' AND pid <> pg_backend_pid() ORDER BY random() LIMIT 1").Scan(&pid)
		_ = conn.Close(ctx)
		if errors.Is(err, pgx.ErrNoRows) || err != nil {
			continue
		}
		must(t, syscall.Kill(pid, syscall.SIGKILL))
		killed = true
	}
	t.Fatal("the server did not come back within a minute")
}

func wantKept(t *testing.T, b *Book, acknowledged map[string]int64, unsure int) {
	t.Helper()
	found := map[string]int64{}
	last := int64(0)
	for f, err := range b.Facts(ctx, book.FactFilter{}) {
		must(t, err)
		last++
		if found[f.Subject] != 0 {
			t.Errorf("%s was entered twice", f.Subject)
		}
		if want := fmt.Sprintf(`{"number":"%d"}`, last); string(f.Body) != want {
			t.Errorf("fact %d carries %s, want %s: a number was lost or given twice", f.Seq, f.Body, want)
		}
		found[f.Subject] = last
	}
	for subject, number := range acknowledged {
		if found[subject] != number {
			t.Errorf("%s was acknowledged with number %d and stands with %d", subject, number, found[subject])
		}
	}
	if more := len(found) - len(acknowledged); more > unsure {
		t.Errorf("%d facts more than were acknowledged, and only %d were in doubt", more, unsure)
	}
	if problems, _, err := journal.Check(b.Facts(ctx, book.FactFilter{})); err != nil || len(problems) > 0 {
		t.Errorf("%v, %v", problems, err)
	}
}
