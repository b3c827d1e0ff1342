package scalelink

import (
	"context"
	"errors"
	"io"
	"net"
	"sync"
	"tenthpoint/internal/message/errortest"
	"testing"
	"time"
)

// stepClock is a fake clock moved by the test. A sleeper sends its duration on asked, and sleeps
// until the test wakes it.
type stepClock struct {
	mu    sync.Mutex
	now   time.Time
	asked chan time.Duration
	goOn  chan struct{}
}

func newStepClock() *stepClock {
	return &stepClock{
		now:   time.Date(2024, 10, 1, 8, 0, 0, 0, time.UTC),
		asked: make(chan time.Duration),
		goOn:  make(chan struct{}),
	}
}

func (c *stepClock) Now() time.Time {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.now
}

func (c *stepClock) pass(d time.Duration) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.now = c.now.Add(d)
}

func (c *stepClock) Sleep(ctx context.Context, d time.Duration) error {
	select {
	case c.asked <- d:
	case <-ctx.Done():
		return ctx.Err()
	}
	select {
	case <-c.goOn:
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}

// step lets one sleeper sleep and wake.
func (c *stepClock) step() time.Duration {
	d := <-c.asked
	c.goOn <- struct{}{}
	return d
}

// wires is a dialer whose other ends the test holds.
type wires struct {
	refuse error // when set, no connection is made
	ends   chan net.Conn
}

func newWires() *wires { return &wires{ends: make(chan net.Conn)} }

func (w *wires) Dial(ctx context.Context) (io.ReadWriteCloser, error) {
	if w.refuse != nil {
		return nil, w.refuse
	}
	near, far := net.Pipe()
	select {
	case w.ends <- far:
		return near, nil
	case <-ctx.Done():
		return nil, ctx.Err()
	}
}

// end is the far end of the next connection, once the line has taken notice.
func (w *wires) end(line *Line) net.Conn {
	end := <-w.ends
	waitConnected(line)
	return end
}

func waitConnected(line *Line) {
	for now := line.snapshot(); now.fault != nil; now = line.snapshot() {
		<-now.changed
	}
}

func (w *wires) String() string { return "wire 1" }

func settings(clock Clock) Settings {
	return Settings{Profile: ExampleColumns(), Scale: west(), Clock: clock}
}

func openLine(t *testing.T, dialer Dialer, s Settings) *Line {
	t.Helper()
	line, err := New(dialer, s)
	if err != nil {
		t.Fatal(err)
	}
	if err := line.Open(t.Context()); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { line.Close() })
	return line
}

// say sends text and returns when the line has taken notice of it.
func say(t *testing.T, line *Line, end io.Writer, text string) {
	t.Helper()
	changed := line.Changed()
	if _, err := io.WriteString(end, text); err != nil {
		t.Fatal(err)
	}
	<-changed
}

// refuses wants the latest reading to be an error that wraps ErrNoReading.
func refuses(t *testing.T, line *Line, want errortest.Want) {
	t.Helper()
	got, err := line.Latest()
	if !errors.Is(err, ErrNoReading) || !want.Met(err) {
		t.Errorf("Latest() = %+v, %v; want no reading, because %q", got, err, want)
	}
	if err != nil && got.Raw != "" {
		t.Errorf("Latest() gave the reading %+v beside the error", got)
	}
}

func shows(t *testing.T, line *Line, weight string, state State) {
	t.Helper()
	got, err := line.Latest()
	if err != nil || !got.Weight.Equal(lb(weight)) || got.State != state {
		t.Errorf("Latest() = %s, %s, %v; want %s lb, %s", got.Weight, got.State, err, weight, state)
	}
}
