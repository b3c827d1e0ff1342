package scalelink

import (
	"context"
	"time"
)

// Clock is the clock and timer of a link; tests use a fake.
type Clock interface {
	Now() time.Time
	// Sleep waits for d, or returns ctx's error when that ends first.
	Sleep(ctx context.Context, d time.Duration) error
}

// WallClock is the computer's own clock.
type WallClock struct{}

// Now is the computer's time.
func (WallClock) Now() time.Time { return time.Now() }

// Sleep waits for d, or until ctx ends.
func (WallClock) Sleep(ctx context.Context, d time.Duration) error {
	timer := time.NewTimer(d)
	defer timer.Stop()
	select {
	case <-timer.C:
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}

// Backoff is the delay before reconnecting: First after the first failure, doubled after each
// further one, at most Most.
type Backoff struct {
	First, Most time.Duration
}

// after is the wait following so many failures in a row, counted from 1.
func (b Backoff) after(failures int) time.Duration {
	wait := b.First
	for ; failures > 1 && wait < b.Most; failures-- {
		wait *= 2
	}
	return min(wait, b.Most)
}
