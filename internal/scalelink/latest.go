package scalelink

import (
	"context"
	"errors"
	"time"

	"tenthpoint/internal/message"
)

// Latest returns the newest reading, if it is fresh.
func (l *Line) Latest() (Reading, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if err := l.staleness(); err != nil {
		return Reading{}, err
	}
	return l.reading, nil
}

// staleness returns nil while the newest reading is fresh, else an error that wraps ErrNoReading.
func (l *Line) staleness() error {
	name, where := l.settings.Scale.Name, l.dialer.String()
	if l.fault != nil {
		return message.Errorf("%w: %s is not connected (%s): %w. Check that the indicator is on and the cable is in, or type the weight by hand.", ErrNoReading, name, where, l.fault)
	}
	age := l.settings.Clock.Now().Sub(l.reading.At)
	if l.heard > l.before && age <= l.settings.Fresh {
		return nil
	}
	if l.garbled != nil {
		return message.Errorf("%w: %s (%s) sends frames that its profile %q does not describe: %w. Check the profile against the indicator's set-up.", ErrNoReading, name, where, l.settings.Profile.Name, l.garbled)
	}
	if l.heard == l.before {
		return message.Errorf("%w: %s (%s) is connected and has sent nothing yet. Check that the indicator is set to send.", ErrNoReading, name, where)
	}
	return message.Errorf("%w: the last reading of %s (%s) is %s old; more than %s is too old. Check the indicator.", ErrNoReading, name, where, age.Truncate(100*time.Millisecond), l.settings.Fresh)
}

// WaitStable waits for a new reading at rest.
func (l *Line) WaitStable(ctx context.Context) (Reading, error) {
	for now := l.snapshot(); ; {
		if errors.Is(now.fault, errNotOpen) {
			return Reading{}, l.unsettled(errNotOpen)
		}
		select {
		case <-ctx.Done():
			return Reading{}, l.unsettled(ctx.Err())
		case <-now.changed:
		}
		seen := now.heard
		now = l.snapshot()
		if now.heard > seen && now.reading.IsStable() {
			return now.reading, nil
		}
	}
}

// unsettled returns what the scale was doing when the wait ended.
func (l *Line) unsettled(cause error) error {
	return unsettled(l, l.settings.Scale, cause)
}

func unsettled(link Link, scale Scale, cause error) error {
	reading, err := link.Latest()
	if err == nil {
		err = scale.Accept(reading)
	}
	if err == nil {
		err = message.Device.Errorf("The scale came to rest just now: weigh again.")
	}
	return waitEnded{cause, err}
}

// waitEnded says why a wait ended and what the scale was doing then.
type waitEnded struct{ cause, doing error }

// Error is both in English.
func (w waitEnded) Error() string { return w.Message().String() }

// Message says that no weight came, and what the scale was doing.
func (w waitEnded) Message() message.Text {
	return message.New("No steady weight came. %s", message.Of(w.doing))
}

func (w waitEnded) Unwrap() []error { return []error{w.cause, w.doing} }

// Changed returns a channel that is closed at the next reading or fault.
func (l *Line) Changed() <-chan struct{} { return l.snapshot().changed }

// moment is the state of the link at one time.
type moment struct {
	reading Reading
	heard   int
	fault   error
	changed <-chan struct{}
}

func (l *Line) snapshot() moment {
	l.mu.Lock()
	defer l.mu.Unlock()
	return moment{l.reading, l.heard, l.fault, l.changed}
}

// change makes one change and wakes everyone who waits for it.
func (l *Line) change(what func()) {
	l.mu.Lock()
	defer l.mu.Unlock()
	what()
	close(l.changed)
	l.changed = make(chan struct{})
}

// connected forgets readings from before the line was lost.
func (l *Line) connected() {
	l.change(func() { l.fault, l.garbled, l.before = nil, nil, l.heard })
}

func (l *Line) lose(why error) { l.change(func() { l.fault = why }) }
