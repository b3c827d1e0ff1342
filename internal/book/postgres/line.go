package postgres

import (
	"context"
	"sync"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"
)

const (
	// mostConnections is the size of the pool. Each running iteration over facts holds one.
	mostConnections = 8
	// connectTimeout is the timeout for connecting to a server.
	connectTimeout = 3 * time.Second
	// rowTimeout is the timeout between two rows of a query; after it the connection counts as lost.
	rowTimeout = 15 * time.Second
	// retryAfter is the pause before a lost connection is tried again.
	retryAfter = time.Second
)

// A line is the way to the server. While it is cut every use of it fails at once, with one
// sentence, so that a window stays in use; now and then one use tries whether it is whole again.
type line struct {
	address address
	pool    *pgxpool.Pool

	mu    sync.Mutex
	cut   error // the sentence; nil while the line is whole
	tried time.Time
	ends  context.Context // is cancelled when the line is cut
	end   context.CancelCauseFunc
}

func newLine(a address, pool *pgxpool.Pool) *line {
	l := &line{address: a, pool: pool}
	l.ends, l.end = context.WithCancelCause(context.Background())
	return l
}

// trouble is the sentence about a line that is cut; nil while it is whole.
func (l *line) trouble() error {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.cut
}

// use returns a context for one use of the line: it ends with ctx, when the line is cut, and after a
// rowTimeout. Each call of alive postpones that. While the line is cut the sentence is returned.
func (l *line) use(ctx context.Context) (used context.Context, alive, done func(), err error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	ends := l.ends
	if l.cut != nil {
		if time.Since(l.tried) < retryAfter {
			return nil, nil, nil, l.cut
		}
		l.tried = time.Now()
		ends = context.Background() // that the line was cut does not end the trial
	}
	used, stop := context.WithCancelCause(ctx)
	quiet := time.AfterFunc(rowTimeout, func() { stop(errSilent) })
	unhook := context.AfterFunc(ends, func() { stop(context.Cause(ends)) })
	return used, func() { quiet.Reset(rowTimeout) }, func() { quiet.Stop(); unhook(); stop(nil) }, nil
}

// once is one use of the line without rows.
func (l *line) once(ctx context.Context, do func(context.Context) error) error {
	used, _, done, err := l.use(ctx)
	if err != nil {
		return err
	}
	defer done()
	return l.ended(used, do(used))
}

// ended notes how a use of the line ended, and returns its error as a sentence.
func (l *line) ended(used context.Context, err error) error {
	if err == nil {
		l.whole()
		return nil
	}
	if cause := context.Cause(used); isOurs(cause) {
		err = cause
	}
	if isOvertaken(err) { // the write is tried again
		return err
	}
	said := l.address.sentence(err)
	if isCut(err) {
		l.broken(said)
	}
	return said
}

// broken notes that the line is cut, and ends what runs over it.
func (l *line) broken(said error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.cut == nil {
		l.end(said)
		l.pool.Reset()
	}
	l.cut, l.tried = said, time.Now()
}

// whole notes that the line was used with success.
func (l *line) whole() {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.cut != nil {
		l.cut = nil
		l.ends, l.end = context.WithCancelCause(context.Background())
	}
}
