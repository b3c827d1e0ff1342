package postgres

import (
	"context"
	"errors"
	"testing"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"
)

// While the line is cut every use fails at once; after a while one use tries it, and is not ended by
// the cut that went before.
func TestACutLineIsTriedAgain(t *testing.T) {
	a, err := parseAddress("postgres://clerk@127.0.0.1:1/elevator")
	if err != nil {
		t.Fatal(err)
	}
	config, err := a.settings()
	if err != nil {
		t.Fatal(err)
	}
	pool, err := pgxpool.NewWithConfig(context.Background(), config) // it connects when it is asked
	if err != nil {
		t.Fatal(err)
	}
	defer pool.Close()
	l := newLine(a, pool)
	under, _, done, err := l.use(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	defer done()
	l.broken(errCut)
	<-under.Done() // what ran over the line has ended
	if _, _, _, err := l.use(context.Background()); !errors.Is(err, errCut) {
		t.Errorf("a use of a cut line: %v", err)
	}
	l.tried = time.Now().Add(-2 * retryAfter)
	trial, _, stop, err := l.use(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	defer stop()
	select {
	case <-trial.Done():
		t.Errorf("the trial was ended: %v", context.Cause(trial))
	case <-time.After(50 * time.Millisecond):
	}
	if err := l.ended(trial, nil); err != nil || l.trouble() != nil {
		t.Errorf("the trial went well, and the line is %v, %v", l.trouble(), err)
	}
}
