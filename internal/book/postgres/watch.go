package postgres

import (
	"context"
	"errors"
	"strconv"
	"sync"
	"time"

	"github.com/jackc/pgx/v5"
)

const (
	// pollInterval is the polling interval where no notice came: notices wake up, the table
	// decides.
	pollInterval = 500 * time.Millisecond
	// pollTimeout is the timeout of a poll; after it the connection counts as lost.
	pollTimeout = 2 * time.Second
)

// Watch calls changed soon after another desk has written, and after a cut line is whole again, until
// ctx ends. It is the first to notice that the line is cut.
func (b *Book) Watch(ctx context.Context, changed func()) {
	seen := int64(-1)
	for ctx.Err() == nil {
		err := b.listen(ctx, &seen, changed)
		if ctx.Err() == nil && isCut(err) {
			b.line.broken(b.line.address.sentence(err))
		}
		select {
		case <-ctx.Done():
		case <-time.After(retryAfter):
		}
	}
}

// listen watches over one connection, until that is cut.
func (b *Book) listen(ctx context.Context, seen *int64, changed func()) error {
	config, err := b.line.address.settings()
	if err != nil {
		return err
	}
	conn, err := pgx.ConnectConfig(ctx, config.ConnConfig)
	if err != nil {
		return err
	}
	defer soon(context.WithoutCancel(ctx), conn.Close)
	err = soon(ctx, func(ctx context.Context) error {
		_, err := conn.Exec(ctx, "LISTEN "+b.line.address.schema)
		return err
	})
	if err != nil {
		return err
	}
	for {
		var writes int64
		err := soon(ctx, func(ctx context.Context) error { return conn.QueryRow(ctx, "SELECT writes FROM head").Scan(&writes) })
		if err != nil {
			return err
		}
		wasCut := b.line.trouble() != nil
		b.line.whole()
		if b.own.othersAmong(*seen, writes) || wasCut {
			changed()
		}
		*seen = writes
		if err := b.notice(ctx, conn, seen, changed); err != nil {
			return err
		}
	}
}

// soon is one word with the server, which has to answer soon.
func soon(ctx context.Context, do func(context.Context) error) error {
	ctx, done := context.WithTimeoutCause(ctx, pollTimeout, errSilent)
	defer done()
	err := do(ctx)
	if err != nil && errors.Is(context.Cause(ctx), errSilent) {
		return errSilent
	}
	return err
}

// notice waits for notices of writes until it is time to look again.
func (b *Book) notice(ctx context.Context, conn *pgx.Conn, seen *int64, changed func()) error {
	waiting, done := context.WithTimeout(ctx, pollInterval)
	defer done()
	for {
		said, err := conn.WaitForNotification(waiting)
		if err != nil && waiting.Err() != nil && !conn.IsClosed() {
			return ctx.Err()
		}
		if err != nil {
			return err
		}
		writes, err := strconv.ParseInt(said.Payload, 10, 64)
		if err == nil && writes > *seen {
			if b.own.othersAmong(*seen, writes) {
				changed()
			}
			*seen = writes
		}
	}
}

// ownWrites are the numbers of writes that were this program's, until the watch has seen them.
type ownWrites struct {
	mu      sync.Mutex
	numbers map[int64]bool
}

// mostOwn is the number remembered where nobody watches.
const mostOwn = 1000

func (o *ownWrites) add(number int64) {
	o.mu.Lock()
	defer o.mu.Unlock()
	if len(o.numbers) >= mostOwn || o.numbers == nil {
		o.numbers = map[int64]bool{}
	}
	o.numbers[number] = true
}

func (o *ownWrites) drop(number int64) {
	o.mu.Lock()
	defer o.mu.Unlock()
	delete(o.numbers, number)
}

// othersAmong reports whether any of the writes after one that was seen is another desk's. What was
// there when the watch began is no news.
func (o *ownWrites) othersAmong(seen, last int64) (others bool) {
	o.mu.Lock()
	defer o.mu.Unlock()
	if seen < 0 || last-seen > mostOwn {
		clear(o.numbers)
		return seen >= 0
	}
	for number := seen + 1; number <= last; number++ {
		others = others || !o.numbers[number]
		delete(o.numbers, number)
	}
	return others
}
