package scalelink

import (
	"context"
	"errors"
	"io"
	"os"
	"sync"
	"time"

	"tenthpoint/internal/message"
)

// Line is the Link over any Dialer.
type Line struct {
	dialer   Dialer
	settings Settings
	format   *Format

	mu      sync.Mutex
	cancel  context.CancelFunc // nil before Open
	done    chan struct{}      // closed when the listener has ended
	changed chan struct{}      // closed and replaced at each change
	reading Reading            // the newest
	heard   int                // readings ever, to tell a new one from an old
	before  int                // of them, those from earlier connections
	garbled error              // the newest frame, when it could not be read
	fault   error              // why there is no connection; nil while there is
}

var _ Link = (*Line)(nil)

var errNotOpen = message.Device.Errorf("the link is not open")

// New makes a link that listens on dialer. The error holds every fault of the
// settings, and of the dialer's when it can check them.
func New(dialer Dialer, settings Settings) (*Line, error) {
	err := settings.Check()
	if checker, ok := dialer.(interface{ Check() error }); ok {
		err = errors.Join(checker.Check(), err)
	}
	if err != nil {
		return nil, err
	}
	format, err := NewFormat(settings.Profile)
	if err != nil {
		return nil, err
	}
	return &Line{
		dialer:   dialer,
		settings: settings.usual(),
		format:   format,
		changed:  make(chan struct{}),
		fault:    errNotOpen,
	}, nil
}

// Open begins to listen.
func (l *Line) Open(ctx context.Context) error {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.cancel != nil {
		return message.Device.Errorf("Scale %s is already open. Close it first.", l.settings.Scale.Name)
	}
	ctx, l.cancel = context.WithCancel(ctx)
	l.done = make(chan struct{})
	l.fault = message.Device.Errorf("it is being connected")
	go l.listen(ctx, l.done)
	return nil
}

// Close stops listening. The link may be opened again.
func (l *Line) Close() error {
	l.mu.Lock()
	cancel, done := l.cancel, l.done
	l.mu.Unlock()
	if cancel == nil {
		return nil
	}
	cancel()
	<-done
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.done == done {
		l.cancel = nil
	}
	return nil
}

// listen connects again and again until ctx ends.
func (l *Line) listen(ctx context.Context, done chan struct{}) {
	defer close(done)
	for failures := 1; ; failures++ {
		heard, err := l.connection(ctx)
		if heard {
			failures = 1
		}
		if ctx.Err() != nil {
			l.lose(errNotOpen)
			return
		}
		wait := l.settings.Backoff.after(failures)
		l.lose(message.Errorf("%w; it is tried again %s later", err, wait))
		if l.settings.Clock.Sleep(ctx, wait) != nil {
			l.lose(errNotOpen)
			return
		}
	}
}

// connection runs one connection. It reports whether any reading came.
func (l *Line) connection(ctx context.Context) (heard bool, err error) {
	conn, err := l.dialer.Dial(ctx)
	if err != nil {
		return false, err
	}
	defer conn.Close()
	defer context.AfterFunc(ctx, func() { conn.Close() })()
	l.connected()
	in := newFrames(conn, l.settings.Profile)
	judge := newRest(l.settings.Steady, l.settings.Scale.Division)
	if err := l.askFirst(conn); err != nil {
		return false, err
	}
	for {
		body, err := in.next()
		if err != nil {
			return heard, l.readFault(err)
		}
		heard = l.hear(body, judge) || heard
		if err := l.askAgain(ctx, conn); err != nil {
			return heard, err
		}
	}
}

func (l *Line) readFault(err error) error {
	switch {
	case errors.Is(err, os.ErrDeadlineExceeded):
		return message.Device.Errorf("the line has gone silent")
	case errors.Is(err, io.EOF):
		return message.Device.Errorf("the indicator ended the connection")
	}
	return err
}

// hear parses one frame. A frame that cannot be read restarts the count of equal readings, since
// its content is unknown.
func (l *Line) hear(body []byte, judge *rest) bool {
	reading, err := l.format.Parse(body)
	if err != nil {
		judge.forget()
		l.change(func() { l.garbled = err })
		return false
	}
	reading = judge.judge(reading)
	reading.At = l.settings.Clock.Now()
	l.change(func() { l.reading, l.garbled = reading, nil; l.heard++ })
	return true
}

// askPause limits how often an indicator is polled that answers at once.
const askPause = 100 * time.Millisecond

// askFirst requests the first frame. Where frames have no start bytes the first response is
// discarded as possibly incomplete, so it requests two.
func (l *Line) askFirst(conn io.Writer) error {
	ask := l.settings.Profile.Ask
	if l.settings.Profile.Start == "" {
		ask += ask
	}
	return send(conn, ask)
}

func (l *Line) askAgain(ctx context.Context, conn io.Writer) error {
	if l.settings.Profile.Ask == "" {
		return nil
	}
	if err := l.settings.Clock.Sleep(ctx, askPause); err != nil {
		return err
	}
	return send(conn, l.settings.Profile.Ask)
}

func send(conn io.Writer, ask string) error {
	if ask == "" {
		return nil
	}
	_, err := io.WriteString(conn, ask)
	return err
}
